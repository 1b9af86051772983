# Quién come aquí, y lo que no puede comer.

person-added = { $name } ya come aquí.
person-comes = { $name } viene { ON($day) }.
person-needs = { $name }: { $needs }.
person-needs-noted = Anotado para { $name }: { $needs }.
person-risk-yes = Sí, { $name } { risk-told }.
person-risk-not = No consta: nadie me dijo que { $name } corra más riesgo.
person-is-at-risk = { $name } { risk-told }.
people-at-risk = { $people } { $count ->
    [one] corre
   *[other] corren
  } más riesgo, según consta.
nobody-at-risk = No consta que nadie corra más riesgo.
nobody-comes = No consta que venga nadie.
caution-entry = { $name }: { $cautions }
cautions-told = { CAP($items) }.
rest-unknown-these = Sin datos: { $items }.
    .full = Puede contener { OURS($allergens) }, nadie anotó nada: { $items }.
person-known = A { $name } ya la tengo registrada.
person-watches = Anotado: { $name } no come { OURS($allergens) }.
person-watches-already = Eso ya lo tengo: { $name } no come { OURS($allergens) }.
confirm-person = { $allergens ->
    [none] ¿{ $name } come aquí? Sí o no.
   *[other] ¿{ $name } no come { OURS($allergens) }? Sí o no.
  }
person-at-risk = Anotado: { $name } { risk-told }, y lo diré con las comidas que nombra la guía.
person-risk-already = Ya lo tengo: { $name } { risk-told }.
risk-told = { $risk ->
    [pregnant] está embarazada y tiene más riesgo
    [older] tiene más riesgo por su edad
    [weakened] tiene más riesgo, con menos defensas
    [infant] es un bebé y tiene más riesgo
   *[other] tiene más riesgo
  }
ask-which-person = ¿Cuál: { $people }?
confirm-at-risk = ¿{ $name } tiene más riesgo? Sí o no.
ask-which-nuts = ¿Cuáles: nueces, cacahuates, o ambos?
allergen-name = { OURS($allergen) }
ask-person = ¿Cómo se llama esa persona?
near-person = ¿Quisiste decir { $name }? Sí o no.
unknown-person = No conozco a nadie que se llame { $name }. Di: { $name } come aquí.

person-watches-yes = Sí, { $name } no come { OURS($allergens) }.
person-watches-not = Según el registro, no: nadie me dijo que { $name } no coma { OURS($allergens) }.
person-eats = { $name } come { OURS($diets) }.
person-eats-yes = Sí, { $name } come { OURS($diets) }.
person-eats-not = Según el registro, no: nadie me dijo que { $name } coma { OURS($diets) }.
person-no-longer-eats = { $name } ya no come solo { OURS($diets) }.
confirm-person-eats = ¿{ $name } come { OURS($diets) }? Sí o no.
people-eat = { CAP($people) } { $count ->
    [one] come
   *[other] comen
  } { OURS($diet) }.
nobody-eats = No está registrado que nadie coma { OURS($diet) }.
person-and-food = { $answer ->
    [said-to-contain] { $person } no: dijeron que { THE($name) } { contiene-o } { OURS($allergen) }.
    [usually-contains] { $person }, mejor no: una comida así suele llevar { OURS($allergen) }, y nadie lo registró.
    [conflict] { $person }, sin seguridad: dijeron que { THE($name) } no { lleva-o } { OURS($allergen) }, pero una comida así suele llevarlo. Revisa la etiqueta.
    [said-free-from] Para { $person }: dijeron que { THE($name) } no { lleva-o } { OURS($allergen) }.
   *[unknown] Para { $person } no se sabe: nadie registró si { THE($name) } { lleva-o } { OURS($allergen) }.
  }
unknown-for-several = Para { $people } no se sabe: nadie registró si { THE($name) } { lleva-o } { OURS($allergens) }.
unknown-eater = Nadie me dijo qué no puede comer { $name }.
unknown-in-several = De { OURS($names) } nadie registró más, así que no prometo nada.
free-for-several = Para { $people }: dijeron que { THE($name) } no { lleva-o } { OURS($allergens) }.
person-no-longer = { $name } ya puede comer { OURS($allergens) }.
confirm-person-no-longer = ¿Quito { OURS($allergens) } de lo que no come { $name }? Sí o no.
confirm-no-allergen = { CAP($foods) }: no conozco ese alérgeno. ¿Lo guardo como algo que no hay que dar? Sí o no.
person-none = No hay ninguna alergia registrada de { $name }.
no-people = Todavía no está registrado quién come aquí.
person-with = { $name }, que no come { OURS($allergens) }
person-plain = { $name }
people-here = { $count ->
    [one] Come aquí una persona: { $people }.
   *[other] Comen aquí { UNA($count) } personas: { $people }.
  }
nobody-allergic = No hay ninguna alergia registrada.
nobody-allergic-to = No está registrado que nadie tenga alergia a { OURS($allergens) }.
allergic-people = { CAP($people) }.
ask-note = ¿Qué le digo a { $name }?
note-left = Le diré a { $name }: { $text }.
note-for-all = Le diré a quien pregunte primero: { $text }.
confirm-note = ¿Dejo el recado: { $text }? Sí o no.
no-notes = No hay recados.
no-notes-for = No hay ningún recado para { $name }.
notes-waiting = Para { $name }: { $texts }.
notes-on = { $count ->
    [one] La nota de { THE($name) }: { $notes }.
   *[other] { CAP(UNA($count)) } notas de { THE($name) }: { $notes }.
  }
no-notes-on = { CAP(THE($name)) } no { tiene-o } ninguna nota.
note-dropped = { $count ->
    [one] Quité el recado: { $text }.
   *[other] Quité { UN($count) } recados: { $text }.
  }
confirm-drop-note = ¿Quito el recado: { $text }? Sí o no.
notes-count = { CAP(UN($count)) } recados.
note-reads = { $from ->
    [none] { CAP($text) }, de { $when }.
   *[other] De { $from }, { $when }: { $text }.
  }
can-eat-others = { $verdict ->
    [no] Tampoco { $names }.
    [usually] Mejor tampoco { $names }.
    [unknown] De { $names } no se sabe.
   *[free] Según el registro, { $names } también.
  }
note-from = { $from ->
    [none] No se sabe de quién es. Se dejó { $when }.
   *[other] De { $from }, { $when }.
  }
note-not-heard = No, { $name } aún no lo ha oído: { $texts }.
note-was-heard = Sí, { $name } ya lo ha oído: { $texts }.
