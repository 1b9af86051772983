# Longer pieces of talk.

shop-start = Tell me each food and where it goes. Say that is everything at the end.
    .short = Ready. Food and place.
survey-start = Say where you stand, then what you touch, one thing after another. Say that is everything at the end.
    .short = Place, then food.
survey-where = Which place first?
survey-here = At the { $place }, then.
    .short = { CAP($place) }.
survey-recap = { $count ->
    [one] One thing on record.
   *[other] { CAP($count) } things on record.
  }
survey-undated = { $all ->
    [yes] No dates are known.
   *[no] { CAP($count) } have no date.
  } Tell me any you can find; the rest stays unknown.
    .full = { $all ->
    [yes] No dates are known.
   *[no] { CAP($count) } have no date.
  } Tell me any you can find, such as: { THE($name) } { IS($name) } use by Friday. The rest stays unknown.
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
count-instead = Check the { $place } instead?
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
count-no-answer = Nothing noted. Say stop to end the check.
count-stopped = The check is stopped.
count-stopped-gone = Put down as gone: { $items }.
count-stopped-changed = Changed: { $items }.
count-stopped-rest = { $none ->
    [yes] Nothing was changed.
   *[no] The rest is as it was.
  }
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
count-not-among = No { $name } on record in the { $place }.
count-unsure = { CAP($count) } not sure.
count-not-looked = { CAP($count) } not looked at.
count-more-than = I have only { $count } on record. Put the others away as new afterwards. How many of mine are there?
count-how-many = Say how much of { THE($name) } is left, in all.
count-noted = { CAP($there) } there, { $gone } gone.
count-elsewhere = Now { $at }.
count-passed-over = Leaving that one.
count-told = { $seen ->
    [there] { CAP($items) }: there.
    [gone] { CAP($items) }: used up.
   *[unsure] { CAP($items) }: not sure, left on record.
  }
count-missing = { CAP($items) }, not found. { $count ->
    [one] Is it used up?
   *[other] Are they used up?
  } Yes or no.
count-moved = { CAP($name) }, now { $at }.
count-noted-of = { CAP($name) }: { $there } there, { $gone } gone.
count-only-so-many = { CAP($name) }: I have only { $count } on record. Put the others away as new afterwards.
count-recorded-at = { CAP($name) } is on record { $at }.
count-move-here = Is the { $name } in the { $place } now? Yes or no.
count-add-here = I have no { $name } on record in the { $place }. Note it there? Yes or no.
count-to-go = Still to check, { $count }{ $left ->
    [0] :
   *[other] , among them
  } { $items }.
noted-gone = Gone.
noted-changed = Changed. Tell me how afterwards.

setup-start = { $count ->
    [one] One short question.
   *[other] { CAP($count) } short questions.
  } Say next to pass one over, or wait to pause.
setup-more-to-come = More that helps, one at a time. Say next to pass one over.
setup-again = Back to setting up.
setup-wholes = What keeps your food: a fridge, a freezer, a larder?
setup-eaters = Who eats here, and what must they not eat?
setup-manner = How shall I talk: short or full, slower or faster, louder or quieter?
setup-right = { CAP($told) }. Right?
setup-kept = Kept.
setup-tell-again = Nothing kept. Tell me again.
setup-which-nuts = { $name ->
    [none] You and nuts
   *[other] { $name } and nuts
  }: tree nuts, peanuts, or both?
setup-what-not = { $name ->
    [none] What must you not have? I did not catch it.
   *[other] What must { $name } not have? I did not catch it.
  }
setup-whose = Who must not have { $allergens }?
setup-say-who = Say a name, or say next to leave it.
setup-whose-not-kept = Not kept, for nobody was named: { $what }.
setup-unclear-not-kept = { $name ->
    [none] What you must not have is not kept.
   *[other] What { $name } must not have is not kept.
  }
setup-whose-else = Who is that: { $what }?
eaters-noted = Noted: { $told }.
eaters-known = I have that: { $told }.
setup-both-nuts = Then both, to be careful.
setup-your-name = And your name?
setup-not-kept = Not kept: { $told }.
setup-first-over = That is all for today. Tell me a food and where it is. Say set up more when you like.
    .short = That is all. Tell me a food and where it is.
told-whole = { A($name) }
told-whole-with = { A($name) } with { $parts }
told-eater = { $name ->
    [none] you
   *[other] { $name }
  }{ $allergens ->
    [none] {""}
   *[other] {" "}who must not have { $allergens }
  }{ $diets ->
    [none] {""}
   *[other] , { $diets }
  }{ $risk ->
    [none] {""}
    [pregnant] {""}, who is pregnant, so at higher risk
   *[other] , at higher risk from food
  }
told-length = { $length ->
    [short] short answers
    [full] full answers
   *[usual] answers as they are
  }
told-rate = { $rate ->
    [slower] a little slower
   *[faster] a little faster
  }
told-volume = { $volume ->
    [louder] louder
   *[quieter] quieter
  }
told-whisper = in a whisper
setup-parts = How are they divided? Say, for example, the fridge has four shelves and two drawers.
setup-markers = What markers do you have? Say one at a time, such as a wooden bead or two rubber bands.
setup-dots = Does a number of knots, ridges or dots mean something? Say, for example, one knot means eat soon.
setup-watts = How many watts is your microwave?
setup-region = Whose food-safety guidance shall I report: United States or United Kingdom?
setup-summary = At what time shall I tell you each evening what to use up?
setup-more = { $step ->
    [parts] Any more shelves, drawers or baskets? Or say next.
    [markers] Another marker? Or say next.
    [dots] Another meaning? Or say next.
   *[other] Anything more? Or say next.
  }
setup-no-question = None of the { $count } questions is about that.
offer-parts = Shall I note how the { $place } is divided? Then I can say which shelf.
    .short = Note how the { $place } is divided?
offer-markers = Several { PLURAL($container) } feel alike now. Shall we choose markers for them?
    .short = Choose markers for the { PLURAL($container) }?
setup-part-over = Good.
setup-over = That is the set-up. Say help whenever you wonder what to say.
setup-paused = I kept the place. Say go on when you like.
setup-left = I kept the place, { $left ->
    [one] one question
   *[other] { $left } questions
  } to go. Say help me set up to go on.
setup-go-ahead = Go ahead, tell me.
confirm-practice = Shall we practise, with nothing changed in your kitchen? Yes or no.
practice-start = This is practice: nothing you say changes your kitchen. Say stop practising to end.
practice-going-on = We are practising already. Say stop practising to end.
practice-over = Practice is over. Your kitchen is as it was.

# Lessons.
lesson-begins = Lesson { $number }: { $name }. { $purpose }
    .short = Lesson { $number }: { $name }.
lesson-apart = It is a kitchen of its own; yours is not touched.
lesson-caution = { $caution }
lesson-task = Your task: { $task }
    .short = { $task }
lesson-hint = { $hint }
lesson-well = { $how ->
    [alone] { $tries ->
        [1] Done, at once.
       *[other] Done.
      }
   *[hint] Done, with a hint.
  }
lesson-over = That was the last task.
lesson-report = { CAP($name) }: { $count ->
    [one] one task
   *[other] { $count } tasks
  }, { $alone ->
    [0] none
   *[other] { $alone }
  } done alone{ $hinted ->
    [0] {""}
   *[other] , { $hinted } with a hint
  }.
lesson-after = Say next lesson, that lesson again, or stop the lesson.
confirm-sharing = May your teacher be told, task by task, how your lessons went? Nothing of your kitchen. Yes or no.
sharing-on = Your teacher may be told how the lessons went. Say stop sharing my lessons at any time.
sharing-off = Nobody is told how your lessons went.
sharing-is = { $may ->
    [yes] Yes: your teacher may be told how the lessons went. Say stop sharing my lessons to end that.
   *[no] No, nobody is told how your lessons went.
  }
lesson-left = The lesson is over. We are back in your own kitchen.
lessons-are = { CAP($count) } lessons: { $lessons }. Say lesson one, or any other.
no-lessons = There are no lessons in this language yet.
no-such-lesson = There are { $count } lessons.
no-lesson-now = No lesson is going on. Say start a lesson.
no-lesson-yet = No lesson was held yet. Say start a lesson.
