# Cuánto tiempo tiene, qué fecha, cuánto dura, qué usar primero.

ask-how-old = ¿Cuánto tiempo tiene qué?
ask-date-of = ¿La fecha de qué?
ask-keeps = ¿Qué comida?
age = { CAP($name) }: { $what ->
    [made] se hizo
    [bought] se compró
    [came] llegó
    [frozen] se congeló
   *[opened] se abrió
  } { ON($date) }{ $count ->
    [none] {""}
    [0] {""}
    [1] {""}
   *[other] , hace { $days }
  }{ $made ->
    [unknown] ; no se sabe cuándo se hizo.
   *[none] .
  }
    .short = { $count ->
    [0] De hoy.
   *[other] { CAP($days) }.
  }
age-at-least = { CAP($name) }: sin fecha, pero lleva aquí al menos { $days }.
age-unknown = { CAP($name) }: no hay fecha registrada.
age-entry = { $name } { $at }, { $what ->
    [made] se hizo
    [bought] se compró
    [came] llegó
    [frozen] se congeló
   *[opened] se abrió
  } { ON($date) }
age-entry-unknown = { $name } { $at }, sin fecha
ages = { CAP($count) }, de lo más viejo a lo más nuevo: { $entries }.
item-date = { CAP($name) }: { $what ->
    [made] se hizo { ON($date) }
    [bought] se compró { ON($date) }
    [came] llegó { ON($date) }
    [opened] se abrió { ON($date) }
    [frozen] se congeló { ON($date) }
    [thawed] se descongeló { ON($date) }
    [useBy] se debe usar a más tardar { $date }
   *[bestBefore] consumo preferente: { $date }
  }.
added-on = { CAP($name) }: quedó registrado { ON($date) }.
no-printed-date = No hay fecha impresa registrada.
date-not-recorded = No está registrado cuándo se { $what ->
    [made] hizo
    [bought] compró
    [opened] abrió
    [frozen] congeló
   *[other] descongeló
  }.
in-no-table = { CAP($name) } no está en ninguna tabla mía.
keeps-generic = { $listed ->
    [no] No tengo { OURS($food) } en ninguna tabla. Las sobras en general
   *[yes] { CAP(OURS($food)) }
  }{ $where ->
    [freezer] , en el congelador
    [pantry] , en la despensa
    [counter] , a temperatura ambiente
   *[fridge] , en el refrigerador
  }: { $span }{ $kind ->
    [quality] {" "}para la mejor calidad
   *[keeping] {""}
  }, según la guía.
    .short = { $listed ->
        [no] No tengo { OURS($food) } en ninguna tabla. Las sobras: { $span }.
       *[yes] { CAP($span) }.
      }
# Nadie dijo dónde: cada lugar tiene su plazo.
keeps-each = { $listed ->
    [no] No tengo { OURS($food) } en ninguna tabla. Las sobras en general
   *[yes] { CAP(OURS($food)) }
  }, según la guía: { $spans }.
    .short = { CAP($spans) }.
keeps-at = { $span } { $where ->
    [freezer] en el congelador
    [pantry] en la despensa
    [counter] fuera del frío
   *[fridge] en el refrigerador
  }{ $where ->
    [freezer] {""}
   *[other] { $kind ->
        [quality] , por calidad
       *[keeping] {""}
      }
  }
keeps-sealed = Sin abrir, hay que seguir su etiqueta.
food-stored-at = { OURS($food) } { $places }
stored-at = { $where ->
    [freezer] en el congelador
    [pantry] en la despensa
    [counter] fuera del frío
   *[fridge] en el refrigerador
  }
kept-at = { $where ->
    [freezer] congelado todo ese tiempo
    [pantry] en la despensa
    [counter] fuera del frío
   *[fridge] en el refrigerador
  }
taken-as-raw = Eso es para el alimento crudo.
    .short = Crudo.
yours = De lo tuyo, { $items }.
verdict-entry = { $name }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }: { $verdict ->
    [fine] dentro de la guía{ $last ->
        [none] {""}
       *[other] {" "}hasta { $last }
      }
    [use-soon] { $last ->
        [none] se debe usar pronto
       *[other] se debe usar a más tardar { $last }
      }
    [last-day] hoy es el último día
    [throw-out] pasó el plazo de la guía, hay que tirarlo
    [past-best-quality] ya pasó su mejor momento de sabor
    [cook-thoroughly] usar pronto, bien cocido
    [refrigerate-now] al refrigerador ahora
    [no-figure] la guía no da plazo, hay que seguir la etiqueta
   *[other] sin fecha; ante la duda, hay que tirarlo
  }
use-first = Hay { UNA($count) } para usar primero{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
    .short = { CAP(UNA($count)) }.
use-past = { $count ->
    [one] Pasó el plazo de la guía, hay que tirarlo: { $items }.
   *[other] Pasaron el plazo de la guía { UNA($count) } cosas, hay que tirarlas: { $items }.
  }
    .short = Para tirar, { UNA($count) }: { $items }.
use-more = { $past ->
    [none] {""}
   *[other] { CAP(UNA($past)) } más fuera de lo que da la guía
  }{ $soon ->
    [none] {""}
   *[other] { $past ->
        [none] { CAP(UNA($soon)) } más que usar primero
       *[other] {" "}y { UNA($soon) } más que usar primero
      }
  }. ¿Sigo?
    .short = ¿Más?
use-past-rest = Pasaron el plazo de la guía, hay que tirarlas: { $items }.
use-entry = { $name }{ $at ->
    [none] {""}
   *[other] , { $at }
  }: { $verdict ->
    [throw-out] pasó el plazo de la guía, hay que tirarlo
    [last-day] hoy es el último día
    [refrigerate-now] al refrigerador ahora
    [cook-thoroughly] pronto, bien cocido
    [use-soon] { $last ->
        [none] pronto
       *[other] { BY($last) }
      }
   *[other] { $last ->
        [none] sin fecha
       *[other] { BY($last) }
      }
  }
    .short = { $name }, { $verdict ->
    [throw-out] para tirar
    [last-day] hoy
   *[other] { $last ->
        [none] pronto
       *[other] { BY($last) }
      }
  }
counted-from = Se cuenta desde { $date }, cuando { $what ->
    [made] se hizo
    [bought] se compró
    [came] llegó
    [thawed] se descongeló
    [frozen] se congeló
   *[opened] se abrió
  }.
counted-by-told = Cuenta lo que me dijiste.
label-outlived = Su etiqueta dice { $printed }, pero vale lo más estricto.
    .short = Vale lo más estricto, no la etiqueta.
because-of = { $name }: { $reason }
nothing-due = { $window ->
    [none] No hay nada que usar pronto
   *[yes] No hay nada más que usar en ese plazo
  }{ $at ->
    [none] {""}
   *[other] {" "}{ $at }
  }.
next-due = Lo siguiente es { $entry }.
older = { $count ->
    [one] Hay una cosa
   *[other] Hay { UNA($count) } cosas
  } de antes de { $date }: { $entries }.
none-older = No hay nada de antes de { $date }.
all-dated = Todo tiene fecha.
undated = { $count ->
    [one] Una cosa no tiene fecha: { $items }.
   *[other] { CAP(UNA($count)) } cosas no tienen fecha: { $items }.
  }
oldest-is = Lo más antiguo es { $entry }.

freezes-for = Sí. Congelado, { OURS($food) }: { $span }, por calidad, según la guía.
    .short = Sí, { $span }.
freezes-no-figure = La guía no da plazo para congelar { OURS($food) }. Bien congelado se conserva; los plazos son solo de sabor.

not-opened = No está registrado que se abriera { THE($name) }.
done-then = { CAP($count) }: { $entries }.
none-done-then = De lo que hay, nada se { $deed ->
    [frozen] congeló
    [made] hizo
    [bought] compró
    [opened] abrió
   *[added] guardó
  } entonces.
ask-may-freeze = ¿Congelar qué?
is-frozen = { CAP(THE($name)) } ya { esta-o } en congelación.
freeze-rather-not = Mejor no: la tabla dice que { OURS($name) } no se congela.
freeze-too-late = No congeles { THE($name) }.
