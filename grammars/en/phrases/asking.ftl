# Questions, and what is said when an answer does not come.

which-named = { $name }, { $count } of them: { $choices }. Which one?
    .short = { $choices }?
which-place-of = Which { $name }: { $choices }?
    .short = { $choices }?
which-brief = Which { $name }?
which-brief-any = Which one?
took-oldest = The oldest { $at }.
only-yes-no = Only yes or no, please.
which-mixed = { $count } fit: { $choices }. Which one?
    .short = { $choices }?
which-many = { $count } fit. The first are { $choices }. Which one, or say more of it?
    .short = { $count } fit: { $choices }?
which-again = Say { $choices }. Or all, or neither.
which-place = Which one: { $choices }?
    .short = { $choices }?
which-beside = They lie side by side, none above another. Which one: { $choices }?
which-place-again = I know more than one by that name. Say { $choices }.
near-one = None quite like that. Did you mean { $choice }?
near-several = None quite like that. There are { $choices }. Which one?
ask-item-again = Say its name, its place or how it feels.
ask-place-again = Say a place you have, such as a shelf and which cupboard it is in.
ask-once-more = Once more: { $question }
ask-way-out = Say never mind and I leave it. { $question }
let-go = I leave it, nothing changed. We can come back to it whenever you like.
    .short = Left. Nothing changed.
left-as-it-is = All right, nothing changed.
    .short = Nothing changed.
offer-declined = All right.
back-to = { $question }
then-this = Then did you mean this? { $question }
say-it-otherwise = Then I misheard. Say it another way, with its name or place.
doubt-heard = I heard: { $heard }. Is that right?

no-such-item = I have no { $name } on record.
nearest-is = Nearest is { $items }.
nothing-like-that = Nothing here fits that.
no-other = No, only { THE($name) }.
    .short = Only that.
no-such-place = I know no place called { $words }. { $offer ->
    [yes] Shall I add it? Or tell me another place.
   *[no] Where is it?
  }

missed = { $times ->
    [1] Sorry, say that again?
    [2] I heard “{ $heard }” and could make nothing of it. Try other words.
   *[3] Still not. Try one thing at a time: where is the stew, or what is old. Or say help.
  }
too-long = That was too long for me, and I kept none of it. Say it again in shorter pieces.
    .short = Too long. Shorter pieces, please.
rest-not-heard = I did not get “{ $said }”.
missed-with-question = { $times ->
    [1] Sorry, I did not get that.
   *[other] Not that either.
  }
nothing-heard = { $times ->
    [1] I heard nothing.
    [2] Still nothing. Come closer, or say it a little louder.
   *[3] I am here when you want me.
  }
out-of-scope = { $times ->
    [1] I only look after the food in this kitchen: where it is, how old, and how to heat it.
    [2] That is not mine. Ask me where a food is, or what to use first.
   *[3] Not that, sorry. Say help to hear what I can do.
  }
    .short = I only look after the food here.
caught-item = I heard { $name }, but not what to do with { THEM($name) }. Say, for example, where is the { $name }, or finish the { $name }.
    .short = { CAP($name) }: what about { THEM($name) }?
offer-tell-place = { CAP($place) }: shall I say what is there?
caught-place = I heard { $place }, but not what about it. Say, for example, what is there, or how full it is.
    .short = What about the { $place }?
nothing-to-say = All right.
nothing-to-correct = What shall I put right? Tell me the whole thing, with its name.
put-right = Put right.
changed-since = Something changed it since, so I left it. Tell me the whole thing again.
