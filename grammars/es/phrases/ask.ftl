# Preguntas que se arman de sus partes.

ask-maker = { $how ->
    [yes] Sí, { THE($name) } lo hizo { $maker }.
    [no] No, { THE($name) } lo hizo { $maker }.
   *[open] { CAP(THE($name)) } lo hizo { $maker }.
  }
    .short = { $how ->
    [yes] Sí, { $maker }.
    [no] No, { $maker }.
   *[open] { CAP($maker) }.
  }
ask-maker-unknown = No está registrado quién hizo { THE($name) }.
    .short = No está registrado.
ask-keeps-till = { $enough ->
    [yes] { CAP($name) }: dentro de la guía hasta { $last }, así que { $until } entra.
   *[no] No: { THE($name) }, { $by ->
      [label] usar a más tardar { $last }
     *[guidance] dentro de la guía hasta { $last }
    }, antes de { $until }.
  }
    .short = { $enough ->
    [yes] Dentro de la guía hasta { $last }.
   *[no] No, hasta { $last }.
  }
ask-label-keeps = Por su etiqueta, sí: { $name }, hasta { $printed }. La guía da hasta { $last }.
    .short = Etiqueta { $printed }, guía { $last }.
ask-put = { $count ->
    [one] Una cosa se puso ahí
   *[other] { CAP(UNA($count)) } cosas se pusieron ahí
  } { $until ->
    [none] { ON($from) }
   *[other] desde { $from } hasta { $until }
  }.
ask-put-none = No consta que se pusiera nada ahí { $until ->
    [none] { ON($from) }
   *[other] desde { $from } hasta { $until }
  }.
ask-sum = { $total } en total: { $items }.
ask-sum-entry = { OF($amount, $name) }
ask-set = { $count ->
    [one] Uno: { $items }.
   *[other] { CAP($count) }: { $items }.
  }
ask-set-within = { $count ->
    [one] Uno dentro de lo que da la guía: { $items }.
   *[other] { CAP($count) } dentro de lo que da la guía: { $items }.
  }
ask-newest = Lo más nuevo: { $entry }.
    .short = { CAP($entry) }.
ask-nobody-used = No está registrado que nadie haya usado { THE($name) }.
ask-used-up = Se usaron { $used } de { $first } de { $name }, quedan { $left }.
    .short = { CAP($used) } de { $first }.
