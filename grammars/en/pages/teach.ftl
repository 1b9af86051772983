# The teacher's page.

teach-title = Lessons
teach-by-talking = To practise, say or type “lesson one” on the board. Each lesson takes place in a kitchen of its own, and nothing in it reaches this one’s record.
teach-for-helpers = How the lessons went is shown to whoever teaches, on a device that may help. An owner can let this one do so, on the page Home.
teach-went = How it went
teach-not-asked = Nothing is shown until the person who practises says so aloud: “my teacher may see how I did”. It is also asked once a lesson is done.
teach-not-shared = It was said aloud that nobody is to see it. Only a yes said aloud changes that: “my teacher may see how I did”.
teach-none-held = No lesson was held in the last seven days.
teach-take-back = Shown because it was allowed aloud. “Stop sharing my lessons” ends that at once. It is kept for seven days.
teach-held = { $name }, { $day }
teach-counts = { $count ->
    [one] One task
   *[other] { $count } tasks
  }: { $alone } done alone, { $hinted } with a hint.
teach-alone = Done alone.
teach-hint = Done with a hint.
teach-passed = Passed over.
teach-open = Not come to.
teach-file = Keep it as a table (CSV)
teach-ready = { $name } is ready.
teach-look-again = Look again
teach-lessons = What there is to practise
teach-no-lessons = There are no lessons in this language yet.
teach-how = Each takes place in a kitchen of its own with twelve things; nothing in it reaches this kitchen’s record. Aloud: “lesson two”, “hint”, “what was I to do”, “skip this one”, “how did we do”, “stop the lesson”. Any wording counts that does the task.
teach-guidance = Practice with knives, heat, steam and food follows local professional guidance; these lessons teach only how to keep and ask the record.
teach-lesson = Lesson { $number }: { $name }
teach-hints = Hints
