# Charts on the page: titles, bars and the one sentence that says what each shows.

plot-group = { $group }
plot-items = items
plot-used = used
plot-thrown-out = thrown out
plot-given-away = given away

plot-ages-title = How old things are
plot-age-group = { $from ->
    [0] up to { $to ->
        [one] one day
       *[other] { $to } days
    }
   *[other] { $from } to { $to } days
}
plot-age-over = more than { $days }
plot-age-unknown = no date known
plot-ages-sentence = { $count ->
    [0] There is nothing in the kitchen.
    [one] One item, { $fresh ->
        [0] more than a week old
       *[other] from the last seven days
      }.
   *[other] Of { $count } items, { $fresh ->
        [0] none are
        [one] one is
       *[other] { $fresh } are
      } from the last seven days, and { $unknown ->
        [0] all have a date
        [one] one has no date
       *[other] { $unknown } have no date
      }.
  }

plot-calendar-title = When things reach their last day
plot-calendar-past = past its date
plot-calendar-sentence = { $past ->
    [0] Nothing is past its last day
    [one] One item is past its last day
   *[other] { $past } items are past their last day
  }, { $today ->
    [0] none reach it today
    [one] one reaches it today
   *[other] { $today } reach it today
  }, and { $week ->
    [0] none
    [one] one does
   *[other] { $week } do
  } in the next seven days.

plot-use-title = What became of things, by month
plot-use-sentence = This month { $used ->
    [0] nothing was used up
    [one] one item was used up
   *[other] { $used } items were used up
  }, { $thrown ->
    [0] none were thrown out
    [one] one was thrown out
   *[other] { $thrown } were thrown out
  } and { $given ->
    [0] none were given away
    [one] one was given away
   *[other] { $given } were given away
  }. Last month { $thrownBefore ->
    [0] none were thrown out
    [one] one was thrown out
   *[other] { $thrownBefore } were thrown out
  }.
