# Marcas que se tocan: qué llevan, qué quieren decir, cómo se cuidan.

ask-mark-with = ¿Qué marca? Dime cómo se siente.
ask-mark-what = ¿Qué lleva { THE($marker) }?
ask-marker-again = Di qué es, de qué está hecha y qué se le puede contar.
ask-unmark = ¿A qué le quito la marca?
ask-new-marker = ¿Cómo se siente: qué es y de qué está hecha?
ask-which-marker = ¿Qué marca?
ask-dots = ¿Cuántos { $counted ->
    [knot] nudos
    [ridge] relieves
    [notch] cortes
   *[dot] puntos
  }?
ask-dots-mean = ¿Qué { $dots ->
    [one] quiere
   *[other] quieren
  } decir { $raised }?
ask-care = ¿Cómo se cuida { THE($marker) }?
marked = { CAP($name) }: lleva { THE($marker) }.{ $old ->
    [none] {""}
   *[other] {" "}Queda libre { THE($old) }.
  }
marked-all = { CAP($name) }, { $amount } en total: llevan { THE($marker) }.
confirm-mark = ¿Pongo { THE($marker) } a { THE($name) }? Sí o no.
confirm-take-marker = { CAP(THE($marker)) } { marca-o } ahora { THE($from) }. ¿{ paso-o } a { THE($name) }? Sí o no.
marca-o = { MANY($marker) ->
    [many] marcan
   *[one] marca
  }
paso-o = { GENDER($marker) ->
    [f] { MANY($marker) ->
        [many] Las paso
       *[one] La paso
      }
   *[m] { MANY($marker) ->
        [many] Los paso
       *[one] Lo paso
      }
  }
so-it-is = Así queda marcado: { $meaning }.
marker-feels-like = Se siente como la de { THE($name) }.{ $way ->
    [none] {""}
   *[other] {" "}Para distinguirlas, { $way }.
  }
add-dots = ponle { $raised }
move-to-spot = ponla en { OURS($spot) }
use-two = usa dos
unmarked = { CAP($name) }: ya no lleva marca.{ $marker ->
    [none] {""}
   *[other] {" "}Queda libre { THE($marker) }.
  }
confirm-unmark = ¿Quito la marca a { THE($name) }? Sí o no.
confirm-unmark-other = { CAP(THE($name)) } lleva { THE($marker) }. ¿Lo quito? Sí o no.
marker-added = { CAP($marker) }: en la caja de las libres.
confirm-add-marker = ¿Una marca nueva, { THE($marker) }? Sí o no.
confirm-alike = Tienes una que se siente igual{ $name ->
    [none] {""}
   *[other] , en { THE($name) }
  }.{ $way ->
    [none] {""}
   *[other] {" "}Podrías hacer esto: { $way }.
  } ¿La dejo como está? Sí o no.
dots-mean = { CAP($raised) } { $dots ->
    [one] quiere
   *[other] quieren
  } decir { $meaning }.
meanings-checked = { $count ->
    [0] Aquí nada lleva una marca con significado.
    [one] Hay una cosa marcada, y nada de lo registrado la contradice.
   *[other] Hay { UNA($count) } cosas marcadas, y nada de lo registrado las contradice.
  }
meanings-doubted = { $doubts ->
    [one] Una duda: { $which }.
   *[other] { CAP(UNA($doubts)) } dudas: { $which }.
  }
meaning-must-not = { THE($name) } { es-o } para { $person }, y dijeron que contiene { OURS($allergens) }, que { $person } no debe comer
meaning-contains = { THE($name) } { lleva-o } la marca de { $meaning }, y { $how ->
    [usually] una comida así suele llevar
   *[contains] dijeron que contiene
  } { OURS($allergens) }
meaning-animal = { THE($name) } { lleva-o } la marca de { $meaning }, y por el nombre es carne o pescado
meaning-free = la marca de { THE($name) } dice { OURS($allergens) }, y está registrado que no lo lleva
meaning-owner = { THE($name) } { lleva-o } la marca de { $meaning }, y está registrado que es de { $owner }
meaning-unmarked = { THE($name) } { esta-o } registrado como { $caution }, sin { $raised }
meaning-unsaid = Nada más en el registro dice { $meaning } de { $names }.
dots-meant = Hasta ahora: { $old }.
dots-on = { $count ->
    [one] Los lleva una comida.
   *[other] Los llevan { UNA($count) } comidas.
  }
dots-mean-nothing = { CAP($raised) } no { $dots ->
    [one] quiere
   *[other] quieren
  } decir nada aquí. Puedes darles un significado.
confirm-dots = ¿{ CAP($raised) } { $dots ->
    [one] quiere
   *[other] quieren
  } decir { $meaning }{ $count ->
    [0] {""}
    [one] , en una comida
   *[other] , en { $count } comidas
  }? Sí o no.
confirm-dots-replace = Hasta ahora { $raised } { $dots ->
    [one] quiere
   *[other] quieren
  } decir { $old }{ $count ->
    [0] {""}
    [one] , en una comida
   *[other] , en { UNA($count) } comidas
  }. ¿Lo cambio por { $meaning }? Sí o no.
meaning-not-kept = No lo guardé: { $marker }, { $meaning }. Aquí solo tienen significado los puntos, nudos o relieves que se cuentan.
meaning-not-kept-of-diet = No lo guardé: { $marker }, { $meaning }. Aquí solo los puntos, nudos o relieves tienen significado. Dime de cada comida qué lleva.
no-dot-meanings = Todavía no hay { $counted ->
    [knot] nudos
    [ridge] relieves
    [notch] cortes
   *[dot] puntos
  } con significado. Di, por ejemplo: un nudo quiere decir que hay que comerlo pronto.
care-noted = { CAP($marker) }: { $care }.
confirm-care = ¿Para { THE($marker) }: { $care }? Sí o no.
care-is = { CAP($marker) }: { $care }.
care-unknown = No hay nada registrado sobre cómo cuidar { THE($marker) }.
no-markers = Todavía no hay marcas registradas.
markers-all = { CAP(UNA($count)) } marcas, { $spare } libres: { $markers }.
no-spare = No hay ninguna marca libre.
spare-markers = { $count ->
    [one] Una libre: { $markers }.
   *[other] { CAP($count) } libres: { $markers }.
  }
marker-on = { $marker } en { THE($name) }
marker-spare-short = { $marker }, libre
marker-was-on = { $marker }, antes en { THE($name) }
ask-suggest-for = ¿Una marca para qué?
suggest = { CAP(THE($marker)) }, para { THE($name) }.
suggest-nothing-near = Cerca no hay nada marcado, así que serviría cualquiera.
suggest-unlike = { $by ->
    [fastening] No se parece en nada a { THE($marker) } de { THE($name) }.
    [material] Se siente distinto que { THE($marker) } de { THE($name) }.
    [shape] Tiene otra forma que { THE($marker) } de { THE($name) }.
    [spot] Va en otra parte que { THE($marker) } de { THE($name) }.
   *[count] Se le cuentan otros que a { THE($marker) } de { THE($name) }.
  }
suggest-close = Se parece bastante a { THE($marker) } de { THE($name) }; ninguna libre se parece menos.
suggest-second = O { THE($marker) }.
suggest-put-on = ¿La pongo?
suggest-none = Ninguna marca libre le iría bien a { THE($name) }.
suggest-make = Toma { $marker }, otra igual, y { $way }.
suggest-get = Para empezar sirve una liga o un imperdible.
none-alike = En ninguna repisa hay dos que se sientan igual.
alike-count = { $count ->
    [one] Hay dos vecinas que se sienten igual.
   *[other] Hay { $count } pares de vecinas que se sienten igual.
  }
alike-pair = { CAP($at) }: { THE($one) } de { THE($first) }, y { THE($other) } de { THE($second) }.
alike-way = Para { THE($name) } podrías hacer esto: { $way }.
none-care = { $what ->
    [wet] Que se sepa, a ninguna le hace daño mojarse.
    [dishwasher] Que se sepa, a ninguna le hace daño el lavavajillas.
    [freezer] Que se sepa, a ninguna le hace daño el congelador.
    [heat] Que se sepa, a ninguna le hace daño el calor.
   *[microwave] Que se sepa, a ninguna le hace daño el microondas.
  }
care-count = { $what ->
    [wet] No se deben mojar { $count }.
    [dishwasher] No deben ir al lavavajillas { $count }.
    [freezer] No deben ir al congelador { $count }.
    [heat] Lejos del calor, { $count }.
   *[microwave] No deben ir al microondas { $count }.
  }
care-recorded = Según el registro: { $markers }.
care-made-of = Por lo que están hechas: { $markers }.
care-unknown-of = { $count ->
    [one] De una no hay nada registrado.
   *[other] De { UNA($count) } no hay nada registrado.
  }

# Llevada a otra cosa, cambiada, y en qué estaba antes.
ask-swap = ¿Cuáles dos cambian de marca?
now-wears = { CAP(THE($name)) }: ahora lleva { THE($marker) }.
now-wears-none = { CAP(THE($name)) }: ahora no lleva marca.
marker-bore = Antes estaba en { THE($name) }: { THE($marker) }.
    .short = En { THE($name) }.
marker-bore-unknown = No tengo registrado en qué estaba antes { THE($marker) }.
    .short = No está registrado.
marker-bears = Ahora está en { THE($name) }.
    .short = {""}
care-may = Sí, { $what ->
    [wet] se puede mojar
    [dishwasher] puede ir al lavavajillas
    [freezer] puede ir al congelador
    [heat] aguanta el calor
   *[microwave] puede ir al microondas
  }.
    .short = Sí.
care-may-not = No, { $what ->
    [wet] que no se moje
    [dishwasher] que no vaya al lavavajillas
    [freezer] que no vaya al congelador
    [heat] que no le dé el calor
   *[microwave] que no vaya al microondas
  }.
    .short = No.
care-by-make = Por el material: { $marker }.
    .short = {""}
care-not-said = { $what ->
    [wet] No está registrado si se puede mojar.
    [dishwasher] No está registrado si puede ir al lavavajillas.
    [freezer] No está registrado si puede ir al congelador.
    [heat] No está registrado si aguanta el calor.
   *[microwave] No está registrado si puede ir al microondas.
  }
none-like = Aquí nada se siente como { THE($marker) }.
marker-feels-near = Al tacto, { THE($marker) } se parece a { $others }.
marker-on-at = { THE($marker) } de { THE($name) } { $at }
told-apart-by = Para distinguirla: { $way }.
    .short = {""}
dots-mean-no-more = { CAP($raised) }: ya no significa { $old }.
confirm-dots-none = Hasta ahora { $raised }: { $old }{ $count ->
    [0] {""}
    [one] , en una comida
   *[other] , en { UNA($count) } comidas
  }. ¿Le quito el significado? Sí o no.

# Perdida, y encontrada otra vez.
marker-lost = { CAP($marker) }: ya no está en el registro.{ $name ->
    [none] {""}
   *[other] {" "}{ CAP(THE($name)) }: ahora no lleva marca.
  }
confirm-lose-marker = ¿Quito del registro { THE($marker) }, por perdida? Sí o no.
marker-back = { CAP($marker) }: de vuelta, entre las que están libres.
