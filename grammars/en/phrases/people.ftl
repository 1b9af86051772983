# People, and words left for them.

ask-person = What is the person's name?
person-added = { $name } eats here now.
person-comes = { $name } comes { ON($day) }.
person-needs = { $name }: { $needs }.
person-needs-noted = Noted for { $name }: { $needs }.
person-risk-yes = Yes, { $name } is { risk-told }.
person-risk-not = Not as recorded: nobody told me that { $name } is at higher risk.
person-is-at-risk = { $name } is { risk-told }.
people-at-risk = { CAP($people) } { $count ->
    [one] is
   *[other] are
  } at higher risk, as recorded.
nobody-at-risk = Nobody is recorded as at higher risk.
nobody-comes = Nobody is recorded as coming.
caution-entry = { $name }: { $cautions }
cautions-told = { CAP($items) }.
rest-unknown-these = Not recorded: { $items }.
    .full = May contain { $allergens }, nobody recorded either way: { $items }.
person-known = I know { $name } already.
person-watches = { $name } watches for { $allergens }.
person-watches-already = I have that: { $name } watches for { $allergens }.
person-watches-yes = Yes, { $name } watches for { $allergens }.
person-watches-not = Not as recorded: nobody told me that { $name } watches for { $allergens }.
person-eats = { $name } eats { $diets }.
person-eats-yes = Yes, { $name } eats { $diets }.
person-eats-not = Not as recorded: nobody told me that { $name } eats { $diets }.
person-no-longer-eats = { $name } no longer eats { $diets } only.
confirm-person-eats = { $name } eats { $diets }? Yes or no.
people-eat = { CAP($people) } { $count ->
    [one] eats
   *[other] eat
  } { $diet }.
nobody-eats = Nobody is recorded as eating { $diet }.
person-and-food = { $answer ->
    [said-to-contain] Not { $person }: { THE($name) } { IS($name) } said to contain { $allergen }.
    [usually-contains] Rather not { $person }: such food usually contains { $allergen }, and nobody recorded it.
    [conflict] Not surely { $person }: { THE($name) } { IS($name) } said to be free from { $allergen }, but such food usually contains it. Check the label.
    [said-free-from] For { $person }, { THE($name) } { IS($name) } said to be free from { $allergen }.
   *[unknown] For { $person } it is unknown: nobody recorded whether the { $name } { HAS($name) } { $allergen } in { THEM($name) }.
  }
unknown-for-several = Unknown for { $people }: nobody recorded whether the { $name } { HAS($name) } { $allergens }.
unknown-eater = Nobody told me what { $name } must not have.
unknown-in-several = Of { $names } nobody recorded more, so I promise nothing.
free-for-several = For { $people }, { THE($name) } { IS($name) } said to be free from { $allergens }.
person-no-longer = { $name } no longer watches for { $allergens }.
confirm-person-no-longer = Shall I take { $allergens } off what { $name } watches for? Yes or no.
confirm-no-allergen = { CAP($foods) }: I know of no such allergen. Shall I keep it as something not to give? Yes or no.
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
near-person = Did you mean { $name }? Yes or no.
unknown-person = I know nobody called { $name }. Say, { $name } eats here, and I will.
ask-note = What shall I tell { $name }?
note-left = I will tell { $name }: { $text }.
note-for-all = I will tell whoever asks next: { $text }.
confirm-note = Leave the message: { $text }? Yes or no.
no-notes = No messages.
no-notes-for = No message waits for { $name }.
notes-waiting = For { $name }: { $texts }.
notes-on = { $count ->
    [one] The note on the { $name }: { $notes }.
   *[other] { CAP($count) } notes on the { $name }: { $notes }.
  }
no-notes-on = There is no note on the { $name }.
note-dropped = { $count ->
    [one] Taken back: { $text }.
   *[other] { CAP($count) } messages taken back: { $text }.
  }
confirm-drop-note = Take back the message: { $text }? Yes or no.
notes-count = { CAP($count) } messages.
note-reads = { $from ->
    [none] { CAP($text) }, left { $when }.
   *[other] From { $from }, { $when }: { $text }.
  }
person-at-risk = Noted: { $name } is { risk-told }, and I say it with the foods guidance names.
person-risk-already = I have that: { $name } is { risk-told }.
risk-told = { $risk ->
    [pregnant] pregnant, so at higher risk
    [older] at higher risk by age
    [weakened] at higher risk, with weaker defences
    [infant] a baby, so at higher risk
   *[other] at higher risk
  }
ask-which-person = Which is it: { $people }?
confirm-at-risk = { $name } is at higher risk? Yes or no.
ask-which-nuts = Which nuts: tree nuts, peanuts, or both?
allergen-name = { $allergen }
can-eat-others = { $verdict ->
    [no] Nor { $names }.
    [usually] Rather not { $names } either.
    [unknown] Unknown of { $names }.
   *[free] As recorded, { $names } would do.
  }
note-from = { $from ->
    [none] Nobody said who left it. It was left { $when }.
   *[other] From { $from }, { $when }.
  }
note-not-heard = No, { $name } has not heard it yet: { $texts }.
note-was-heard = Yes, { $name } has heard it: { $texts }.
