# How old, which date, how long it keeps, what to use first.

ask-how-old = How old is what?
ask-date-of = The date of what?
ask-keeps = Which food?
age = { CAP($name) }: { $what ->
    [made] made
    [bought] bought
    [came] came in
    [frozen] frozen
   *[opened] opened
  } { ON($date) }{ $count ->
    [none] {""}
    [0] {""}
    [1] {""}
   *[other] , { $days } ago
  }{ $made ->
    [unknown] ; when it was made is not known.
   *[none] .
  }
    .short = { $count ->
    [0] From today.
   *[other] { CAP($days) }.
  }
age-at-least = { CAP($name) }: no date, but here at least { $days }.
age-unknown = { CAP($name) }: no date is recorded.
age-entry = { $name } { $at }, { $what ->
    [made] made
    [bought] bought
    [came] came in
    [frozen] frozen
   *[opened] opened
  } { ON($date) }
age-entry-unknown = { $name } { $at }, no date
ages = { CAP($count) }, oldest first: { $entries }.
item-date = { CAP($name) }: { $what ->
    [made] made { ON($date) }
    [bought] bought { ON($date) }
    [came] came in { ON($date) }
    [opened] opened { ON($date) }
    [frozen] frozen { ON($date) }
    [thawed] thawed { ON($date) }
    [useBy] use by { $date }
   *[bestBefore] best before { $date }
  }.
added-on = { CAP($name) }: put on the record { ON($date) }.
no-printed-date = No printed date is recorded.
not-opened = No opening of the { $name } is recorded.
date-not-recorded = { $what ->
    [made] When it was made
    [bought] When it was bought
    [opened] When it was opened
    [frozen] When it was frozen
   *[other] When it was thawed
  } is not recorded.
in-no-table = { CAP($name) } { IS($name) } in no table of mine.
keeps-generic = { $listed ->
    [no] { CAP($food) } { IS($food) } in no table of mine. Leftovers in general
   *[yes] { CAP($food) }
  }{ $where ->
    [freezer] , frozen
    [pantry] , in the cupboard
    [counter] , at room temperature
   *[fridge] , in the fridge
  }: { $span }{ $kind ->
    [quality] {" "}for best quality
   *[keeping] {""}
  }, guidance says.
    .short = { $listed ->
        [no] { CAP($food) } { IS($food) } in no table of mine. Leftovers: { $span }.
       *[yes] { CAP($span) }.
      }
# Nobody said where: each place has its figure.
keeps-each = { $listed ->
    [no] { CAP($food) } { IS($food) } in no table of mine. Leftovers in general
   *[yes] { CAP($food) }
  }, guidance says: { $spans }.
    .short = { CAP($spans) }.
keeps-at = { $span } { $where ->
    [freezer] frozen
    [pantry] in the cupboard
    [counter] out of the cold
   *[fridge] in the fridge
  }{ $where ->
    [freezer] {""}
   *[other] { $kind ->
        [quality] {" "}for best quality
       *[keeping] {""}
      }
  }
keeps-sealed = Sealed, go by its label.
food-stored-at = { $food } { $places }
stored-at = { $where ->
    [freezer] frozen
    [pantry] in the cupboard
    [counter] left out
   *[fridge] in the fridge
  }
# Where it was all the time since, for a verdict on its age.
kept-at = { $where ->
    [freezer] frozen all along
    [pantry] in the cupboard
    [counter] left out
   *[fridge] in the fridge
  }
taken-as-raw = That is for raw.
    .short = Raw.
yours = Of yours, { $items }.
verdict-entry = { $name }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }: { $verdict ->
    [fine] within guidance{ $last ->
        [none] {""}
       *[other] {" "}until { $last }
      }
    [use-soon] use by { $last ->
        [none] soon
       *[other] { $last }
      }
    [last-day] last day today
    [throw-out] past guidance, throw it out
    [past-best-quality] past its best for taste
    [cook-thoroughly] use soon, cooked through
    [refrigerate-now] into the fridge now
    [no-figure] no figure, go by the label
   *[other] no date; when in doubt, throw it out
  }
use-first = { $count } to use first{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
    .short = { $count } to use.
use-past = { $count ->
    [one] Past guidance, to throw out: { $items }.
   *[other] { $count } past guidance, to throw out: { $items }.
  }
    .short = Throw out { $count }: { $items }.
use-more = { $past ->
    [none] {""}
   *[other] { CAP($past) } more past guidance
  }{ $soon ->
    [none] {""}
   *[other] { $past ->
        [none] { CAP($soon) } more to use first
       *[other] {" "}and { $soon } more to use first
      }
  }. Shall I go on?
    .short = More?
use-past-rest = Past guidance, to throw out: { $items }.
use-entry = { $name }{ $at ->
    [none] {""}
   *[other] , { $at }
  }: { $verdict ->
    [throw-out] past guidance, throw out
    [last-day] last day today
    [refrigerate-now] into the fridge now
    [cook-thoroughly] soon, cooked through
    [use-soon] { $last ->
        [none] soon
       *[other] { BY($last) }
      }
   *[other] { $last ->
        [none] no date
       *[other] { BY($last) }
      }
  }
    .short = { $name }, { $verdict ->
    [throw-out] throw out
    [last-day] today
   *[other] { $last ->
        [none] soon
       *[other] { BY($last) }
      }
  }
counted-from = It counts from { $date }, when it { $what ->
    [made] was made
    [bought] was bought
    [came] came in
    [thawed] thawed
    [frozen] was frozen
   *[opened] was opened
  }.
counted-by-told = That counts what you told me.
label-outlived = Its label says { $printed }, but the stricter of the two holds.
    .short = The stricter holds, not the label.
because-of = { $name }: { $reason }
nothing-due = Nothing { $at ->
    [none] {""}
   *[other] { $at }{" "}
  }{ $window ->
    [none] needs using up.
   *[yes] more needs using up by then.
  }
next-due = Next comes { $entry }.
older = { CAP($count) } from before { $date }: { $entries }.
none-older = Nothing is from before { $date }.
all-dated = Everything has a date.
undated = { $count ->
    [one] One has no date: { $items }.
   *[other] { CAP($count) } have no date: { $items }.
  }
oldest-is = The oldest is { $entry }.
done-then = { CAP($count) }: { $entries }.
none-done-then = Nothing still here was { $deed ->
    [frozen] frozen
    [made] made
    [bought] bought
    [opened] opened
   *[added] put away
  } then.

# "Can I freeze it": asked only.
ask-may-freeze = Freeze what?
freezes-for = Yes. Frozen, { $food }: { $span } for best quality, guidance says.
    .short = Yes, { $span }.
freezes-no-figure = Guidance gives no freezer time for { $food }. Kept frozen, food keeps; the times are for taste only.
is-frozen = { CAP(THE($name)) } { IS($name) } frozen already.
freeze-rather-not = Rather not: the chart says not to freeze { $name }.
freeze-too-late = Do not freeze the { $name }.
