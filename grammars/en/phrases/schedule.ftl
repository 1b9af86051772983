# What is said unasked when a timer or a reminder is due. $late is how long ago it was due.

timer-due = { $late ->
    [none] { $label ->
        [none] Your timer is done.
       *[other] The { $label } timer is done.
      }
   *[other] { $label ->
        [none] Your timer was done { $late }.
       *[other] The { $label } timer was done { $late }.
      }
  }
    .short = { $late ->
        [none] { $label ->
            [none] Timer done.
           *[other] { $label } timer, done.
          }
       *[other] { $label ->
            [none] Timer, done { $late }.
           *[other] { $label } timer, done { $late }.
          }
      }
reminder-due = { $late ->
    [none] { $label ->
        [none] Here is the reminder you set.
       *[other] Reminder: { $label }.
      }
   *[other] { $label ->
        [none] A late reminder. It was due { $late }.
       *[other] A late reminder, due { $late }: { $label }.
      }
  }
reminder-where = { CAP(THE($item)) } { IS($item) } { $at }.
    .short = {""}
