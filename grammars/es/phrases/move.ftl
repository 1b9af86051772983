# Mover, abrir, congelar, descongelar, dividir y juntar.

ask-move-what = ¿Qué cambio de lugar?
ask-move-where = ¿A dónde { goes } { THE($name) }?
    .short = ¿A dónde?
confirm-move = ¿Cambio { THE($name) }, { $at }? Sí o no.
moved = { CAP($name) }, ahora { $at }.
    .short = { CAP($name) }, { $at }.
moved-some = { CAP($amount) } de { $name }, ahora { $at }.
refreeze-caution = Ya se descongeló una vez. Se puede volver a congelar solo si se descongeló en el refrigerador; quedará más blando.
ask-opened = ¿Qué se abrió?
opened = { CAP($name) }: se abrió { ON($date) }.
confirm-opened = ¿Anoto que se abrió { THE($name) }? Sí o no.
ask-freeze = ¿Qué congelo?
ask-which-freezer = ¿En qué congelador { goes } { THE($name) }{ $choices ->
    [none] {""}
   *[other] : { $choices }
  }?
freeze-past-warning = { CAP($name) }: pasó el plazo de la guía, así que hay que { $several ->
    [yes] tirarlos
   *[no] tirarlo
  }.
confirm-freeze-past = { CAP($name) }: pasó el plazo de la guía, así que hay que { $several ->
    [yes] tirarlos. ¿Los congelo
   *[no] tirarlo. ¿Lo congelo
  } de todos modos? Sí o no.
frozen = { CAP($name) }, { $at }: se congeló { ON($date) }.
confirm-freeze = ¿Anoto { THE($name) } como congelado? Sí o no.
ask-thaw = ¿Qué descongelo?
ask-thaw-where = ¿Dónde se está descongelando { THE($name) }?
thawing = { CAP($name) }: se descongela { $at }.
thaw-counter-caution = La guía dice que nunca se descongele fuera del frío: usa el refrigerador, agua fría o el microondas.
confirm-thaw = ¿Anoto que { THE($name) } se está descongelando? Sí o no.
ask-reheated = ¿Qué se recalentó?
reheated = { CAP($name) }: se recalentó { TIMES($times) }.
confirm-reheated = ¿Anoto { THE($name) } como recalentado? Sí o no.
ask-put-back = ¿Qué volvió a su lugar?
put-back = { CAP($name) }, de vuelta { $at }.
confirm-put-back = ¿Anoto que { THE($name) } volvió a su lugar? Sí o no.
ask-split = ¿Qué divido?
ask-split-into = ¿En cuántos reparto { THE($name) }?
split = { CAP($name) }, ahora en { UN($count) } recipientes.
split-into = { CAP($name) }, ahora en { $parts }.
confirm-split = ¿Divido { THE($name) }? Sí o no.
ask-merge = ¿Cuáles van juntos?
merge-too-few = Necesito dos para juntarlos. Nombra los dos.
confirm-merge = { $caution ->
    [none] {""}
   *[other] { $caution }{" "}
  }¿Junto { $count } partes de { $name }{ $caution ->
    [none] {" "}en una
   *[other] {""}
  }? Sí o no.
confirm-merge-different = Son distintos: { $names }. ¿Los junto de todos modos? Sí o no.
merged = { CAP($name) }, todo junto { $at }.
merged-frozen = { $may ->
    [yes] Una parte está congelada: la guía dice que se vuelva a congelar solo si se descongeló en el refrigerador.
    [cook-first] Una parte está congelada: la guía dice que se cocine antes de volver a congelar.
    [no] Una parte está congelada: la guía dice que no se vuelva a congelar.
   *[unknown] Una parte está congelada: no lo vuelvas a congelar. Ante la duda, tíralo.
  }
merged-oldest = Cuenta como la parte más vieja.
all-kept = Así no queda nada que mover.
nothing-to-swap = Ahí no hay nada que cambiar.
