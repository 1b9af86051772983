# El resumen de la noche y de la semana: qué usar, lo más urgente primero.

summary-nothing = { $span ->
    [week] Esta semana no hay nada con fecha que usar.
   *[night] Esta noche no hay nada con fecha que usar.
  }
summary-late = Este es el resumen de { $at }, con retraso.
    .short = Resumen con retraso.
summary-lead = { $span ->
    [week] Hay { UNA($count) } cosas que usar esta semana.
   *[night] Hay { UNA($count) } cosas que usar.
  }
    .short = {""}
summary-throw-out = Tira { THE($item) }{ summary-place }{ $day ->
    [none] .
   *[other] : su último día fue { $day }.
  }
    .short = Tira { THE($item) }.
summary-place = { $place ->
    [none] {""}
   *[other] {", "}{ $place }
  }
summary-throw-many = Tira { UNA($count) } cosas: { $items }.
summary-others = { UNA($count) } más
summary-throw-rest = Tira { $items }.
summary-thrown = { $item }
    .full = { $item }, { $place }
summary-chill = Mete { THE($item) } al refrigerador ahora{ summary-place }.
    .short = { CAP(THE($item)) }, al refrigerador ahora.
summary-cook-through = Usa { THE($item) } pronto, bien cocido{ summary-place }.
    .short = Usa { THE($item) } pronto, bien cocido.
summary-cook-or-freeze = { summary-verb } o congela { THE($item) } esta noche{ summary-place }.
    .short = { summary-verb } o congela { THE($item) } esta noche.
summary-freeze-or-cook = Congela { THE($item) } esta noche, o mañana: { summary-verb }{ summary-place }.
    .short = Congela { THE($item) } esta noche, o mañana: { summary-verb }.
summary-use-or-freeze = { summary-verb } o congela { THE($item) } { BY($day) }{ summary-place }.
    .short = { summary-verb } o congela { THE($item) } { BY($day) }.
summary-use = { summary-verb } { THE($item) } { summary-by }{ summary-place }.
    .short = { summary-verb } { THE($item) } { summary-by }.
summary-by = { $tonight ->
    [none] { BY($day) }
   *[yes] esta noche
  }
summary-verb = { $verb ->
    [cook] cocina
    [eat] come
   *[use] usa
  }
summary-not-for = Contiene { OURS($allergens) }: no es para { $people }.
    .short = No es para { $people }: { OURS($allergens) }.
summary-rest = { $count ->
    [one] Y una cosa más. Pide el resumen para oírla.
   *[other] Y { UNA($count) } cosas más. Pide el resumen para oírlas.
  }
    .short = { CAP($count) } más.
summary-stale = En el congelador ya pasó su mejor momento, solo de sabor: { $items }.
    .short = En el congelador, { $count } ya sin su mejor sabor.
summary-undated = Sin fecha, en el refrigerador: { $items }. Ante la duda, a la basura.
    .short = En el refrigerador, { $count } sin fecha.
