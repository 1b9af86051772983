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
