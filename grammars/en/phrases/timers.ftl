# Timers and reminders.

ask-how-long = { $label ->
    [none] How long?
   *[other] How long for the { $label }?
  }
ask-how-long-again = Say a length of time, such as ten minutes.
ask-by-how-much = By how much?
timer-set = { $label ->
    [none] Timer, { $time }.
   *[other] { CAP($label) } timer, { $time }.
  }
confirm-timer = A timer for { $time }? Yes or no.
no-such-timer = There is no { $label } { $kind ->
    [timer] timer
   *[other] reminder
  }.
no-timers = { $kind ->
    [timer] No timer is running.
   *[other] No reminders.
  }
timer-with = { $label ->
    [none] one with { $left } left
   *[other] { $label } with { $left } left
  }
which-timer = Which one: { $choices }?
timer-now = { $label ->
    [none] { CAP($left) } now.
   *[other] { CAP($label) }, { $left } now.
  }
timer-longer = { $label ->
    [none] { CAP($time) } more.
   *[other] { CAP($label) }, { $time } more.
  }
timer-left = { CAP($left) } left{ $label ->
    [none] {""}
   *[other] {" "}on the { $label }
  }.
timers-running = { CAP($count) } timers: { $timers }.
timer-cancelled = { $label ->
    [none] { $kind ->
        [timer] Timer cancelled.
       *[other] Reminder cancelled.
      }
   *[other] { CAP($label) }, cancelled.
  }
nothing-cancelled = Nothing is cancelled.
confirm-cancel-timer = Cancel the { $label ->
    [none] {""}
   *[other] { $label }{" "}
  }{ $kind ->
    [timer] timer
   *[other] reminder
  }? Yes or no.
ask-remind-what = Remind you of what?
ask-remind-when = When shall I remind you: { $label }?
reminder-set = I will remind you { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }at { $time }: { $label }.
confirm-reminder = Remind you { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }at { $time }: { $label }? Yes or no.
reminder-words = { $label }, { $date ->
    [none] {""}
   *[other] { $date }{" "}
  }at { $time }
reminders-open = { $count ->
    [one] One: { $reminders }.
   *[other] { CAP($count) }: { $reminders }.
  }
timer-held = { $label ->
    [none] Paused, with { $left } left.
   *[other] { CAP($label) }, paused with { $left } left.
  }
timer-held-with = { $label ->
    [none] one paused with { $left } left
   *[other] { $label }, paused with { $left } left
  }
timer-resumed = { $label ->
    [none] Running again, { $left } left.
   *[other] { CAP($label) }, running again, { $left } left.
  }
reminder-set-for = I will remind { $name } { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }at { $time }: { $label }.
no-date-to-remind = { CAP($name) } { HAS($name) } no date on record to remind you by.
timer-rings = { $label ->
    [none] At { $time }.
   *[other] { CAP($label) }, at { $time }.
  }
none-due-then = No reminder is due then.
