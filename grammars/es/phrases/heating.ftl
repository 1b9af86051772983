# Recalentar, cocinar, descongelar, comida fuera del frío, cortes de luz, y quién puede comer qué.

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
instructions-told = Sí: { $ways }. Di: guíame paso a paso.
    .short = Sí: { $ways }.
instructions-way = { $method ->
    [microwave] para el microondas
    [oven] para el horno
    [air-fryer] para la freidora de aire
    [hob] para la estufa
    [steamer] para la vaporera
    [slow-cooker] para la olla lenta
   *[toaster] para el horno tostador
  }{ $count ->
    [none] {""}
    [one] , un paso
   *[other] , { UN($count) } pasos
  }
instructions-none = No, nadie me dijo cómo calentar { OURS($name) }. Di: instrucciones para { OURS($name) }, y qué hacer.
    .short = No hay instrucciones para { OURS($name) }.
reheat-minutes = { CAP($time) } a { UN($watts) } vatios.
    .full = { CAP($name) }: { $time } a { UN($watts) } vatios; luego déjalo reposar y revisa que esté bien caliente por dentro.
# Después del tiempo o del calor que dijo quien cocina.
inside-too = La guía pide { $temperature } por dentro.
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
confirm-out = ¿Anoto que { OURS($name) } { esta-o } fuera? Sí o no.

# Alérgenos.
check-the-label = Eso es lo que me dijeron: decide la etiqueta y, con una alergia, también su médico.
contains-answer = { $answer ->
    [said-to-contain] Sí, me dijeron que { OURS($name) } { contiene-o } { OURS($allergen) }.
    [said-free-from] Me dijeron que { OURS($name) } no { contiene-o } { OURS($allergen) }.
    [usually-contains] No está registrado, pero una comida así suele contener { OURS($allergen) }.
    [conflict] Me dijeron que { OURS($name) } no { contiene-o } { OURS($allergen) }, pero una comida así suele contenerlo. Revisa la etiqueta.
   *[unknown] No se sabe: nadie registró si { OURS($name) } { contiene-o } { OURS($allergen) }.
  }
contains-these = Me dijeron que { OURS($name) } { contiene-o } { OURS($allergens) }.
contains-unknown = No se sabe: nadie registró qué contiene { OURS($name) }.

# Cocinar y descongelar.
recorded-heat = { CAP($heat) } { $method ->
    [oven] en el horno
    [air-fryer] en la freidora de aire
   *[other] como me dijiste
  }.
reheat-recorded-minutes = { CAP($time) } { $method ->
    [oven] en el horno
    [air-fryer] en la freidora de aire
    [hob] en la estufa
    [steamer] en la vaporera
   *[toaster] en el horno tostador
  }{ $heat ->
    [none] {""}
   *[other] {" "}a { $heat }
  }, como me dijiste.
reheat-other-power = Los tiempos son para { UN($told) } vatios. Aquí, a { UN($watts) }, son { $time } en total.
ask-cook = ¿Qué comida?
cook-by-label = Cuánto tiempo y cómo, lo dice su etiqueta o tu receta.
    .short = {""}
cook-recorded = Está registrado cómo se calienta: di caliéntame { THE($name) }.
    .short = {""}
cook-thermometer = Solo lo dice un termómetro en la parte más gruesa.
cook-colour = Guíate solo por un termómetro.
reheat-again-before = Hasta ahora se recalentó { TIMES($times) }.
reheat-again-counts = La guía que tengo no cuenta las veces: cada vez, { $temperature } por dentro, y calienta solo lo que se va a comer.
reheat-again-once = La guía dice que una sola vez{ $done ->
    [yes] , y ya fue
   *[no] {""}
  }: { $temperature } por dentro, y lo que sobre se tira.
reheat-none-noted = No está registrado que se recalentara.
thaw-needed-no = No hace falta: está registrado cómo calentarlo desde congelado.
thaw-takes = { $method ->
    [fridge] En el refrigerador, { $low ->
        [none] {""}
       *[other] de { $low } a{" "}
      }{ $high }
   *[cold-water] en agua fría, { $low ->
        [none] {""}
       *[other] de { $low } a{" "}
      }{ $high }
  }, para { $name }.
thawed-by = Estará listo { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }a { $time }, en el refrigerador.
thaw-not-frozen = { CAP(THE($name)) }: { $at }, no en un congelador. No hay nada que descongelar.
thaw-ways = El refrigerador, agua fría o el microondas.
ask-thaw-when = ¿Para cuándo quieres { THE($name) }?
ask-thaw-weight = ¿Cuántas libras pesa { THE($name) }?
ask-thaw-weight-again = Di cuántas libras, o más o menos cuánto pesa.
thaw-option = { $method ->
    [fridge] { $time ->
        [none] En el refrigerador: un día por cada cuatro o cinco libras.
       *[other] En el refrigerador, empezando { $date ->
            [none] hoy
           *[other] { ON($date) }
          } a { $time }.
      }
    [cold-water] { $time ->
        [none] En agua fría: media hora por libra.
       *[other] En agua fría, empezando { $date ->
            [none] hoy
           *[other] { ON($date) }
          } a { $time }.
      }
   *[microwave] En el microondas, justo antes de cocinar.
  }
thaw-title = descongelar { THE($name) } { $method ->
    [cold-water] en agua fría
    [fridge] en el refrigerador
   *[microwave] en el microondas
  }
thaw-step-into-water = Ponlo en un tazón con agua fría, todo cubierto.
thaw-step-change = Cambia el agua.
thaw-step-change-for = Cambia el agua cada treinta minutos, como { $time } en total.
thaw-step-leave = Déjalo ahí { $time }.
thaw-step-microwave = Descongélalo según el manual de tu microondas.
thaw-too-late = Ya es tarde para descongelar { THE($name) } para entonces.
offer-remind = ¿Te lo recuerdo?
left-out-supposed = { $span ->
    [none] Eso
   *[other] { CAP($span) }
  } sería { $over ->
    [yes] demasiado para { OURS($name) }: entonces hay que tirarlo
   *[no] dentro de la guía para { OURS($name) }
  }.
left-out-allows = La guía permite { $limit }{ $hot ->
    [none] {""}
   *[other] ; { $hot } a más de noventa grados Fahrenheit
  }.
offer-note-out = ¿Anoto que { THE($name) } { esta-o } fuera desde entonces?

# Cortes de luz.
ask-power-since = ¿Desde cuándo no hay luz?
ask-doors = ¿Refrigerador y congelador siguieron cerrados?
ask-fridge-door = ¿Y el refrigerador, siguió cerrado?
ask-doors-again = ¿Se abrieron desde entonces? Di sí si siguieron cerrados.
ask-full = ¿El congelador está lleno?
ask-full-again = ¿Está bastante lleno? Di no si está como a la mitad.
power-more = ¿Sigo?
power-title = el corte de luz
power-first = No abras las puertas.
power-reads-cold = El refrigerador marca suficiente frío, así que por ahora su comida se conserva.
power-so-far = { $over ->
    [yes] Estuvo sin luz { $hours }.
   *[no] Van { $hours } sin luz, desde { $since }.
  }
power-one-if-shut = { $name }: si la puerta siguió cerrada, frío hasta más o menos { $until }{ $date ->
    [none] {""}
   *[other] {" "}{ $date }
  }. Si se abrió, lo dice un termómetro; en la duda, tíralo.
power-one-if-shut-held = { $name }: si la puerta estuvo cerrada, dentro de las horas que aguanta el refrigerador. Si se abrió, lo dice un termómetro; en la duda, tíralo.
power-was-out = Sin luz { $hours }.
power-if-shut-held = Sin luz { $hours }: si las puertas siguieron cerradas, todo está dentro de sus horas.
power-held = El refrigerador aguantó: la luz volvió dentro de sus horas.
power-if-shut = No abras nada: el refrigerador aguanta hasta cerca de { $until }{ $date ->
    [none] {""}
   *[other] {" "}{ ON($date) }
  }.
power-both-hold = El refrigerador aguanta hasta { $fridge }; el congelador, { $freezer }{ $date ->
    [none] {""}
   *[other] {" "}{ ON($date) }
  }.
power-holds = { $which ->
    [fridge] El refrigerador
   *[freezer] El congelador
  } { $state ->
    [holding] sigue frío { $until ->
        [none] por ahora
       *[other] hasta cerca de { $until }{ $date ->
            [none] {""}
           *[other] {" "}{ ON($date) }
          }
      }.
    [past] { $until ->
        [none] lleva demasiado tiempo sin luz.
       *[other] llevaba demasiado tiempo sin luz a { $until }.
      }
   *[unknown] no se puede calcular, porque se abrió una puerta.
  }
power-tell-back = Dime cuando vuelva.
    .full = Dime cuando vuelva la luz, y revisamos la comida.
power-back = Sin luz { $hours }{ $discards ->
    [0] .
    [one] , y la guía dice que se tire una cosa.
   *[other] , y la guía dice que se tiren { UNA($discards) } cosas.
  }
power-lost-so-far = Tira { $items }{ $left ->
    [0] .
   *[other] , y { UNA($left) } más.
  }
power-nothing = No hay nada registrado en el refrigerador ni en los congeladores.
power-back-title = revisar la comida después del corte de luz
power-steps = { $count ->
    [one] Un paso.
   *[other] { CAP(UN($count)) } pasos.
  }
power-step = { CAP($at) }, { $verdict ->
    [discard] tira
    [discard-in-doubt] ante la duda, tira
    [check] busca hielo al tacto o usa un termómetro antes de conservar
    [use-now] usa ahora
   *[refreeze] esto se puede volver a congelar:
  } { $items }.
power-keep = { $count ->
    [one] La guía dice que se conserve { $items }.
   *[other] La guía dice que se conserven { UNA($count) } cosas{ $left ->
        [0] :
       *[other] , entre ellas
      } { $items }.
  }

# Quién puede comer qué.
ask-contains = ¿Qué busco: qué comida, o qué alérgeno?
ask-who-eats = ¿Quién va a comer?
diet-answer = { $answer ->
    [marked] Sí, { THE($name) } { lleva-o } la marca { OURS($diet) }.
    [contains] No: dijeron que { THE($name) } { contiene-o } { OURS($what) }.
    [usually] { $what ->
        [none] Difícilmente: por su nombre, { THE($name) } { es-o } carne o pescado.
       *[other] Difícilmente: nadie lo marcó { OURS($diet) }, y una comida así suele llevar { OURS($what) }.
      }
   *[unknown] No se sabe: nadie marcó { THE($name) } como { OURS($diet) }.
  }
diet-of-person = { $answer ->
    [marked] { CAP(THE($name)) } { lleva-o } la marca { OURS($diet) }, como come { $person }.
    [contains] { $person } come { OURS($diet) }, y dijeron que { THE($name) } { contiene-o } { OURS($what) }.
    [usually] { $what ->
        [none] { $person } come { OURS($diet) }; por su nombre, { THE($name) } { es-o } carne o pescado.
       *[other] { $person } come { OURS($diet) }; nadie lo marcó así, y una comida como esa suele llevar { OURS($what) }.
      }
   *[unknown] { $person } come { OURS($diet) }; nadie marcó así { THE($name) }.
  }
can-eat-diet = Con la marca { OURS($diets) }, como come { $person }: { $items }.
can-eat-diet-none = Nada lleva la marca { OURS($diets) }, como come { $person }.
diet-unmarked = { $count ->
    [one] Otra no lleva esa marca.
   *[other] Otras { UNA($count) } no llevan esa marca.
  }
with-allergen = { $count ->
    [one] Dijeron que una contiene { OURS($allergens) }: { $items }.
   *[other] Dijeron que { UNA($count) } contienen { OURS($allergens) }: { $items }.
  }
none-with-allergen = No está registrado que nada contenga { OURS($allergens) }.
usually-with = { $count ->
    [one] Suele llevarlo, sin estar registrado: { $items }.
   *[other] Suelen llevarlo, sin estar registrado: { $items }.
  }
free-in-doubt = { $count ->
    [one] Dicen que no lo lleva, pero suele llevarlo; mira la etiqueta: { $items }.
   *[other] Dicen que no lo llevan, pero suelen llevarlo; mira las etiquetas: { $items }.
  }
must-not-have = No para { $person }; dijeron que llevan { OURS($allergens) }: { $items }.
none-must-not = De nada de eso dijeron que lleve { OURS($allergens) }, que { $person } no come.
not-by-diet = No va con { OURS($diet) }, como come { $person }: { $items }.
none-not-by-diet = De nada de eso se sabe que no vaya con { OURS($diet) }, como come { $person }.
risk-named = Para alguien con más riesgo, como { $person }, la guía nombra: { $items }.
goes-with-unknown = Nadie registró qué va bien con { $items }.
listed-with = De la lista, suele contener { OURS($allergens) }: { $items }.
listed-with-none = Nada de la lista suele contener { OURS($allergens) }, por lo que dice su nombre.
listed-unknown = { $count ->
    [one] De la otra, mira la etiqueta.
   *[other] De las otras { $count }, mira las etiquetas.
  }
past-for-nobody = Pasaron lo que dice la guía, así que para nadie: { $items }.
risk-unknown = { $few ->
    [yes] De { $items } no sé qué dice la guía.
   *[no] { CAP(UNA($count)) } comidas no están en mis tablas de guía.
  }
risk-none = { $rest ->
    [yes] La guía no nombra nada de lo demás para alguien con más riesgo, como { $person }.
   *[no] La guía no nombra nada de eso para alguien con más riesgo, como { $person }.
  }
not-recorded-of = { $count ->
    [one] De una nadie lo registró: { $items }.
   *[other] De { UNA($count) } nadie lo registró: { $items }.
  }
not-recorded-for = { $count ->
    [one] De una nadie lo registró.
   *[other] De { UNA($count) } nadie lo registró.
  }
said-free-items = { $count ->
    [one] Dijeron que una no lleva { OURS($allergens) }: { $items }.
   *[other] Dijeron que { UNA($count) } no llevan { OURS($allergens) }: { $items }.
  }
because-contains = Dijeron que { THE($name) } { contiene-o } { OURS($allergens) }, que { $person } no come.
none-said-free = No está registrado que nada esté libre de { OURS($allergens) }.
holds-it = Dijeron que lo contiene: { $items }.
not-said-either-way = No se dijo ni sí ni no: { $items }.
no-allergy-recorded = No hay ninguna alergia registrada de { $name }, así que no puedo decirlo.
can-eat = { $person } puede comer, registrado como libre de { OURS($allergens) }: { $items }.
can-eat-none-sure = De nada{ $count ->
    [0] {""}
   *[other] {" "}más
  } dijeron que esté libre de { OURS($allergens) }, así que no le prometo nada a { $person }.
    .short = De nada dijeron que esté libre de { OURS($allergens) }.
cannot-eat = No: { $items }.
rest-unknown = { CAP(UNA($count)) }: sin registrar.
    .full = { $count ->
        [one] Una puede contener { OURS($allergens) }: nadie lo registró.
       *[other] { CAP(UNA($count)) } pueden contener { OURS($allergens) }: nadie lo registró.
      }
can-eat-one = { $verdict ->
    [no] No. Dijeron que { THE($name) } { contiene-o } { OURS($allergens) }.
    [usually] Mejor no: { THE($name) } { suele-o } llevar { OURS($allergens) }, y nadie lo registró.
    [unknown] No se sabe: nadie registró si { THE($name) } { lleva-o } { OURS($allergens) }.
   *[free] Según el registro, { THE($name) } { esta-o } libre de { OURS($allergens) }.
  }
