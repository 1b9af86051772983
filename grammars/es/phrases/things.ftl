# Cómo se nombran las cosas, los lugares y las marcas.

place-whole = { $name }
place-door = puerta de { THE($parent) }
place-within = { $name } de { THE($parent) }
    .short = { $name }, { $parent }
place-nowhere = lugar que nadie me dijo

the-place = { THE($place) }
    .short = { $place }

place-at = { $kind ->
    [none] en un lugar que nadie me dijo
   *[other] en { THE($place) }
  }
    .short = { $kind ->
    [none] lugar desconocido
   *[other] { $place }
  }
place-at-spot = { $at }, { OURS($spot) }

place-to = { $kind ->
    [none] en otro lado
   *[other] a { THE($place) }
  }
    .short = { $place }

marker-plain = { TOUCH($name) }
marker-several = { $count } { PLURAL(TOUCH($name)) }
marker-dots = { $marker } con { $raised }
raised = { $counted ->
    [knot] { $dots ->
        [one] un nudo
       *[other] { UN($dots) } nudos
      }
    [ridge] { $dots ->
        [one] un relieve
       *[other] { UN($dots) } relieves
      }
    [notch] { $dots ->
        [one] una muesca
       *[other] { $dots } muescas
      }
   *[dot] { $dots ->
        [one] un punto
       *[other] { UN($dots) } puntos
      }
  }
marker-spot = { $marker } en { OURS($spot) }
marker-coded = marca con código

feel-both = { A(TOUCH($container)) } con { THE($marker) }
    .short = { TOUCH($container) }, { $marker }
feel-container = { A(TOUCH($container)) }
    .short = { TOUCH($container) }
feel-marker = con { THE($marker) }

item-name = { $name }
the-food = { THE($name) }
item-amount = { OF($amount, $name) }
where-feel = { $at }, { $feel }
where-only = { $at }
item-where = { $item } { $where }
    .short = { $item }, { $where }

apart-name = { THE($name) }
apart-container = { THE(TOUCH($container)) }
apart-marker = lo que lleva { THE($marker) }
apart-unmarked = lo que no lleva marca
apart-place = lo que está { $at }
    .short = { $at }
apart-maker = lo de { $maker }
apart-date = lo { $what ->
    [made] hecho { ON($date) }
    [frozen] congelado { ON($date) }
    [bought] comprado { ON($date) }
    [opened] abierto { ON($date) }
    [useBy] que se debe usar a más tardar { $date }
   *[other] de consumo preferente { $date }
  }
apart-undated = lo que no tiene fecha
apart-amount = lo que tiene { $amount }
apart-other = lo otro
apart-two = { $first }, { $second }
apart-loose = lo que está suelto { $at }

# Lo mismo en un botón: solo lo que los distingue.
button-name = { $name }
button-container = { $container }
button-marker = { $marker }
button-marker-itself = { $marker }
button-unmarked = sin marca
button-maker = de { $maker }
button-date = { $what ->
    [made] hecho { ON($date) }
    [frozen] congelado { ON($date) }
    [bought] comprado { ON($date) }
    [opened] abierto { ON($date) }
    [useBy] usar antes de { $date }
   *[other] mejor antes de { $date }
  }
button-undated = sin fecha
button-amount = { $amount }
button-other = el otro
button-two = { $first }, { $second }
