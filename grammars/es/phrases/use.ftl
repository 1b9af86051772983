# Lo que un sí puede anotar: que algo se acabó, se tiró o se regaló. Una confirmación se pregunta siempre.

confirm-finished = ¿Anoto { $name } { $at } como terminado? Di sí o no.
    .short = { CAP($name) }: ¿se acabó?
confirm-thrown-out = ¿Anoto { $name } { $at } como tirado? Di sí o no.
    .short = { CAP($name) }: ¿se tiró?
confirm-given-away = ¿Anoto { $name } { $at } como regalado? Di sí o no.
    .short = { CAP($name) }: ¿se regaló?
confirm-finished-all = ¿Anoto todo esto como terminado: { $name }? Di sí o no.
confirm-thrown-out-all = ¿Anoto todo esto como tirado: { $name }? Di sí o no.
confirm-given-away-all = ¿Anoto todo esto como regalado: { $name }? Di sí o no.
done-finished = { CAP($name) }: se acabó.
done-thrown-out = { CAP($name) }: se tiró.
done-given-away = { CAP($name) }: se regaló.
marker-free = { $count ->
    [one] Queda libre { THE($markers) }.
   *[other] Quedan libres: { $markers }.
  }
    .short = Libre: { $markers }.
still-left = { MANY($amount) ->
    [many] Quedan { $amount }.
   *[one] Queda { $amount }.
  }
still-left-at = { MANY($amount) ->
    [many] Quedan { $amount }, { $at }.
   *[one] Queda { $amount }, { $at }.
  }
that-was-the-last = Era lo último.
offer-buy = ¿Pongo { $name } en la lista de compras?
    .short = ¿A la lista?
on-the-list = { CAP($items) }: en la lista.
    .short = { CAP($items) }: apuntado.
    .full = { CAP($items) }: en la lista. Ahora tiene { $count ->
    [one] una cosa
   *[other] { UNA($count) } cosas
  }.
already-on-list = { CAP($items) }: ya estaba en la lista.
confirm-buy = ¿Pongo { $items } en la lista? Di sí o no.

# Tomar y gastar.
ask-finish = ¿Qué se acabó?
ask-take = ¿Qué tomaste?
ask-how-much = ¿Cuánto tomaste de { THE($name) }, o cuánto queda?
ask-how-much-again = Di una cantidad, como dos porciones, la mitad o todo.
confirm-take = ¿Descuento { OF($amount, $name) }? Sí o no.
confirm-left = ¿De { THE($name) }, { remain-of } { $left }? Sí o no.
remain-of = { MANY($left) ->
    [many] quedan
   *[one] queda
  }
taken = { $amount ->
    [none] Anotado.
   *[other] { CAP(OF($amount, $name)) } menos.
  }{ $left ->
    [none] {""}
   *[other] {" "}{ MANY($left) ->
        [many] Quedan
       *[one] Queda
      } { $left }.
  }
taken-out = { CAP(OF($amount, $name)) }, fuera.
left-noted = { CAP($name) }: { remain-of } { $left }.
running-low = Se está acabando.
