# Qué lugares hay.

place-undivided = { CAP(THE($place)) } no tiene partes registradas.
place-parts = { CAP(THE($place)) } tiene { $count ->
    [one] una parte
   *[other] { UNA($count) } partes
  }: { $parts }.
place-with-parts = { $name } con { $count ->
    [one] una parte
   *[other] { UNA($count) } partes
  }
places-all = { $count }: { $places }.
no-places = Todavía no hay lugares registrados.

ask-build-what = ¿Qué tienes: una repisa, una canasta, un cajón, un congelador?
ask-build-where = { CAP(OURS($kind)) }, ¿de qué?
built = Añadí: { $names }.
built-with = { $name } con { $parts }
built-in = { CAP(THE($place)) } tiene { $count ->
    [one] { A(OURS($kind)) }.
   *[other] { $count } { PLURAL(OURS($kind)) }, contando desde arriba.
  }
place-part = { $count ->
    [one] { A(OURS($kind)) }
   *[other] { $count } { PLURAL(OURS($kind)) }
  }
built-parts = { CAP(THE($place)) } tiene { $parts }.
has-those-already = Eso ya lo tengo: { THE($place) } tiene { $parts }.
confirm-build-parts = { CAP(THE($place)) } tiene { $parts }. ¿Está bien? Sí o no.
confirm-build = ¿Añado { $count ->
    [one] { A(OURS($kind)) }
   *[other] { $count } { PLURAL(OURS($kind)) }
  }? Sí o no.
ask-rename-what = ¿A qué lugar le cambio el nombre?
ask-rename-to = ¿Cómo se va a llamar { THE($place) }?
renamed = { CAP(THE($place)) } ahora se llama { $name }.
confirm-rename = ¿Llamo { $name } a { THE($place) }? Sí o no.
ask-remove-place = ¿Qué lugar quito?
place-not-empty = Todavía hay ahí { $count ->
    [one] una cosa: { $items }
   *[other] { UNA($count) } cosas: { $items }
  }{ $more ->
    [0] {""}
   *[other] { " " }y { $more } más
  }. ¿Adónde van?
place-removed = { CAP(THE($place)) } ya no está en mi registro.
confirm-remove-place = ¿Quito { THE($place) } del registro? Sí o no.
place-crowded = { CAP(THE($place)) } está a tope: { UNA($count) } cosas.
place-has-room = En { THE($place) } hay { $count ->
    [one] una cosa
   *[other] { UNA($count) } cosas
  }.
empty-within = Sin nada: { $places }.
none-crowded = Ninguno está a tope. Donde más hay es { $at }: { $count }.
place-count = { $place } con { $count }
places-crowded = { $count ->
    [one] Uno está a tope: { $places }.
   *[other] { CAP($count) } están a tope: { $places }.
  }
none-empty = Ninguno está vacío. Donde menos hay es { $at }: { $count }.
places-empty = { $count ->
    [one] Uno está vacío: { $places }.
   *[other] { CAP($count) } están vacíos: { $places }.
  }
place-counts = De menos a más: { $places }.
place-counts-down = De más a menos: { $places }.
room-not-known = Cuánto espacio queda, nadie lo registró.
    .short = {""}
new-whole = Nuevo aquí: { A($place) }.
    .short = Nuevo: { $place }.
new-whole-with = Nuevo aquí: { A($place) } con { A($part) }.
    .short = Nuevo: { $place } con { A($part) }.
new-part = { CAP(THE($place)) } tiene ahora { A($part) }.
    .short = Nuevo: { $part }.
ask-part-of = { CAP($part) }, ¿de qué: un refrigerador, un congelador, una alacena?
    .short = { CAP($part) }, ¿de qué?

built-named = { CAP(THE($place)) } tiene un lugar nuevo: { $names }.
    .short = Añadido: { $names }.
ask-full-what = ¿Qué lugar?
filled = { $share ->
    [0] vacío
    [10] casi vacío
    [25] a un cuarto
    [33] a un tercio
    [50] a la mitad
    [66] a dos tercios
    [75] a tres cuartos
    [90] casi lleno
   *[100] lleno
  }
filled-noted = { CAP(THE($place)) }: { $filled }, anotado.
filled-told = Dijiste { $when } de { THE($place) }: { $filled }.
    .short = { CAP($filled) }, dijiste { $when }.
ask-where-instead = ¿Adónde van?
place-itself = Eso está dentro de { THE($place) }.
no-places-of-kind = No hay ninguno registrado: { $kind }.
places-of-kind = { CAP(UNA($count)) } en total: { $places }.
place-tour = { THE($name) }: { $parts }
ask-build-name = ¿Cómo se llama?
