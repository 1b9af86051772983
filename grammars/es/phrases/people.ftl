# Quién come aquí, y lo que no puede comer.

person-added = { $name } ya come aquí.
person-known = A { $name } ya la tengo registrada.
person-watches = Anotado: { $name } no come { OURS($allergens) }.
person-watches-already = Eso ya lo tengo: { $name } no come { OURS($allergens) }.
confirm-person = { $allergens ->
    [none] ¿{ $name } come aquí? Sí o no.
   *[other] ¿{ $name } no come { OURS($allergens) }? Sí o no.
  }
person-at-risk = Anotado: { $name } tiene más riesgo, y lo diré con las comidas que nombra la guía.
confirm-at-risk = ¿{ $name } tiene más riesgo? Sí o no.
ask-which-nuts = ¿Cuáles: nueces, cacahuates, o ambos?
allergen-name = { OURS($allergen) }
ask-person = ¿Cómo se llama esa persona?
near-person = ¿Quisiste decir { $name }? Sí o no.
unknown-person = No conozco a nadie que se llame { $name }. Di: { $name } come aquí.
