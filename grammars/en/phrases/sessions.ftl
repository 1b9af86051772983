# Longer pieces of talk.

shop-start = Tell me each food and where it goes. Say that is everything at the end.
    .short = Ready. Food and place.
shop-going-on = Go on, what is next?
shop-nothing = Nothing was put away.
is-there-already = Yes, { $at }.
shop-recap = { $count ->
    [one] One thing put away.
   *[other] { CAP($count) } things put away.
  }
recap-more = { $left ->
    [one] One more place.
   *[other] { CAP($left) } more places.
  } Shall I go on?
recap-place = { $items } { $at }
recap-fix = {""}
    .full = Tell me what is wrong, if anything.

shop-next-there = { CAP($name) }: { $at }, as usual?
    .short = { CAP($name) }, { $at }?
shop-next = Where { DOES($name) } the { $name } go?
    .short = { CAP($name) }: where?
shop-anything-else = Anything else? If not, say that is everything.
    .short = Anything else?
shop-left = Not put away: { $items }.

ask-count-where = Which place shall we check?
count-place-empty = Nothing is recorded in the { $place }, so there is nothing to check.
count-start = The { $place }: { $count ->
    [one] one thing
   *[other] { $count } things
  } on record. Say yes, no or changed.
count-resume = Back to the { $place }, { $left ->
    [one] one thing
   *[other] { $left } things
  } to go.
count-ask = { CAP($item) }{ $at ->
    [none] {""}
   *[other] , { $at }
  }{ $feel ->
    [none] {""}
   *[other] , { $feel }
  }: still there?
    .short = { CAP($item) }?
count-paused = I kept the place. Say go on when you like, today or another day.
count-over = The check is over.
count-tally = The { $place } is checked: { $counts }.
count-tally-none = The { $place } is checked.
count-there = { $count } there
count-gone = { $count } gone
count-changed = { $count } changed
count-other = Then that was the { $name }.
count-back-gone = { CAP($name) }, back on record.
count-revised = { $seen ->
    [gone] { CAP($name) }, gone.
   *[there] { CAP($name) }, there.
  }
count-not-among = No { $name } is recorded in the { $place }.
count-unsure = { CAP($count) } not sure.
count-not-looked = { CAP($count) } not looked at.
count-more-than = I have only { $count } on record. Put the others away as new afterwards. How many of mine are there?
count-noted = { CAP($there) } there, { $gone } gone.
count-elsewhere = Now { $at }.
count-passed-over = Passed over.
noted-gone = Gone.
noted-changed = Changed. Tell me how afterwards.

setup-start = Let us set up your kitchen: { $count } short questions. Say next to pass one over, or wait to pause.
setup-again = Back to setting up.
setup-places = What do you keep food in? Say them all, such as a fridge, a chest freezer and a pantry.
setup-parts = How are they divided? Say, for example, the fridge has four shelves and two drawers.
setup-markers = What markers do you have? Say one at a time, such as a wooden bead or two rubber bands.
setup-dots = Does a number of knots, ridges or dots mean something? Say, for example, one knot means eat soon.
setup-people = Who eats here, and is anyone allergic? Say, for example, Dele is allergic to peanuts.
setup-watts = How many watts is your microwave?
setup-region = Whose food-safety guidance shall I report: United States or United Kingdom?
setup-summary = At what time shall I tell you each evening what to use up?
setup-first-food = Now a first food. Say what it is and where you put it.
setup-more = { $step ->
    [places] Anything else you keep food in? Or say next.
    [parts] Any more shelves, drawers or baskets? Or say next.
    [markers] Another marker? Or say next.
    [dots] Another meaning? Or say next.
    [people] Anyone else? Or say next.
   *[other] Anything more? Or say next.
  }
setup-no-question = None of the { $count } questions is about that.
setup-over = That is the set-up. Say help whenever you wonder what to say.
setup-paused = I kept the place. Say go on when you like.
setup-left = I kept the place, { $left ->
    [one] one question
   *[other] { $left } questions
  } to go. Say help me set up to go on.
setup-go-ahead = Go ahead, tell me.
setup-not-understood = Say the names of what you have, such as fridge and pantry.

confirm-practice = Shall we practise, with nothing changed in your kitchen? Yes or no.
practice-start = This is practice: nothing you say changes your kitchen. Say stop practising to end.
practice-going-on = We are practising already.
practice-over = Practice is over. Your kitchen is as it was.
