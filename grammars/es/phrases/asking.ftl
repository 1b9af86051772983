# Preguntas, y lo que se dice cuando no llega respuesta.

which-named = De { $name } hay { UN($count) }: { $choices }. ¿Cuál?
    .short = ¿{ $choices }?
which-mixed = Hay { $count } que coinciden: { $choices }. ¿Cuál?
    .short = ¿{ $choices }?
which-many = Hay { $count } que coinciden. Primero: { $choices }. ¿Cuál? O dime más.
    .short = ¿{ $choices }, u otro?
which-again = Di uno de estos: { $choices }; o todos, o ninguno.
which-place = ¿Cuál: { $choices }?
    .short = ¿{ $choices }?
which-place-again = Conozco más de un lugar con ese nombre. Di { $choices }.
near-one = Nada se llama así exactamente. ¿Quisiste decir { $choice }?
near-several = Nada se llama así exactamente. Hay { $choices }. ¿Cuál?
ask-item-again = Di su nombre, su lugar o cómo se siente.
ask-place-again = Di un lugar que tengas, por ejemplo una repisa y de qué mueble.
ask-once-more = Una vez más: { $question }
ask-way-out = Di olvídalo y lo dejo. { $question }
let-go = Lo dejo, nada cambió. Podemos retomarlo cuando quieras.
    .short = Lo dejo. Nada cambió.
left-as-it-is = Está bien, nada cambió.
    .short = Nada cambió.
offer-declined = Está bien.
back-to = { $question }
doubt-heard = Oí: { $heard }. ¿Es así?

no-such-item = No tengo { $name } en el registro.
nothing-like-that = Aquí nada coincide con eso.
no-other = No, solo { THE($name) }.
    .short = Solo eso.
no-such-place = No conozco ningún lugar que se llame { $words }. { $offer ->
    [yes] ¿Lo agrego? O dime otro lugar.
   *[no] ¿Dónde es?
  }

missed = { $times ->
    [1] Perdón, ¿lo repites?
    [2] Oí «{ $heard }» y no lo entendí. Prueba con otras palabras.
   *[3] Todavía no. Una cosa a la vez: dónde está el guiso, o qué es lo más viejo. O di ayuda.
  }
missed-with-question = { $times ->
    [1] Perdón, no entendí.
   *[other] Tampoco entendí eso.
  }
too-long = Eso fue demasiado largo, y no guardé nada. Dilo otra vez por partes.
    .short = Demasiado largo. Dilo por partes.
nothing-heard = { $times ->
    [1] No oí nada.
    [2] Sigo sin oír. Acércate, o dilo un poco más fuerte.
   *[3] Aquí estoy cuando me necesites.
  }
out-of-scope = { $times ->
    [1] Solo me ocupo de la comida de esta cocina: dónde está, de cuándo es y cómo se calienta.
    [2] Eso no es lo mío. Pregúntame dónde está una comida, o qué hay que usar primero.
   *[3] Eso no, perdón. Di ayuda y te digo qué puedo hacer.
  }
    .short = Solo me ocupo de la comida de aquí.
nothing-to-say = Está bien.
nothing-to-correct = ¿Qué corrijo? Dime todo, con su nombre.
put-right = Corregido.
changed-since = Algo lo cambió después, así que no lo toqué. Dime todo otra vez.
which-place-of = ¿Qué { $name }: { $choices }?
    .short = ¿{ CAP($choices) }?
which-brief = ¿Qué { $name }?
which-brief-any = ¿Cuál?
took-oldest = Lo más antiguo, { $at }.
only-yes-no = Para esto, solo sí o no, por favor.
caught-item = Oí { $name }, pero no qué hacer con eso. Di, por ejemplo: dónde está { $name }.
    .short = { CAP($name) }: ¿qué hago con eso?
offer-tell-place = { CAP($place) }: ¿digo qué hay ahí?
caught-place = Oí { $place }, pero no qué quieres saber. Di, por ejemplo, qué hay ahí.
    .short = ¿Qué quieres saber de { THE($place) }?

which-beside = Están uno junto al otro, ninguno encima. ¿Cuál: { $choices }?
then-this = ¿Entonces quisiste decir esto? { $question }
say-it-otherwise = Entonces oí mal. Dilo de otra manera, con su nombre o su lugar.
nearest-is = Lo más cercano: { $items }.
rest-not-heard = No entendí «{ $said }».
