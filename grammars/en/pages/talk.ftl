# Talking on the board: the answer, the button, what is kept, how answers are read.

talk-last-answer = Last answer
talk-you = You:
talk-hearing = Hearing:
talk-kitchen = Kitchen:
talk-page = This page:
talk-answer = Answer
talk-nothing-said = Ask, or tell what you did.
talk-can-say = You can say
talk-about-answer = About the answer
talk-again = Again
talk-slower = Slower
talk-stop = Stop
talk-next-step = Next step
talk-repeat-step = Repeat step
talk-step-back = Step back

# What a button says for its person, as the grammar of this language hears it.
say-next = next
say-repeat = repeat
say-back = back
say-yes = yes
say-no = no
say-undo = undo
say-slower = slower
say-faster = faster
say-shorter = shorter
say-longer = longer
say-what-is-this = what's this

talk-connecting = Connecting to the kitchen.
talk-lost = No connection to the kitchen. What is said or pressed now is kept here, and sent when it is back.
talk-closed = Not connected.
talk-record-as-of = This is the record as of { $time }.
talk-kept = There is no connection to the kitchen. This is kept here, and sent when the kitchen is reached again.
talk-not-taken = The kitchen could not take that. { $why }
talk-nothing-heard = (nothing heard)

talk-first-question = Who should read answers to you?
talk-own-voice = This page’s own voice
talk-screen-reader = My screen reader
talk-read-by-page = This page’s own voice will read answers. “How answers are read” on the board changes that.
talk-read-by-screen-reader = Your screen reader will read answers. “How answers are read” on the board changes that.
talk-said-here = What was said on this page
talk-nothing-yet = Nothing yet.

talk-ear = Say something
talk-type = Or type it
talk-send = Send
talk-cannot-listen = This browser does not listen: type, or dictate to your keyboard.
talk-button = Talk
talk-opening = One moment
talk-listening = Listening. Press when done
talk-heard = Heard
talk-stop-ringing = Stop the ringing
talk-hint-both = Hold the button and talk, or press it once to start and once when done.
talk-hint-hold = Hold the button while you talk.
talk-hint-tap = Press the button once to start and once when done.

talk-mic-not-allowed = This page may not use the microphone. Allow it in the browser, or type below: a phone’s keyboard can take dictation too.
talk-no-microphone = No microphone was found. Type below: a phone’s keyboard can take dictation too.
talk-mic-failed = The microphone did not work. Try again, or type below.
talk-voice-failed = The voice of this browser does not work just now. Answers are left to your screen reader, and stand on the page.

talk-due = { $label }: it is time.
timer = Timer
reminder = Reminder
timers = Timers and reminders
timer-left = { $label }: { $left } left
timer-held = { $label }: paused with { $left } left
timer-end = End it
timer-ended = { $label } is ended.
left-hours = { $hours } h { $minutes } min
left-minutes = { $minutes } min { $seconds } s
left-seconds = { $seconds } s

kept-heading = Kept here, not sent yet
kept-refused = The kitchen did not take it: { $why }
kept-ask = This was said a while ago. Send it all the same?
kept-send = Send it
kept-try-again = Try it again
kept-forget = Forget it
kept-sent = Sent now: { $words }.
kept-edits-sent = { $count ->
    [one] A change from the cards is sent.
   *[other] { $count } changes from the cards are sent.
  }
kept-not-taken = Not taken: { $words } { $why }
kept-waits = { $count ->
    [one] One thing you said a while ago waits for you, under “Kept here”.
   *[other] { $count } things you said a while ago wait for you, under “Kept here”.
  }
kept-taken-back = Taken back, and not sent: { $words }
kept-done = { $done } Kept here; it is sent when the kitchen is reached.
kept-on-card = Not sent yet: { $done }

reading-heading = How answers are read
reading-who = Who reads answers
reading-page = This page
reading-no-voice = This browser has no voice. Your screen reader reads the answers.
reading-button = The Talk button
reading-both = Hold it while talking, or press once to start and once when done
reading-tap = Only press: once to start, once when done
reading-hold = Only hold: short presses do nothing
reading-yours = These are yours wherever you talk to this kitchen; asking for them aloud does the same.
reading-slower = Slower answers
reading-faster = Faster answers
reading-shorter = Shorter answers
reading-longer = Longer answers
reading-voice = Voice
reading-browser-choice = The browser’s own choice
reading-volume = Volume: { $percent } percent
reading-percent = { $percent } percent

notice-heading = When this page is closed
notice-on = Ring here all the same
notice-off = Do not ring here any more
notice-is-on = Timers, reminders and the evening summary come to this device as notices, also while the page is closed.
notice-is-off = While the page is closed, nothing rings on this device.
notice-denied = This browser may not show notices for this address. Allow them in its settings, then press again.
notice-first-install = On an iPhone or iPad, put this page on the home screen first, and open it from there.
notice-failed = That did not work here: this browser gave no address for notices.
