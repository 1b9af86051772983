# Guardar comida.

ask-put-what = ¿Qué estás guardando?
    .short = ¿Qué es?
ask-put-what-again = Dime el nombre de la comida.
ask-put-where = ¿Dónde { goes } { THE($name) }?
    .short = ¿Dónde?
goes = { MANY($name) ->
    [many] van
   *[one] va
  }
ask-put-where-again-there = ¿Dónde { goes } { THE($name) }? La última vez, { $at }.
    .short = ¿Dónde? ¿Otra vez { $at }?
ask-place-share = ¿Dónde van { $amount }?
ask-marker-in-use = { CAP(THE($marker)) } ya { marca-o } { THE($name) }. ¿Qué marca anoto entonces?

confirm-another = { $amount ->
    [none] { CAP($name) }
   *[other] { CAP(OF($amount, $name)) }
  } { $at }: eso ya lo anoté hace un momento. ¿Es más de lo mismo? Sí o no.
confirm-second = { $amount ->
    [none] { CAP($name) }
   *[other] { CAP(OF($amount, $name)) }
  } { $at }: eso ya lo tengo anotado. ¿Es más de lo mismo? Sí o no.
put-away-done = { CAP($item) } { $where }{ $details ->
    [none] {""}
   *[other] , { $details }
  }.
    .short = { CAP($item) }, { $where }.
confirm-put-away = { $what } ¿Está bien? Sí o no.
put-away-shared = { CAP($item) }: { $where }{ $details ->
    [none] {""}
   *[other] , { $details }
  }.
read-back-date = { $what ->
    [made] se hizo { ON($date) }
    [bought] se compró { ON($date) }
    [came] llegó { ON($date) }
    [opened] se abrió { ON($date) }
    [frozen] se congeló { ON($date) }
    [useBy] usar a más tardar { $date }
   *[bestBefore] consumo preferente { $date }
  }
made-when-unknown = No se sabe cuándo se hizo.
with-marker = con { THE($marker) }
share-at = { $amount } { $at }
kept-from-before = Conservé de antes { $what }.{ $date ->
    [none] {""}
   *[new] {" "}La fecha es nueva: dímela cuando la sepas.
  }
    .short = Lo demás, como antes.{ $date ->
    [none] {""}
   *[new] {" "}Dime la fecha.
  }
ask-again-what = ¿Lo mismo otra vez, de qué?
offer-older-date = ¿Quedaba algo de lo anterior de { $name }? Entonces vale su fecha más vieja.
kept-reheating = cómo se recalienta
kept-diets = las marcas de dieta
kept-allergens = los alérgenos
off-the-list = Ya no está en la lista.
    .short = {""}
feels-like = Al tacto es como { THE($name) } de junto.{ $marker ->
    [none] {""}
   *[other] {" "}{ CAP(THE($marker)) } está libre, si lo quieres marcar.
  }
which-marker = ¿{ CAP($choices) }?
apart-marker-itself = { THE($marker) }
no-such-marker = No conozco { A($marker) } así.
ask-amend = ¿De qué comida?
ask-new-name = ¿Cómo se va a llamar { THE($name) }?
ask-amend-what = ¿Qué anoto de { THE($name) }?
ask-what-date = ¿Qué fecha tiene { THE($name) }?
ask-date-kind = ¿{ CAP($date) } es la fecha de caducidad de { THE($name) }, o la de consumo preferente?
    .short = ¿Caducidad, o consumo preferente?
ask-date-kind-past = ¿{ CAP($date) } es la caducidad de { THE($name) }, el consumo preferente, o el día en que se compró?
    .short = ¿Caducidad, consumo preferente, o compra?
ask-date-kind-again = Di caducidad, consumo preferente o compra. Di olvídalo si no lo sabes.
date-kind = { $what ->
    [useBy] la caducidad
    [bestBefore] el consumo preferente
   *[other] el día en que se compró
  }
amended = { CAP($name) }: { $facts }.
amended-all = { CAP($name) }, { $amount } en total: { $facts }.
told-nothing-new = Ahí no oí nada nuevo que anotar. Dilo de otra manera.
stays = { CAP($name) }: se queda como está.
known-already = Eso ya lo tengo: { $name }, { $facts }.
confirm-amend = ¿Anoto de { THE($name) }: { $facts }? Sí o no.
confirm-free = Está registrado que { THE($name) } { contiene-o } { OURS($allergens) }. ¿De veras no lo lleva? Sí o no.
date-unknown-noted = { $what ->
    [bestBefore] consumo preferente desconocido
    [useBy] caducidad desconocida
   *[other] fecha desconocida
  }
read-back-open = ya abierto, no se sabe desde cuándo
read-back-free = dijeron que no lleva { OURS($allergens) }
read-back-ingredient = lleva { $what }
read-back-no-notes = ya sin nota
watched-by = { $name } no come { OURS($allergens) }.
read-back-contains = contiene { OURS($allergens) }
read-back-amount = { $amount }
read-back-reheating = { $method ->
    [microwave] en el microondas
    [oven] en el horno
    [air-fryer] en la freidora de aire
    [hob] en la estufa
    [steamer] en la vaporera
   *[toaster] en el horno tostador
  }{ $heat ->
    [none] {""}
   *[other] {" "}a { $heat }
  }{ $time ->
    [none] {""}
   *[other] , { $time }
  }{ $watts ->
    [none] {""}
   *[other] {" "}a { UN($watts) } vatios
  }
read-back-step = { $step ->
    [none] {""}
   *[other] { $step } paso,{" "}
  }{ $words }
read-back-step-out = ya no, { $words }
read-back-caution = cuidado: { $caution }
read-back-name = ahora se llama { $name }
read-back-note = anotado: { $note }
read-back-maker = de { $maker }
read-back-owner = es de { $name }
read-back-diet = marcado: { OURS($diet) }
read-back-not-diet = ya no marcado: { OURS($diet) }
nothing-told = No oí nada que anotar.
one-then-other = { $first } { $next }
sure-told = Por anotar: { $told }{ $open ->
    [none] {""}
   *[other] {" "}Después pregunto dónde: { $open }.
  } { $unused ->
    [none] ¿Está bien? Sí o no.
   *[other] No entendí «{ $unused }». ¿Lo demás está bien? Sí o no.
  }
sure-told-brief = Queda por anotar: { $told } ¿Sí o no?
