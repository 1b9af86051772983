# Places: building and telling.

ask-build-what = What do you have: a shelf, a basket, a drawer, a freezer?
ask-build-where = { CAP($kind) } of what?
built = Added: { $names }.
built-with = { $name } with { $parts }
built-in = The { $place } has { $count ->
    [one] one { $kind }.
   *[other] { $count } { PLURAL($kind) }, counted from the top.
  }
place-part = { $count ->
    [one] one { $kind }
   *[other] { $count } { PLURAL($kind) }
  }
built-parts = The { $place } has { $parts }.
has-those-already = I have that already: the { $place } has { $parts }.
confirm-build-parts = The { $place } has { $parts }. Right? Yes or no.
confirm-build = Add { $count ->
    [one] one { $kind }
   *[other] { $count } { PLURAL($kind) }
  }? Yes or no.
ask-rename-what = Rename which place?
ask-rename-to = What shall the { $place } be called?
renamed = The { $place } is now called { $name }.
confirm-rename = Call the { $place } { $name }? Yes or no.
ask-remove-place = Remove which place?
place-not-empty = Still { $count ->
    [one] there: { $items }
   *[other] there, { $count } things: { $items }
  }{ $more ->
    [0] {""}
   *[other] { " " }and { $more } more
  }. Where to instead?
place-removed = The { $place } is gone from my record.
confirm-remove-place = Remove the { $place } from the record? Yes or no.
place-undivided = The { $place } has no parts recorded.
place-parts = The { $place } has { $count ->
    [one] one part
   *[other] { $count } parts
  }: { $parts }.
place-with-parts = { $name } with { $count ->
    [one] one part
   *[other] { $count } parts
  }
places-all = { $count }: { $places }.
no-places = No places are recorded yet. Say, for example, the fridge has four shelves.
place-crowded = The { $place } is crowded: { $count } things.
place-has-room = The { $place } has { $count ->
    [one] one thing in it
   *[other] { $count } things in it
  }.
empty-within = Empty: { $places }.
none-crowded = None is crowded. Most are { $at }: { $count }.
place-count = { $place } with { $count }
places-crowded = { $count ->
    [one] One is crowded: { $places }.
   *[other] { $count } are crowded: { $places }.
  }
none-empty = None is empty. Fewest are { $at }: { $count }.
places-empty = { $count ->
    [one] One is empty: { $places }.
   *[other] { $count } are empty: { $places }.
  }
place-counts = Fewest first: { $places }.
place-counts-down = Fullest first: { $places }.
room-not-known = How much room is left, nobody recorded.
    .short = {""}

new-whole = New here: { A($place) }.
    .short = New: { $place }.
new-whole-with = New here: { A($place) } with { A($part) }.
    .short = New: { $place } with { A($part) }.
new-part = The { $place } has { A($part) } now.
    .short = New: { $part }.
ask-part-of = { CAP($part) } of what: a fridge, a freezer, a cupboard?
    .short = { CAP($part) } of what?

built-named = The { $place } has a new place now, { $names }.
    .short = Added: { $names }.
ask-full-what = Which place?
filled = { $share ->
    [0] empty
    [10] nearly empty
    [25] a quarter full
    [33] a third full
    [50] half full
    [66] two thirds full
    [75] three quarters full
    [90] nearly full
   *[100] full
  }
filled-noted = The { $place } is { $filled }, noted.
filled-told = You said { $when } that the { $place } is { $filled }.
    .short = { CAP($filled) }, you said { $when }.
ask-where-instead = Where do they go?
place-itself = That is within the { $place } itself.
no-places-of-kind = No { PLURAL($kind) } are recorded.
places-of-kind = { $count ->
    [one] One { $kind }: { $places }.
   *[other] { CAP($count) } { PLURAL($kind) }: { $places }.
  }
place-tour = the { $name } with { $parts }
ask-build-name = What is it called?
