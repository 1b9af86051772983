# Words that several pages share. Every message here has one of its name in each language's folder.
# $name: a food, a person or a device, as the household wrote it.

page-board = Board
page-home = Home
page-labels = Labels
page-charts = Charts
page-teach = Lessons
pages = Pages
skip = Skip to the page
one-moment = One moment.
save = Save
leave-it = Leave it
leave-as-it-was = Leave it as it was
undo = Undo
undone = Undone.
yes = Yes
no = No
nothing-there = None

not-reached = There is no connection to the kitchen. Nothing was changed.
did-not-work = That did not work.
some-were-done = { $done } of { $all } were done.
wrong-field = { $field }: { $why }

amount-about = about { $amount }
age-made = made { $ago }
age-bought = bought { $ago }
age-opened = opened { $ago }
age-frozen = frozen { $ago }
age-thawed = thawed { $ago }
age-unknown = no date known

until-past-days = { $days ->
    [one] one day past guidance: throw it out
   *[other] { $days } days past guidance: throw it out
  }
until-past = past guidance: throw it out
until-refrigerate-now = standing out: put it in the fridge now
until-last-day = today is the last day
until-cook-thoroughly = cook it thoroughly, today or tomorrow
until-past-best = past its best quality
until-unknown = not known how long it keeps
until-no-figure = guidance gives no figure: go by the packet
until-within = within guidance
until-day = until { $day }

contains = Contains { $allergens }
contains-not-for = Contains { $allergen }: not for { $person }
usually-contains = Such food usually contains { $allergen }: ask, for { $person }
said-free-from = Said to be free from { $allergen }, which such food usually contains: ask, for { $person }
place-unknown = place not known
