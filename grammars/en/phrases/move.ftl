# Moving, opening, freezing, thawing, dividing.

ask-move-what = Move what?
ask-move-where = Where to, with the { $name }?
    .short = Where to?
confirm-move = Move the { $name }, { $at }? Yes or no.
moved = { CAP($name) }, now { $at }.
    .short = { CAP($name) }, { $at }.
moved-some = { CAP($amount) } of the { $name }, now { $at }.
refreeze-caution = { CAP(IT($name)) } { HAS($name) } thawed before. Freeze { THEM($name) } again only if { IT($name) } thawed in the fridge; { IT($name) } will be softer.
ask-opened = Opened what?
opened = { CAP($name) }, opened { $date }.
confirm-opened = Note the { $name } as opened? Yes or no.
ask-freeze = Freeze what?
ask-which-freezer = Which freezer for the { $name }{ $choices ->
    [none] {""}
   *[other] : { $choices }
  }?
freeze-past-warning = { CAP($name) }: past guidance, so throw { $several ->
    [yes] them
   *[no] it
  } out.
confirm-freeze-past = { CAP($name) }: past guidance, so throw { $several ->
    [yes] them
   *[no] it
  } out. Freeze { $several ->
    [yes] them
   *[no] it
  } all the same? Yes or no.
frozen = { CAP($name) }, { $at }, frozen { $date }.
confirm-freeze = Note the { $name } as frozen? Yes or no.
ask-thaw = Thaw what?
ask-thaw-where = Where { IS($name) } { THE($name) } thawing?
thawing = { CAP($name) }, thawing { $at }.
thaw-counter-caution = Guidance says never to thaw on a counter: use the fridge, cold water or the microwave.
confirm-thaw = Note the { $name } as thawing? Yes or no.
ask-reheated = Reheated what?
reheated = { CAP($name) }, reheated { TIMES($times) }.
confirm-reheated = Note the { $name } as reheated? Yes or no.
ask-put-back = What is back?
put-back = { CAP($name) }, back { $at }.
confirm-put-back = Note the { $name } as put back? Yes or no.
ask-split = Divide what?
ask-split-into = Into how many, the { $name }?
split = { CAP($name) }, now in { $count } containers.
split-into = { CAP($name) }, now in { $parts }.
confirm-split = Divide the { $name }? Yes or no.
ask-merge = Which ones go together?
merge-too-few = I need two to put together. Name both.
confirm-merge = { $caution ->
    [none] {""}
   *[other] { $caution }{" "}
  }Put { $count } lots of { $name } together{ $caution ->
    [none] {" "}as one
   *[other] {""}
  }? Yes or no.
confirm-merge-different = These differ: { $names }. Put them together all the same? Yes or no.
merged = { CAP($name) }, together { $at }.
merged-frozen = { $may ->
    [yes] One is frozen: guidance says freeze it again only if thawed in the fridge.
    [cook-first] One is frozen: guidance says cook it before freezing it again.
    [no] One is frozen: guidance says do not freeze it again.
   *[unknown] One is frozen: do not freeze it again. In doubt, throw it out.
  }
merged-oldest = It is as old as the oldest part.
all-kept = That leaves nothing to move.
nothing-to-swap = There is nothing there to swap.
