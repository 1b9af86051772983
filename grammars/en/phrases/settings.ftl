# Settings of the household.

ask-watts = How many watts is your microwave? It is on a plate inside the door.
ask-summary-at = At what time shall I tell you what to use up?
watts-are = Your microwave is { $watts } watts.
watts-unknown = Your microwave's watts are not recorded.
guidance-is = I report { $region ->
    [uk] United Kingdom guidance, from the Food Standards Agency
   *[us] United States guidance, from the Department of Agriculture
  }.
measures-are = Measures are { $measures ->
    [metric] metric
   *[us] US customary
  } now.
summary-at = The summary comes at { $time }.
no-summary = No nightly summary.
quiet-from = I keep quiet from { $from } to { $to }, except when you speak to me.
no-quiet = No quiet hours.
settings-help = You can set the microwave's watts, whose guidance I report, the summary's time and quiet hours.
no-devices = No device has been let in.
device = { $when ->
    [none] { THE($name) }, never heard yet
   *[other] { THE($name) }, last heard { $when }
  }
devices-here = { $count ->
    [one] One: { $devices }.
   *[other] { CAP($count) } devices: { $devices }.
  }
confirm-setting = { $setting } Right? Yes or no.

# Devices: let in, called, sent away.

device-name = { THE($name) }
devices-for-owners = Only an owner's device can do that. Ask on one of those.
devices-not-in-practice = I leave the devices alone while we practise.
ask-code = Which code does it say? Eight digits.
ask-code-again = { $count ->
    [one] I heard one digit
   *[other] I heard { $count } digits
  }; a code has eight. Say the code again?
code-nobody = No device waits with { $code }. A code lasts ten minutes.
codes-too-many = Too many wrong codes. Try again in ten minutes.
device-let-in = { CAP(THE($name)) } is let in.
device-may = It may hold a conversation and change the kitchen by it, and not let others in.
confirm-let-in = Let in { THE($name) }? Yes or no.
which-device = Which one: { $devices }?
device-unknown = No device is called { $device }. I know { $devices }.
ask-device-name = What shall I call { THE($name) }?
device-name-taken = Another device is called { $name } already.
device-renamed = { CAP(THE($was)) } is now { THE($name) }.
confirm-rename-device = Call { THE($was) } { THE($name) } from now on? Yes or no.
device-last-owner = { CAP(THE($name)) } is the only owner's device: without it nobody could let devices in. Make another an owner first.
confirm-remove-device = Remove { THE($name) }? It can no longer speak here unless it is let in again. Yes or no.
confirm-remove-device-here = Remove { THE($name) }? That is the one you speak on: I will not hear you here any more. Yes or no.
device-removed = { CAP(THE($name)) } is removed.
device-removed-here = { CAP(THE($name)) } is removed. Goodbye.

# Read back whole.
known-no-places = No places yet.
known-places = You keep food in { $places }.
known-nobody = Nobody is on record as eating here.
known-people = Eating here: { $people }.
known-foods = { $count ->
    [0] No food on record.
    [one] One food on record.
   *[other] { CAP($count) } foods on record.
  }
known-markers = { $count ->
    [one] One marker, { $spare } spare.
   *[other] { CAP($count) } markers, { $spare } spare.
  }
