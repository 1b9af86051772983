# A household's own calendar: read on a screen or by a screen reader, not spoken.

# The title of a day.
calendar-last-day = { CAP($item) }: last day by guidance.
# Where it stands.
calendar-where = { CAP($at) }.
# From whom the figure is: an agency, its document, the year.
calendar-source = From { $source }.
calendar-in-doubt = When in doubt, throw it out.
# What a list of such days is called.
calendar-name = { $household }, last days and reminders.

# The page that a tablet on the wall shows. Headings and the lines that stand for nothing.
wall-days = Last days by guidance
wall-no-days = Nothing has its last day in the next three days.
wall-day = { CAP($item) }: { $past ->
    [none] { $day }
   *[past] { $day }, past guidance
  }.
wall-list = To buy
wall-no-list = Nothing is on the list.
# A line of it, there and as plain text: what it is leads.
list-line = { $name }{ $amount ->
    [none] {""}
   *[other] , { $amount }
  }{ $note ->
    [none] {""}
   *[other] , { $note }
  }{ $shop ->
    [none] {""}
   *[other] , from the { $shop }
  }{ $person ->
    [none] {""}
   *[other] , for { $person }
  }
wall-reminders = Timers and reminders
wall-no-reminders = None is running.
wall-reminder = { $label ->
    [none] { $kind ->
        [timer] A timer
       *[reminder] A reminder
      }
   *[other] { CAP($label) }
  }, { $day ->
    [none] { AT($time) }
   *[other] { ON($day) } { AT($time) }
  }.
wall-in-doubt = Days are by published guidance. When in doubt, throw it out.
wall-as-of = As it was { AT($time) }.
