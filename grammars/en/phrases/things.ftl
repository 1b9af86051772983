# How things, places and markers are spoken of. Other phrases take these in.

# A place without its article: "second shelf of the fridge".
place-whole = { $name }
place-door = { $parent } door
place-within = { $name } of the { $parent }
    .short = { $parent } { $name }
place-nowhere = place nobody told me

the-place = the { $place }
    .short = { $place }

# With its preposition, chosen by the kind of place.
place-at = { $kind ->
    [shelf] on the { $place }
    [door] on the { $place }
    [counter] on the { $place }
    [side] on the { $place }
    [none] in a place nobody told me
   *[other] in the { $place }
  }
    .short = { $kind ->
    [none] place unknown
   *[other] { $place }
  }
place-at-spot = { $at }, { $spot }

# Markers, as felt.
marker-plain = { $name }
marker-several = { $count } { PLURAL($name) }
marker-dots = { $marker } with { $raised }
raised = { $counted ->
    [knot] { $dots ->
        [one] one knot
       *[other] { $dots } knots
      }
    [ridge] { $dots ->
        [one] one ridge
       *[other] { $dots } ridges
      }
    [notch] { $dots ->
        [one] one notch
       *[other] { $dots } notches
      }
   *[dot] { $dots ->
        [one] one dot
       *[other] { $dots } dots
      }
  }
marker-spot = { $marker } on the { $spot }
marker-coded = coded marker

# Containers, as felt.
feel-both = { A($container) } with the { $marker }
    .short = { $container }, { $marker }
feel-container = { A($container) }
    .short = { $container }
feel-marker = marked with the { $marker }

item-name = { $name }
the-food = { THE($name) }
item-amount = { OF($amount, $name) }
where-feel = { $at }, { $feel }
where-only = { $at }
item-where = { $item } { $where }
    .short = { $item }, { $where }

# How one of several is told from the others.
apart-name = the { $name }
apart-container = the { $container }
apart-marker = the one with the { $marker }
apart-unmarked = the one without a marker
apart-place = the one { $at }
    .short = { $at }
apart-loose = the one loose { $at }
apart-maker = { POSS($maker) }
apart-date = the one { $what ->
    [made] made { ON($date) }
    [frozen] frozen { ON($date) }
    [bought] bought { ON($date) }
    [opened] opened { ON($date) }
    [useBy] to use by { $date }
   *[other] best before { $date }
  }
apart-undated = the one without a date
apart-amount = the one with { $amount }
apart-other = the other one
apart-two = { $first }, { $second }

# The same on a button: only what tells them apart.
button-name = { $name }
button-container = { $container }
button-marker = { $marker }
button-marker-itself = { $marker }
button-unmarked = no marker
button-maker = { POSS($maker) }
button-date = { $what ->
    [made] made { ON($date) }
    [frozen] frozen { ON($date) }
    [bought] bought { ON($date) }
    [opened] opened { ON($date) }
    [useBy] use by { $date }
   *[other] best before { $date }
  }
button-undated = no date
button-amount = { $amount }
button-other = the other one
button-two = { $first }, { $second }
