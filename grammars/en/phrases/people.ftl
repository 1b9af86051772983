# People, and words left for them.

ask-person = What is the person's name?
person-added = { $name } eats here now.
person-known = I know { $name } already.
person-watches = { $name } watches for { $allergens }.
person-no-longer = { $name } no longer watches for { $allergens }.
person-none = No allergy is recorded for { $name }.
confirm-person = { $allergens ->
    [none] { $name } eats here now? Yes or no.
   *[other] { $name } watches for { $allergens }? Yes or no.
  }
no-people = Nobody is recorded as eating here yet.
person-with = { $name }, who watches for { $allergens }
person-plain = { $name }
people-here = { $count ->
    [one] One person eats here: { $people }.
   *[other] { CAP($count) } people eat here: { $people }.
  }
nobody-allergic = No allergy is recorded for anybody.
nobody-allergic-to = Nobody is recorded as allergic to { $allergens }.
allergic-people = { CAP($people) }.
unknown-person = I know nobody called { $name }. Say, { $name } eats here, and I will.
ask-note = What shall I tell { $name }?
note-left = I will tell { $name }: { $text }.
note-for-all = I will tell whoever asks next: { $text }.
confirm-note = Leave the message: { $text }? Yes or no.
no-notes = No messages.
notes-count = { CAP($count) } messages.
note-reads = { $from ->
    [none] { CAP($text) }, left { $when }.
   *[other] From { $from }, { $when }: { $text }.
  }
