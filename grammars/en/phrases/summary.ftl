# The nightly and the weekly summary: what to use up, most urgent first, what to do first in the line.
# $verb is "cook" for raw meat and fish, "eat" for cooked food, "use" for the rest. $place has no article: "second shelf of the fridge".

summary-nothing = { $span ->
    [week] Nothing with a date needs using up this week.
   *[night] Nothing with a date needs using up tonight.
  }
summary-late = Here is the summary from { $at }, late.
    .short = Late summary.
summary-lead = { $span ->
    [week] { $count } things to use this week.
   *[night] { $count } things to use.
  }
    .short = {""}

summary-throw-out = Throw out { THE($item) }{ summary-place }{ $day ->
    [none] .
   *[other] : { ITS($item) } last day was { $day }.
  }
    .short = Throw out { THE($item) }.
summary-place = { $place ->
    [none] {""}
   *[other] {", "}{ $place }
  }
summary-throw-many = Throw out { $count } things: { $items }.
summary-others = { $count } more
summary-throw-rest = Throw out { $items }.
summary-thrown = { $item }
    .full = { $item }, { $place }
summary-chill = Put { THE($item) } in the fridge now{ summary-place }.
    .short = { CAP(THE($item)) } into the fridge now.
summary-cook-through = Use { THE($item) } soon, cooked through{ summary-place }.
    .short = Use { THE($item) } soon, cooked through.
summary-cook-or-freeze = { summary-verb } or freeze { THE($item) } tonight{ summary-place }.
    .short = { summary-verb } or freeze { THE($item) } tonight.
summary-freeze-or-cook = Freeze { THE($item) } tonight or { summary-verb } { THEM($item) } tomorrow{ summary-place }.
    .short = Freeze { THE($item) } tonight or { summary-verb } { THEM($item) } tomorrow.
summary-use-or-freeze = { summary-verb } or freeze { THE($item) } { BY($day) }{ summary-place }.
    .short = { summary-verb } or freeze { THE($item) } { BY($day) }.
summary-use = { summary-verb } { THE($item) } { summary-by }{ summary-place }.
    .short = { summary-verb } { THE($item) } { summary-by }.
summary-by = { $tonight ->
    [none] { BY($day) }
   *[yes] tonight
  }
summary-verb = { $verb ->
    [cook] cook
    [eat] eat
   *[use] use
  }
summary-not-for = { CAP(IT($item)) } { HAS($item) } { $allergens }: not for { $people }.
    .short = Not for { $people }: { $allergens }.
summary-rest = { $count ->
    [one] And one more. Ask for the summary to hear it.
   *[other] And { $count } more. Ask for the summary to hear them.
  }
    .short = { $count } more.
summary-stale = Past their best in the freezer, for taste only: { $items }.
    .short = { $count } past their best in the freezer.
summary-undated = No date for { $items }, in the fridge. If in doubt, throw it out.
    .short = { $count } in the fridge have no date.
