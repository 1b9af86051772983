# Dónde están las cosas, cuántas hay, qué es esto.

found-one = { THE($item) } { is-at } { $where }
    .short = { $where }
found-yes-one = Sí, { THE($item) } { is-at } { $where }
    .short = Sí, { $where }
is-at = { MANY($item) ->
    [many] están
   *[one] está
  }
found-many = { $name ->
    [none] Hay { UN($count) }.
   *[other] { CAP($name) }, hay { UN($count) }.
  }
    .short = { CAP($count) }.
found-yes-many = Sí, { $count }.
place-by-part = { $at } hay { $count } cosas: { $parts }.
    .short = { CAP($count) }: { $parts }.
part-count = { $count } { $at }
elsewhere-count = { $count } en otra parte
which-part = ¿Qué parte te leo?
    .short = ¿Qué parte?
list-entry = { $entry }
item-felt = { $item }, { $feel }
    .short = { $item }
place-empty = No hay nada en { THE($place) }.
    .short = Nada.
place-holds = { $at } hay { $count ->
    [one] una cosa: { $items }
   *[other] { UNA($count) } cosas: { $items }
  }
    .short = { $items }
not-there = No hay { $at }.
no-such-place-told = No conozco ningún lugar que se llame { $words }. Pregunta: qué lugares tengo.
none-left-gone = Ya no hay { $name }: { $how ->
    [thrown-out] se tiró { $when }
    [given-away] se regaló { $when }
   *[used] se acabó { $when }
  }.
none-left-gone-by = Ya no hay { $name }: { $how ->
    [thrown-out] lo tiró { $who }
    [given-away] lo regaló { $who }
   *[used] lo terminó { $who }
  } { $when }.
it-is-on-the-list = Está en la lista de compras.
ask-find = ¿Qué buscas?
ask-count = ¿Qué cuento?

count-total = { OF($total, $name) }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
count-totals = { CAP($name) }: { $total }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
count-kinds = { $count } en total: { $items }.
count-unmeasured = { $count ->
    [one] Un recipiente de { $name }, sin cantidad registrada
   *[other] { UN($count) } recipientes de { $name }, sin cantidades registradas
  }.
count-and-unknown = Y { $count } sin cantidad registrada.
count-at = { $amount } { $at }
count-some-at = algo { $at }
count-spread = { $places }.
    .short = {""}
count-where = { CAP($at) }.
    .short = {""}
count-none-at = No hay { $at }.
count-things = { $count ->
    [one] Una cosa
   *[other] { CAP(UNA($count)) } cosas
  } { $at }.

this-is = { CAP($name) }{ $maker ->
    [none] {""}
   *[other] , de { $maker }
  }{ $amount ->
    [none] {""}
   *[other] ; { remain } { $amount }
  }.
    .short = { CAP($name) }.
kept-where = { THE($item) } { is-at } { $where }.
marker-spare = { $name ->
    [none] { CAP(THE($marker)) } no está en uso.
   *[other] { CAP(THE($marker)) } no está en uso. Antes marcaba { $name }.
  }
marker-unknown = No conozco esa marca.
ask-marker-on = ¿Dónde está puesta?
ask-whats-this = Toca su marca, o dime cómo se siente.
several-markers = { $count ->
    [one] Una cosa: { $items }.
   *[other] La llevan { UNA($count) } cosas: { $items }.
  }
several-spare = { $count ->
    [one] Otra no está en uso.
   *[other] Otras { UNA($count) } no están en uso.
  }
marked-item = { THE($name) } { $at }
item-caution = Cuidado: { $caution }.
item-note = Hay una nota: { $note }.
ask-about = ¿Sobre qué?
amount-left = { MANY($amount) ->
    [many] Quedan { $amount }.
   *[one] Queda { $amount }.
  }
remain = { MANY($amount) ->
    [many] quedan
   *[one] queda
  }
no-dates = No hay fecha registrada.
made-by = De { $maker }.
belongs-to = Es de { $name }.
diets-of = Marcado: { OURS($diets) }.
contains-list = Dijeron que contiene { OURS($allergens) }.
said-free-list = Dijeron que no contiene { OURS($allergens) }.
has-reheating = Hay instrucciones para recalentar.
open-since-unknown = Está abierto y nadie dijo desde cuándo.
date-of = { $what ->
    [made] Se hizo { ON($date) }.
    [bought] Se compró { ON($date) }.
    [came] Llegó { ON($date) }.
    [opened] Se abrió { ON($date) }.
    [frozen] Se congeló { ON($date) }.
    [thawed] Se descongeló { ON($date) }.
    [useBy] Se debe usar a más tardar { $date }.
   *[bestBefore] Consumo preferente: { $date }.
  }

reach-place = { CAP($at) }{ $position ->
    [none] {""}
   *[other] , en el lugar número { $position } desde arriba
  }.
reach-feel = Es { $feel }.
reach-no-feel = No está registrado cómo se siente.
reach-marker = { CAP(THE($marker)) }.
reach-beside = Junto está: { $items }.
reach-neighbour = { THE($name) }{ $feel ->
    [none] {""}
   *[other] , { $feel }
  }

spot-holds = { CAP($at) }, { $spot ->
    [left] a la izquierda
    [right] a la derecha
    [middle] en medio
    [front] al frente
    [back] al fondo
   *[other] { OURS($spot) }
  }: { $items }.
    .short = { $items }.
spots-unknown = { $count ->
    [one] De otra cosa de ahí no está registrado el lado.
   *[other] De otras { UNA($count) } de ahí no está registrado el lado.
  }
    .short = {""}
spot-not-recorded = Justo ahí no hay nada registrado.
count-each = { CAP($count) } en total: { $places }.
count-in = { $count } { $at }
apart-by-marker = { CAP($name) }: { $marker }.
felt-alike = Se sienten igual: una marca en uno los distinguiría.
owner-is = { CAP(THE($name)) } { es-o } para { $owner }.
owner-unknown = No está registrado para quién es { THE($name) }.
beside-told = { $side ->
    [behind] Detrás de { THE($name) }
    [in-front-of] Delante de { THE($name) }
    [on-top-of] Encima de { THE($name) }
    [under] Debajo de { THE($name) }
   *[beside] Junto a { THE($name) }
  }: { $items }.
beside-shelf = No está registrado qué hay { $side ->
    [behind] detrás de
    [in-front-of] delante de
    [on-top-of] encima de
    [under] debajo de
   *[beside] junto a
  } { THE($name) }. Con eso, { $at }: { $items }.
beside-nothing = No hay nada más registrado { $at }.
felt-as = { CAP(THE($name)) } { es-o } { $feel }.
felt-marker-at = La marca está en { OURS($spot) }.
no-marker-on = No lleva marca.
frozen-before = Ya se congeló antes, { $dates }.
on-day = { ON($date) }

between-told = Entre { THE($one) } y { THE($other) }: { $items }.
between-nothing = No hay nada registrado entre { THE($one) } y { THE($other) }.
between-unknown = No está registrado qué hay en medio. { CAP($at) }{ $count ->
    [0] { " " }no hay nada más.
   *[other] { " " }también: { $items }.
  }
between-apart = { CAP(THE($one)) } { $at }, y { THE($other) } { $there }.

guess-so = Sí.
guess-not = No, { THE($name) } no.
