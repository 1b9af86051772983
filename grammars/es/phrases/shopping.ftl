# La lista de compras.

ask-buy = ¿Qué pongo en la lista?
ask-unbuy = ¿Qué quito de la lista?
ask-unbuy-which = ¿Qué quito: { $items }?
listed-under = { CAP($items) }: en la lista, en { $section }.
list-number = { $count ->
    [0] No hay nada en la lista.
    [one] Hay una cosa en la lista.
   *[other] Hay { UNA($count) } cosas en la lista.
  }
list-last = Lo último que se apuntó: { $items }.
list-under = En { $section }: { $items }.
list-none-under = En la lista no hay nada de { $section }.
list-no-section = { $count ->
    [one] Una sin sección: { $items }.
   *[other] { CAP(UNA($count)) } sin sección: { $items }.
  }
not-on-list = En la lista no hay { $items }.
taken-off-list = { CAP($items) }: fuera de la lista.
    .full = { CAP($items) }: fuera de la lista. { $count ->
    [0] Ya está vacía.
    [one] Queda una cosa.
   *[other] Quedan { $count }.
  }
confirm-unbuy = ¿Quito de la lista { $items }? Sí o no.
list-empty-now = La lista está vacía.
nothing-low = Según el registro, nada está por acabarse.
list-cleared = La lista quedó vacía. Di deshaz para tenerla de vuelta.
confirm-clear-list = ¿Borro toda la lista, { $count ->
    [one] una cosa
   *[other] { UNA($count) } cosas
  }? Sí o no.
still-to-buy = Todavía en la lista: { $items }.
offer-missing = ¿Pongo { $items } en la lista?
got-nothing = Entonces no quito nada de la lista.
got-these = { $count ->
    [one] { CAP($items) }: comprado.
   *[other] { CAP(UNA($count)) } cosas compradas.
  }
    .full = { CAP($items) }: comprado.
left-on-list = { $count ->
    [one] Falta comprar: { $items }.
   *[other] Faltan { $count }: { $items }.
  }
confirm-got = ¿Quito de la lista { $count ->
    [one] una cosa
   *[other] { UNA($count) } cosas
  }, como comprado? Sí o no.
offer-shop = ¿Lo guardamos ahora?
yes-on-list = Sí, en la lista: { $items }.
list-count = { CAP(UNA($count)) } cosas.
list-section = { $section }: { $items }
list-others = lo demás: { $items }
list-holds = { $count ->
    [one] Una cosa: { $items }.
   *[other] { CAP(UNA($count)) } cosas: { $items }.
  }
line-whole = { $item }{ $shop ->
    [none] {""}
   *[other] {" "}de { $shop }
  }{ $person ->
    [none] {""}
   *[other] {" "}para { $person }
  }{ $note ->
    [none] {""}
   *[other] , { $note }
  }
line-amount = { CAP($item) }, en la lista.
line-no-amount = No se dijo cuánto: { $name }.
line-since = { CAP($name) }: en la lista { $when }.
line-for = { CAP($name) }: para { $person }.
line-for-nobody = No se dijo para quién: { $name }.
line-shop = { CAP($name) }: de { $shop }.
line-section = No se dijo en qué tienda. { CAP($name) }: en { $section }.
line-no-shop = No se dijo en qué tienda: { $name }.
line-kind = { CAP($item) }.
line-no-kind = No se dijo de qué clase: { $name }.
lines-for = Para { $person }: { $items }.
lines-for-nobody = Nada en la lista para { $person }.
lines-of-kind = { $count ->
    [one] Una cosa: { $items }.
   *[other] { CAP($count) } cosas: { $items }.
  }
lines-no-food = No hay comida en la lista.
lines-only-food = En la lista solo hay comida.
enough-here = Hay { OF($amount, $name) }, así que nada va a la lista.
got-some = Comprado: { $got }. Falta por comprar: { $left }.
list-no-watch = No hay nada apuntado que { $person } no pueda comer.
list-not-for = { CAP($items) }, por { $person }: { $allergens }.
list-none-against = Por el nombre, nada de la lista va contra lo que { $person } evita.
list-by-name = Eso es por el nombre: hay que leer la etiqueta.
