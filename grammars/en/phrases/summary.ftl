# The nightly and the weekly summary: what to use up, most urgent first, what to do first in the line.
# $verb is "cook" for raw food, else "eat". $place has no article: "second shelf of the fridge".

summary-nothing = { $span ->
    [week] Nothing with a date needs using up this week.
   *[night] Nothing with a date needs using up tonight.
  }
summary-late = Here is the summary from { $at }, late.
    .short = Late summary.
summary-lead = { $span ->
    [week] { $count } things to use up this week.
   *[night] { $count } things to use up.
  }
    .short = { $count } things.

summary-throw-out = Throw out { THE($item) }{ summary-place }{ $day ->
    [none] .
   *[other] . { summary-last-day }
  }
    .short = Throw out { THE($item) }.
summary-last-day = The last day was { $day }.
summary-place = { $place ->
    [none] {""}
   *[other] {", "}{ $place }
  }
summary-chill = Put { THE($item) } in the fridge now{ summary-place }.
    .short = { CAP(THE($item)) } into the fridge now.
summary-cook-through = Use { THE($item) } soon, cooked through{ summary-place }.
    .short = Use { THE($item) } soon, cooked through.
summary-cook-or-freeze = { $verb ->
    [cook] Cook
   *[eat] Eat
  } or freeze { THE($item) } tonight{ summary-place }.
    .short = { $verb ->
        [cook] Cook
       *[eat] Eat
      } or freeze { THE($item) } tonight.
summary-freeze-or-cook = Freeze { THE($item) } tonight or { $verb } { THEM($item) } tomorrow{ summary-place }.
    .short = Freeze { THE($item) } tonight or { $verb } { THEM($item) } tomorrow.
summary-use-or-freeze = { $verb ->
    [cook] Cook
   *[eat] Eat
  } or freeze { THE($item) } { BY($day) }{ summary-place }.
    .short = { $verb ->
        [cook] Cook
       *[eat] Eat
      } or freeze { THE($item) } { BY($day) }.
summary-use = { $verb ->
    [cook] Cook
   *[eat] Eat
  } { THE($item) } { summary-by }{ summary-place }.
    .short = { $verb ->
        [cook] Cook
       *[eat] Eat
      } { THE($item) } { summary-by }.
summary-by = { $tonight ->
    [none] { BY($day) }
   *[yes] tonight
  }
summary-not-for = { CAP(IT($item)) } { HAS($item) } { $allergens }: not for { $people }.
    .short = Not for { $people }: { $allergens }.
summary-rest = { $count ->
    [one] One more can wait. Ask for the summary to hear it.
   *[other] { $count } more can wait. Ask for the summary to hear them.
  }
    .short = { $count } more.
summary-stale = Past their best in the freezer, for taste only: { $items }{ $more ->
    [0] .
   *[other] {" "}and { $more } more.
  }
    .short = { $count } past their best in the freezer.
summary-undated = No date for { $items }{ $more ->
    [0] {""}
   *[other] , and { $more } more
  }, in the fridge. If in doubt, throw it out.
    .short = { $count } in the fridge have no date.
