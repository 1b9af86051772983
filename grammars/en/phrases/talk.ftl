# Talk about the talk.

nothing-said-yet = I have not said anything yet.
waiting = I will wait. Say go on when you are ready.
    .short = Waiting.
where-we-were = Where we were.
where-we-stopped = { $session ->
    [count] I kept the place. Say go on with the check when you like.
   *[setup] I kept the place. Say go on with the set-up when you like.
  }
nothing-more = That was all.
length-now = { $length ->
    [short] I will keep it short.
    [full] I will tell you everything, in full.
   *[usual] I will speak at the usual length.
  }
from-your-record = That is what was told to me and recorded.
faster-now = Faster.
slower-now = Slower.
usual-speed = My usual speed.
usual-volume = My usual volume.
louder-now = Louder.
quieter-now = Quieter.
whispering = Whispering.
whispering-tonight = Whispering until the morning.
sounds-on = A short sound before each answer.
sounds-off = No more sounds.
no-whisper = No more whispering.
as-fast-as-i-go = That is as fast as I go.
as-slow-as-i-go = That is as slow as I go.
as-loud-as-i-go = That is as loud as I go.
as-quiet-as-i-go = That is as quiet as I go.
spelled = { $letters }.
spell-what = Spell what?
names-only = { CAP($names) }.
no-names = There were no names in that.
that-many = { CAP($count) }.
steps-in-all = { CAP($count) } steps.
nothing-to-count = There was nothing to count in that.
i-heard = I heard: { $heard }.
heard-nothing-yet = I have heard nothing before this.
procedure-ended = All right, I stop there.
offer-undo = Take back what was just done{ $about ->
    [none] {""}
   *[other] {" "}to the { $about }
  }?
nothing-open = There is nothing to cancel. Undo takes back the last change.
welcome = You are welcome.
hello = Hello{ $name ->
    [none] {""}
   *[other] {" "}{ $name }
  }. What shall we do?
goodbye = Goodbye.
say-next = Say next for the next step.
all-right = All right.
nothing-was-asked = Nothing is open just now. What would you like?
good = Good.

# Help, for where we are.
help-general = Ask: where is the { $name }; what is old; how do I reheat the { $heated }. Tell me what you put away or finish. Say more for more.
    .short = Say: where is; what is old; reheat; I put away; I finished. Say more for more.
help-start = Nothing is recorded yet. Say, help me set up, or tell me a food and where you put it.
hello-empty = Hello{ $name ->
    [none] {""}
   *[other] {" "}{ $name }
  }. I keep in mind what food you have, where it is and how old.
    .short = Hello. I keep track of your food.
offer-begin = Shall we begin?
help-lesson = Do the task in any words. Or say hint, what was I to do, skip this one, how did we do, or stop the lesson.
help-practice = This is practice, so try anything: put food away, find it, finish it. Say stop practising to end.
help-topic = { $topic ->
    [list] Say: put oats on the list; make that two bags; take it off again; is milk on my list; how many things are on it; I got the eggs.
    [notes] Say: leave a note for, the name, and then the words. Ask: any messages. For a food: put a note on the soup saying it needs salt.
    [people] Say: Dele is allergic to peanuts; Ruth eats vegan; there is tahini in the hummus. Ask: what can Dele eat; is the stew vegan; anything with sesame.
    [markers] Say: put the wooden bead on the soup; what is the cloth patch; which markers are spare; one knot means eat soon.
    [timers] Say: set a timer for ten minutes for the rice; how long is left; remind me tomorrow to freeze the chicken; stop the timer.
    [touch] Touch its marker, or tell me how it feels: the lid, a band, dots, the shape. Say: what is the jar with the cloth patch.
    [freezing] Say: what is in the freezer; freeze the chicken; how long does stew keep frozen; let us check the freezer.
    [places] Say: what is on the second shelf; which place is empty; the chest freezer has three baskets.
    [dates] Say: use by Friday; I opened it yesterday; when does the yogurt run out; what should I use first.
    [heating] Say: how do I reheat the stew; then next, back, repeat, and done after each step.
    [putting] Say what it is and where: butter on the top shelf of the fridge, use by Friday. Anything you leave out may be said later.
    [using] Say: I finished the milk; took two out; half left; threw the ham out. Undo brings it back.
    [finding] Ask: where is it; what is on the second shelf; what is the one with the bead; what have I got with tomatoes.
    [stopping] Say stop, and I am silent. Say go on for the rest; shorter, or slower, to change how I talk.
    [lessons] Say: start a lesson; lesson two; hint; how did we do; stop the lesson.
    [checks] Say: let us check the freezer; or a shelf and what stands there: top shelf, butter and two jars of jam.
    [power] Say: the power went out at six; what is lost; the power is back.
    [summary] Say: read me the summary; summary at seven; what should I use first.
    [guide] A page prints a guide to this kitchen, one page, in large print and Braille: under Labels, press guide.
    [batches] Say: six portions of soup, two in the fridge and four in the freezer, made today. Later: one portion less.
   *[undo] Say undo and the last change is taken back. Say: no, the top shelf, and only that part is put right.
  }
explained = { $topic ->
    [markers] A marker is something you can feel on a container, to know what is in it.
    [list] The list is what to buy.
    [notes] A note is a message that waits for somebody, or a remark kept with a food.
    [people] I keep who eats here and what they must not have, and say so when it matters.
    [timers] A timer counts down; a reminder waits for its day.
    [places] A place is anything food stands in or on; it may have shelves, drawers, baskets and a door.
    [dates] I keep the day a food was made, bought, opened or frozen, and what is printed on it.
    [heating] I read heating one step at a time, and wait for you.
    [lessons] A lesson is practice in a kitchen of its own, twelve things in it; yours is not touched.
    [checks] A check goes over a place with you, thing by thing, so that the record is what your hands find.
    [power] When the power goes I tell you what guidance says of the food, step by step.
    [summary] The summary tells you each evening what to use up.
    [guide] The guide is one page that tells what to say and what each marker means here.
    [batches] A batch is one cooking in several containers; what you tell me of it holds for all.
   *[undo] Nothing you say is lost for good: the last change can always be taken back.
  }
example-marked = In your kitchen, the { $marker } means { $name }.
example-mark = For you: put the { $marker } on the { $name }.
example-listed = On yours: { $name }.
example-person = For you: what can { $name } eat.
example-place = For you: what is in the { $name }.
example-heated = For you: how do I reheat the { $name }.
example-dated = For you: how old is the { $name }.
example-found = For you: where is the { $name }.
example-used = For you: I finished the { $name }.
help-more-food = Food: how old is the stew; move the soup to the freezer; I took two out; put oats on the list; undo.
help-more-kitchen = Kitchen: what is on the second shelf; what is the glass bead; one knot means eat soon; let us check the freezer.
help-more-talk = Talk: say that again; shorter; slower; spell that; why; what did you hear; stop.
help-question = { $expecting ->
    [yes-no] Say yes or no, or never mind.
    [choice] { $choices ->
        [none] Say which one, or never mind.
       *[other] Say { $choices }, or never mind.
      }
    [place] Say a place, such as the second shelf of the fridge, or never mind.
    [amount] Say how much: two portions, half, all of it. Or never mind.
    [date] Say a day, such as yesterday or last Friday. Or say unknown.
    [marker] Say how it feels: a glass bead, a cloth patch with one ridge. Or never mind.
    [time] Say a time or how long. Or never mind.
   *[other] Say it in a few words, or never mind.
  }
help-session = { $session ->
    [shop] Say each food and where it goes. Correct me at any time. Say that is everything at the end.
    [count] Say yes, no, changed, or how many. Say wait to pause, or stop the check.
   *[setup] { $step ->
        [wholes] Say what you have in any words: a fridge with a door, and a chest freezer. Or next, or wait.
        [eaters] Say who, and what they must not eat: just me, and Jack, who is allergic to eggs. Or next.
        [manner] Say, for example, short and a little slower. Or next.
       *[other] Answer in your own words. Say next to pass over one, wait to pause.
      }
  }
help-steps = Say next, back, repeat, how many are left, start over, or done when you have done it.

# Guided steps.
step = { $text }
steps-begin = { CAP($title) }, { $count ->
    [one] one step.
   *[other] { $count } steps.
  }
    .short = { $count ->
    [one] One step.
   *[other] { CAP($count) } steps.
  }
last-step = Last step.
first-already = That was the first.
steps-over = That was the last step.
reheating-over = That was the last step. Enjoy it.
no-steps = We are not going through any steps.
so-many-steps = There { $count ->
    [one] is one step
   *[other] are { $count } steps
  }.
no-such-step = There is no step about { $words }.
steps-left-own = { CAP($left) } more after this: { $own } you told me, and { $other } of guidance.
steps-left = { $left ->
    [0] This is the last.
    [one] One more after this.
   *[other] { CAP($left) } more after this.
  }
picked-up = { CAP($title) }, { $step } step, from { $when }.
    .short = { CAP($step) } step.
no-steps-for = No steps are open for the { $name }. Say how do I reheat it, to begin.
step-time = { $step ->
    [none] { CAP($time) }.
   *[other] { CAP($time) }, at the { $step } step.
  }
step-quoted = { $step ->
    [none] { $words }
   *[other] At the { $step } step: { $words }
  }
step-before = First: { $text }
step-then = Then: { $words }
back-to-step = Then go back, and say next when it is so.
wait-until-so = I will wait. Say next when it is ready.
    .short = Waiting.
steps-after-own = Then { $left ->
    [one] one more, of guidance.
   *[other] { $left } more, of guidance.
  }
step-coming = Next comes: { $text }
steps-none-coming = Nothing more: this is the last step.
step-number = The { $step } of { $count }.
steps-no-caution = The step says nothing of that.
steps-not-yet = Not yet: { $left ->
    [one] one more step.
   *[other] { $left } more steps.
  }
steps-more = Yes, { $left ->
    [one] one more step.
   *[other] { $left } more steps.
  }
not-yet = Not yet.
steps-heat = Set to { $heat }.
steps-watts = At { $watts } watts.
steps-whole-time = { $time } in all.
steps-no-heat = No step says how hot.
steps-no-sign = The step does not say how to tell.
steps-no-amount = The steps do not say how much.
steps-do-not-say = The steps do not say.
steps-untimed = No step here has a time.
timer-started = Timer on, { $time }.{ $last ->
    [yes] {""}
   *[no] {" "}Say next when it rings.
  }
