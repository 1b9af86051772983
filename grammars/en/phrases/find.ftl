# Where things are, how many, what this is.

found-one = { THE($item) } { IS($item) } { $where }
    .short = { $where }
found-yes-one = Yes, { $item } { $where }
    .short = Yes, { $where }
found-many = { $name ->
    [none] { CAP($count) } of them.
   *[other] { CAP($name) }, { $count } of them.
  }
    .short = { CAP($count) }.
found-yes-many = Yes, { $count }.
list-entry = { $entry }
item-felt = { $item }, { $feel }
    .short = { $item }
place-empty = The { $place } is empty.
    .short = Empty.
place-holds = { $at }, { $count ->
    [one] one thing: { $items }
   *[other] { $count } things: { $items }
  }
    .short = { $items }
spot-holds = { CAP($at) }, { $spot ->
    [left] on the left
    [right] on the right
    [middle] in the middle
    [front] at the front
    [back] at the back
   *[other] { $spot }
  }: { $items }.
    .short = { $items }.
spots-unknown = { $count ->
    [one] For one more there, the spot is not recorded.
   *[other] For { $count } more there, the spot is not recorded.
  }
    .short = {""}
spot-not-recorded = Nothing is recorded to be just there.
place-by-part = { $at }, { $count } things: { $parts }.
    .short = { CAP($count) }: { $parts }.
part-count = { $count } { $at }
elsewhere-count = { $count } elsewhere
which-part = Which part shall I read?
    .short = Which part?
not-there = None { $at }.
no-such-place-told = I know no place called { $words }. Say: what places do I have.
none-left-gone = No { $name } left: { $how ->
    [thrown-out] thrown out { $when }
    [given-away] given away { $when }
   *[used] used up { $when }
  }.
none-left-gone-by = No { $name } left: { $who } { $how ->
    [thrown-out] threw { THEM($name) } out
    [given-away] gave { THEM($name) } away
   *[used] finished { THEM($name) }
  } { $when }.
it-is-on-the-list = It is on the list to buy.
ask-find = What are you looking for?
ask-count = Count what?

count-total = { OF($total, $name) }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
count-totals = { CAP($name) }: { $total }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
count-kinds = { $count } in all: { $items }.
count-unmeasured = { $count ->
    [one] One container of { $name }, amount not recorded
   *[other] { $count } containers of { $name }, amounts not recorded
  }.
count-and-unknown = And { $count } whose amount nobody said.
count-at = { $amount } { $at }
count-some-at = some { $at }
count-spread = { $places }.
    .short = {""}
count-where = { CAP($at) }.
    .short = {""}
count-none-at = None { $at }.
count-each = { CAP($count) } in all: { $places }.
count-in = { $count } { $at }
count-things = { $count ->
    [one] One thing
   *[other] { $count } things
  } { $at }.

this-is = { CAP($name) }{ $maker ->
    [none] {""}
   *[other] , from { $maker }
  }{ $amount ->
    [none] {""}
   *[other] , { $amount } left
  }.
    .short = { CAP($name) }.
kept-where = { THE($item) } { IS($item) } { $where }.
marker-spare = { $name ->
    [none] The { $marker } is spare.
   *[other] The { $marker } is spare. It was on the { $name }.
  }
marker-unknown = I do not know that marker.
ask-marker-on = What is it on?
ask-whats-this = Touch its marker, or tell me how it feels.
several-markers = { $count ->
    [one] One: { $items }.
   *[other] { $count } have one: { $items }.
  }
several-spare = { $count ->
    [one] One more is spare.
   *[other] { $count } more are spare.
  }
marked-item = the { $name } { $at }
item-caution = Careful: { $caution }.
item-note = A note says: { $note }.
ask-about = Tell you about what?
amount-left = { CAP($amount) } left.
no-dates = No date is recorded.
made-by = From { $maker }.
apart-by-marker = { CAP($name) }: { $marker }.
felt-alike = They feel alike: a marker on one would tell them apart.
owner-is = { CAP(THE($name)) } { IS($name) } for { $owner }.
owner-unknown = Nobody is recorded as having the { $name }.
belongs-to = It belongs to { $name }.
diets-of = Marked { $diets }.
contains-list = Said to contain { $allergens }.
said-free-list = Said to be free from { $allergens }.
has-reheating = Reheating is recorded.
open-since-unknown = It is open, and nobody said since when.
date-of = { $what ->
    [made] Made { ON($date) }.
    [bought] Bought { ON($date) }.
    [came] Came in { ON($date) }.
    [opened] Opened { ON($date) }.
    [frozen] Frozen { ON($date) }.
    [thawed] Thawed { ON($date) }.
    [useBy] Use by { $date }.
   *[bestBefore] Best before { $date }.
  }

reach-place = { CAP($at) }{ $position ->
    [none] {""}
   *[other] , { $position } from the top
  }.
reach-feel = It is { $feel }.
reach-no-feel = How it feels is not recorded.
reach-marker = The { $marker } is on the { $spot }.
reach-beside = Beside it: { $items }.
reach-neighbour = the { $name }{ $feel ->
    [none] {""}
   *[other] , { $feel }
  }

# What stands by it, and how it feels.
beside-told = { $side ->
    [behind] Behind the { $name }
    [in-front-of] In front of the { $name }
    [on-top-of] On top of the { $name }
    [under] Under the { $name }
   *[beside] By the { $name }
  }: { $items }.
beside-shelf = What is { $side ->
    [behind] behind
    [in-front-of] in front of
    [on-top-of] on top of
    [under] under
   *[beside] next to
  } the { $name } is not recorded. With { THEM($name) } { $at }: { $items }.
beside-nothing = Nothing else is recorded { $at }.
felt-as = The { $name } { IS($name) } { $feel }.
felt-marker-at = The marker is on the { $spot }.
no-marker-on = No marker is on { THEM($name) }.
frozen-before = Frozen before, { $dates }.
on-day = { ON($date) }

between-told = Between { THE($one) } and { THE($other) }: { $items }.
between-nothing = Nothing is recorded between { THE($one) } and { THE($other) }.
between-unknown = What stands between them is not recorded. { CAP($at) } { $count ->
    [0] is nothing else.
    [one] is also { $items }.
   *[other] are also { $items }.
  }
between-apart = { CAP(THE($one)) } { IS($one) } { $at }, and { THE($other) } { $there }.

guess-so = Yes.
guess-not = No, not { THE($name) }.
