# Putting food away.

ask-put-what = What are you putting away?
    .short = What is it?
ask-put-what-again = Tell me the food's name.
ask-put-where = Where { DOES($name) } the { $name } go?
    .short = Where?
ask-put-where-again-there = Where { DOES($name) } the { $name } go? Last time, { $at }.
    .short = Where? { $at } again?
ask-place-share = Where do the { $amount } go?
ask-marker-in-use = The { $marker } is on the { $name } now. Which marker shall I note instead?

put-away-done = { CAP($item) } { $where }{ $details ->
    [none] {""}
   *[other] , { $details }
  }.
    .short = { CAP($item) }, { $where }.
confirm-put-away = { $what } Right? Yes or no.
put-away-shared = { $item }: { $where }{ $details ->
    [none] {""}
   *[other] , { $details }
  }.
read-back-date = { $what ->
    [made] made { ON($date) }
    [bought] bought { ON($date) }
    [came] came in { ON($date) }
    [opened] opened { ON($date) }
    [frozen] frozen { ON($date) }
    [useBy] use by { $date }
   *[bestBefore] best before { $date }
  }
made-when-unknown = When it was made is not known.
with-marker = the { $marker } on it
share-at = { $amount } { $at }
kept-from-before = I kept the { $what } from before.{ $date ->
    [none] {""}
   *[new] {" "}The date is new, so tell me when you know it.
  }
    .short = Details kept.{ $date ->
    [none] {""}
   *[new] {" "}Tell me the date.
  }
ask-again-what = The same again of what?
offer-older-date = Was some of the old { $name } still in it? Then its older date holds.
kept-reheating = reheating
kept-diets = diet marks
kept-allergens = allergens
off-the-list = It is off the list.
    .short = {""}
feels-like = It feels like the { $name } beside it.{ $marker ->
    [none] {""}
   *[other] {" "}The { $marker } is spare, if you want to mark it.
  }

which-marker = { CAP($choices) }?
apart-marker-itself = the { $marker }
no-such-marker = I know no { $marker }.

# Facts told later.
ask-amend = About which food?
ask-new-name = What shall the { $name } be called?
ask-amend-what = What shall I note about the { $name }?
ask-what-date = What date is on the { $name }?
ask-date-kind = Is { $date } the use by of the { $name }, or the best before?
    .short = Use by, or best before?
ask-date-kind-past = Is { $date } the use by of the { $name }, the best before, or the day { IT($name) } { WAS($name) } bought?
    .short = Use by, best before, or bought?
ask-date-kind-again = Say use by, best before, or bought. Say never mind if you do not know.
date-kind = { $what ->
    [useBy] the use by
    [bestBefore] the best before
   *[other] the day it was bought
  }
amended = { CAP($name) }: { $facts }.
amended-all = All { OF($amount, $name) }: { $facts }.
told-nothing-new = I heard nothing new to note in that. Say it another way.
stays = { $name }: left as it is.
known-already = I have that already: { $name }, { $facts }.
confirm-amend = Note for the { $name }: { $facts }? Yes or no.
confirm-free = { CAP(THE($name)) } { IS($name) } recorded as containing { $allergens }. Are you sure { IT($name) } { DOES($name) } not? Yes or no.
date-unknown-noted = { $what ->
    [bestBefore] best before unknown
    [useBy] use by unknown
   *[other] date unknown
  }
read-back-open = open, not known since when
read-back-free = said to be free from { $allergens }
read-back-ingredient = { $what } in it
read-back-no-notes = no note any more
watched-by = { $name } watches for { $allergens }.
read-back-contains = contains { $allergens }
read-back-amount = { $amount }
read-back-reheating = { $method }{ $heat ->
    [none] {""}
   *[other] {" "}at { $heat }
  }{ $time ->
    [none] {""}
   *[other] , { $time }
  }{ $watts ->
    [none] {""}
   *[other] {" "}at { $watts } watts
  }
read-back-step = { $step ->
    [none] {""}
   *[other] { $step } step,{" "}
  }{ $words }
read-back-step-out = no longer, { $words }
read-back-caution = caution, { $caution }
read-back-name = now called { $name }
read-back-note = noted, { $note }
read-back-maker = from { $maker }
read-back-owner = belongs to { $name }
read-back-diet = marked { $diet }
read-back-not-diet = no longer marked { $diet }

nothing-told = I heard nothing to put on record.
one-then-other = { $first } { $next }
sure-told = To note: { $told }{ $open ->
    [none] {""}
   *[other] {" "}The { $open }: I will ask where.
  } { $unused ->
    [none] Right? Yes or no.
   *[other] I did not get “{ $unused }”. Is the rest right? Yes or no.
}
sure-told-brief = Still to note: { $told } Right? Yes or no.
# The same food, as much of it, in the same place as was told a moment ago.
confirm-another = { $amount ->
    [none] { CAP($name) }
   *[other] { CAP(OF($amount, $name)) }
  } { $at }: I have that from just now. Is this more of it? Yes or no.
confirm-second = { $amount ->
    [none] { CAP($name) }
   *[other] { CAP(OF($amount, $name)) }
  } { $at }: I have that already. Is this more of it? Yes or no.
