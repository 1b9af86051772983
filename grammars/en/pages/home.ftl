# Home: people, devices, places, settings, what was changed, leaving.

home-title = { $household }: home
home-as-own = This page is let in as { $device }, an owner.
home-as-help = This page is let in as { $device }, a helper. People, devices and settings are changed by an owner.
home-as-speak = This page is let in as { $device }, to talk. People, devices and settings are changed by an owner.

people = People
people-unknown = What is not written of an allergen is unknown, never absent. Ask whoever cooked, and read the label.
people-add = Add somebody
person-new = Somebody new
person-name = Name
person-no-name = Write a name.
person-eats-here = Eats here
person-at-risk = Stricter guidance: a baby or small child, pregnant, older, or with weakened immunity
person-must-not = Must not eat
person-and = And, separated by commas
person-diets = Eats by choice: vegan, low salt
person-needs = How their food is to be: cut up small, mashed
person-comes = A guest comes on
person-add = Add
person-changed = { $name } is changed.
person-added = { $name } is added.
person-not = not { $allergens }
person-strict = stricter guidance
person-away = does not eat here
person-has-needs = food { $needs }
person-is-coming = comes on { $day }

devices = Devices
role-speak = Talks, and does on the board what may be said
role-help = Helper: also corrects the record
role-own = Owner: also people, devices and settings
device-is-speak = talks
device-is-help = helper
device-is-own = owner
device-everybodys = Everybody’s
device-line = { $name }, { $role }
device-this-one = { $name } (this one), { $role }
device-last-heard = { $line }, last heard { $when }
device-name = Name
device-role = What it may do
device-whose = Whose it is
device-changed = { $name } is changed.
device-send-away = Send it away
device-send-away-sure = Yes, send { $name } away
device-sent-away = { $name } is sent away.
invite-heading = Invite somebody
invite-how = An invitation lets one device in, once, within an hour. Show the square code to a phone’s camera, or send the link.
invite-name = What to call their device, for example Ruth’s phone
invite-make = Make an invitation
invite-made = The invitation for { $name } is ready. It works once, until { $until }.
invite-code = Square code of the invitation for { $name }: hold a phone’s camera to it
invite-send = Send the link
invite-copy = Copy the link
invite-copied = The link is copied.
invite-take-back = Take the invitation back
invite-taken-back = The invitation is taken back. Nobody comes in with it.
invite-no-name = Write what to call their device.
invite-local = The address of this kitchen opens on this machine only, so the invitation works on no phone. Whoever runs the service sets PUBLIC_URL.
device-let-in-heading = Let in a device that shows a code
device-let-in-how = Open this address on the new device and press “Get a code” there. Then write that code here, or say “let in the device with code” and its digits.
device-code = Its code, eight digits
device-let-in = Let it in
device-is-let-in = It is let in. Its page opens by itself.

home-places = Places
home-no-places = There is no place yet. Add one here, or say “help me set up” on the board.
home-place-with = { $place }: { $parts }
home-add-place = Add a place
home-place-name = What it is called, for example chest freezer
home-place-kind = What it is
home-place-within = Within
home-place-alone = Nothing: it stands by itself
home-place-add = Add the place
home-place-added = { $name } is a place now.
kind-fridge = fridge
kind-freezer = freezer
kind-pantry = pantry
kind-counter = counter
kind-cupboard = cupboard
kind-shelf = shelf
kind-drawer = drawer
kind-basket = basket
kind-door = door
markers = Markers
markers-none = There is no marker yet. A marker is what a hand finds on a container: a band, a bead, a patch.
markers-all = { $count ->
    [one] One marker
   *[other] All { $count } markers
  }
marker-line = { $marker }; { $where }
marker-on = on { $item }
marker-spare = in the spare box
marker-fastening = What it is
marker-texture = What it feels like
marker-shape = Its outline
marker-spot = Where on the container
marker-counted = What is counted
marker-counted-dot = dots
marker-counted-knot = knots
marker-counted-ridge = ridges
marker-counted-notch = notches
marker-fastenings = How many of it, where that tells
marker-dots = How many points to count on it
marker-care = How it is looked after, for example hand wash only
marker-not-said = Not said
marker-no-touch = Choose something that a hand finds on it.
marker-changed = The marker is changed.
marker-added = The marker is in the spare box.
marker-add-one = Add a marker
marker-add = Add the marker
marker-anyway = Keep it so nevertheless
home-points = What points to feel mean here
home-point = { $count }: { $meaning }

bring = Bring in a list
bring-file = A list of food that you have, as a file
bring-hint = A sheet saved as CSV, with headings such as Item, Location, Quantity, Use by. You see first what each heading and row is taken for; then all of it comes in, or nothing.
bring-make-places = Make the places that are not there yet
bring-make-places-hint = Places that are not there are made where that is ticked above.
bring-headings = What the headings are taken for
bring-rows = What the rows are taken for
bring-left-out = left out
bring-pair = { $what }: { $value }
bring-row = Row { $row }: { $cells }
bring-more-rows = { $count ->
    [one] And one row more.
   *[other] And { $count } rows more.
  }
bring-wrong = Nothing comes in before this is mended in the file, by its row and column:
bring-items = { $count ->
    [0] Nothing new is in it.
    [one] One food would come in.
   *[other] { $count } foods would come in.
  }
bring-places = New places: { $places }.
bring-already = { $count ->
    [one] One is there already and is left out.
   *[other] { $count } are there already and are left out.
  }
bring-do = Bring it all in
bring-done = { $count ->
    [one] One food is on the record. “Undo” takes it back.
   *[other] { $count } foods are on the record. “Undo” takes them back.
  }
column-name = name
column-amount = amount
column-unit = unit
column-place = place
column-inside = where in the place
column-container = container
column-made = made on
column-bought = bought on
column-opened = opened on
column-frozen = frozen on
column-best-before = best before
column-use-by = use by
column-maker = made by
column-owner = whose it is
column-contains = contains
column-diets = diet marks
column-notes = notes

settings = Settings
settings-name = Name of the household
settings-region = Whose food-safety guidance is told
settings-us = United States
settings-uk = United Kingdom
settings-measures = Measures
settings-measures-us = Cups, pounds, Fahrenheit
settings-measures-metric = Litres, kilograms, Celsius
settings-language = Language
settings-language-hint = Spanish hears and answers part of what English does, and says where it cannot.
settings-watts = Power of the microwave, in watts
settings-watts-hint = It stands on its back or in its door.
settings-summary = Time of the evening summary
settings-summary-hint = Empty: none.
settings-quiet-from = Quiet from
settings-quiet-hint = Nothing is spoken unasked then; timers whisper.
settings-quiet-to = Quiet until
settings-save = Save the settings
settings-saved = The settings are saved.
settings-address = Labels and codes say that this kitchen is reached at { $address }.
settings-address-local = Only the machine itself can open that: no phone can. Whoever runs the service sets PUBLIC_URL.

changed-heading = What was changed
changed-nothing = Nothing has been changed yet.
changed-line = { $when }: { $deed }
somebody = Somebody
deed-told = { $what ->
    [none] A timer, reminder or summary was heard
   *[other] { $what } was heard
  }
deed-undid = { $what ->
    [none] { $who } took back a change to the record
   *[other] { $who } took back a change to { $what }
  }
deed-redid = { $what ->
    [none] { $who } made a change to the record again
   *[other] { $who } made a change to { $what } again
  }
deed-took = { $who } took some of { $what }
deed-put-away = { $who } put away { $what }
deed-finished = { $who } used up { $what }
deed-threw-out = { $who } threw out { $what }
deed-gave-away = { $who } gave away { $what }
deed-moved = { $who } moved { $what }
deed-marked = { $who } put a marker on { $what }
deed-unmarked = { $who } took the marker off { $what }
deed-amended = { $who } corrected { $what }
deed-opened = { $who } opened { $what }
deed-froze = { $who } froze { $what }
deed-thawed = { $who } thawed { $what }
deed-took-out = { $who } took out { $what }
deed-reheated = { $who } reheated { $what }
deed-split = { $who } split { $what }
deed-merged = { $who } put together { $what }
deed-added-a-marker = { $who } added a marker: { $what }
deed-built-a-place = { $who } built a place: { $what }
deed-renamed-a-place = { $who } renamed a place: { $what }
deed-removed-a-place = { $who } removed a place: { $what }
deed-gave-dots-a-meaning = { $who } gave points a meaning: { $what }
deed-put-on-the-list = { $who } put on the list: { $what }
deed-took-off-the-list = { $who } took off the list: { $what }
deed-bought = { $who } bought { $what }
deed-noted = { $who } noted: { $what }
deed-checked = { $who } checked { $what }
deed-told-of-a-power-cut = { $who } told of a power cut
deed-set = { $who } set { $what }
deed-imported = { $who } took over from a file: { $what }

leave-heading = Take along, sign out
leave-take = Take everything along (JSON)
leave-taken = kitchen.json holds all that is kept of this household.
leave-out = Sign this page out
leave-out-sure = Sign out and forget what was not sent
leave-signed-out = Signed out.
leave-unsent = { $count ->
    [one] One thing is kept on the board of this page and not sent yet. Signing out forgets it.
   *[other] { $count } things are kept on the board of this page and not sent yet. Signing out forgets them.
  }
