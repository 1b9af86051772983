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
