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
    [full] I will tell you everything.
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
help-general = Ask where a food is, what is old, or how to reheat something. Tell me what you put away or finish. Say more for more.
    .short = Say: where is; what is old; reheat; I put away; I finished. Say more for more.
help-start = Nothing is recorded yet. Say, help me set up, or tell me a food and where you put it.
help-practice = This is practice, so try anything: put food away, find it, finish it. Say stop practising to end.
help-topic = { $topic ->
    [list] Say: put oats on the list; make that two bags; take it off again; is milk on my list; how many things are on it; I got the eggs.
    [notes] Say: leave a note for, the name, and then the words. Ask: any messages. For a food: put a note on the soup saying it needs salt.
    [people] Say: Dele is allergic to peanuts; Ruth eats vegan; there is tahini in the hummus. Ask: what can Dele eat; is the stew vegan; anything with sesame.
    [markers] Say: put the wooden bead on the soup; what is the cloth patch; which markers are spare; one knot means eat soon.
    [timers] Say: timer for ten minutes; how long is left; remind me tomorrow to freeze the chicken; stop the timer.
    [places] Say: what is on the second shelf; which place is empty; the chest freezer has three baskets.
    [dates] Say: use by Friday; I opened it yesterday; when does the yogurt run out; what should I use first.
    [heating] Say: how do I reheat the stew; then next, back, repeat, and done after each step.
   *[undo] Say undo and the last change is taken back. Say: no, the top shelf, and only that part is put right.
  }
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
   *[setup] Answer in your own words. Say next to pass over one, wait to pause.
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
step-coming = Next comes: { $text }
steps-none-coming = Nothing more: this is the last step.
step-number = The { $step } of { $count }.
steps-not-yet = Not yet: { $left ->
    [one] one more step.
   *[other] { $left } more steps.
  }
not-yet = Not yet.
steps-no-heat = No step says how hot.
steps-no-sign = The step does not say how to tell.
steps-no-amount = The steps do not say how much.
steps-do-not-say = The steps do not say.
steps-untimed = No step here has a time.
timer-started = Timer on, { $time }.{ $last ->
    [yes] {""}
   *[no] {" "}Say next when it rings.
  }
