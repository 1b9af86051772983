# Recalentar. Cocinar, descongelar, comida fuera y cortes de luz: en español todavía no.

ask-reheat = ¿Qué recaliento?
reheat-title = { $name }{ $method ->
    [microwave] {" "}en el microondas
    [oven] {" "}en el horno
    [air-fryer] {" "}en la freidora de aire
    [hob] {" "}en la estufa
    [steamer] {" "}en la vaporera
   *[toaster] {" "}en el horno tostador
  }{ $from ->
    [freezer] , desde congelado
   *[fridge] {""}
  }
reheat-minutes = { CAP($time) } a { UN($watts) } vatios.
    .full = { CAP($name) }: { $time } a { UN($watts) } vatios; luego déjalo reposar y revisa que esté bien caliente por dentro.
reheat-other-portions = Los tiempos son para { $told ->
    [one] una porción
   *[other] { $told }
  }. Para { $portions } tarda { $time } en total.
reheat-in-lots = Los tiempos son para { $told ->
    [one] una porción
   *[other] { $told }
  }: caliéntalo por tandas.
reheat-undated = No hay fecha registrada. Ante la duda, tíralo.
offer-throw-out = ¿Anoto { $name } como tirado?

# Lo que estuvo fuera del frío.
ask-left-out = ¿Qué se quedó fuera?
ask-out-since = ¿Desde cuándo está fuera { OURS($name) }?
ask-out-since-again = Di una hora, como el mediodía, o cuánto tiempo, como dos horas.
left-out-refrigerate-now = { CAP(OURS($name)) }: { $cold ->
    [freezer] devuélvelo al frío
   *[fridge] mételo al refrigerador
  } ahora{ $by ->
    [none] {""}
   *[other] , a más tardar a { $by }
  }.
left-out-throw-out = { CAP(OURS($name)) }: hay que tirarlo.
left-out-unknown = No puedo decirlo: nadie sabe cuánto tiempo estuvo fuera { OURS($name) }. Ante la duda, tíralo.
left-out-no-figure = { CAP(OURS($name)) }: se conserva a temperatura ambiente, así que hay que seguir su etiqueta.
left-out-limit = { CAP(OURS($name)) } fuera del refrigerador: { $limit }, según la guía{ $hot ->
    [none] {""}
   *[other] ; { $hot } a más de noventa grados Fahrenheit
  }.
confirm-out = ¿Anoto que { OURS($name) } está fuera? Sí o no.

# Alérgenos.
check-the-label = Eso es lo que me dijeron: decide la etiqueta y, con una alergia, también su médico.
contains-answer = { $answer ->
    [said-to-contain] Sí, me dijeron que { OURS($name) } contiene { OURS($allergen) }.
    [said-free-from] Me dijeron que { OURS($name) } no contiene { OURS($allergen) }.
    [usually-contains] No está registrado, pero una comida así suele contener { OURS($allergen) }.
    [conflict] Me dijeron que { OURS($name) } no contiene { OURS($allergen) }, pero una comida así suele contenerlo. Revisa la etiqueta.
   *[unknown] No se sabe: nadie registró si { OURS($name) } contiene { OURS($allergen) }.
  }
contains-these = Me dijeron que { OURS($name) } contiene { OURS($allergens) }.
contains-unknown = No se sabe: nadie registró qué contiene { OURS($name) }.
