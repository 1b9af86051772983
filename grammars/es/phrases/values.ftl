# Cómo se dicen los días, las horas, los plazos y las listas. Todo se escribe como se habla: con palabras, sin cifras.
#
# CÓMO ESCRIBIR FRASES: véase grammars/en/phrases/values.ftl; vale lo mismo aquí. Lo propio del español:
# - THE($x) pone el, la, los o las; A($x) un o una; «de el» y «a el» se vuelven «del» y «al» solos.
# - MANY($x) da "many" o "one"; GENDER($x) da "m" o "f": para elegir están/está, tíralo/tírala.
# - UN($n), UNA($n): un número ante un nombre masculino o femenino («veintiún», «veintiuna»).
# - COUNTED($n, "hora", "horas", "f"): «una hora», «dos horas y media».
# - TOUCH($x): lo que se toca, de las palabras del registro («large glass jar») a «frasco grande de vidrio».
# - OURS($x): una palabra de nuestras tablas (alérgenos, alimentos, lados) en español, de words.ftl.
# - Los nombres que puso la casa se dicen como están.
# - Nunca se dice que algo no hace daño: se dice lo que indica la guía y, ante la duda, que se tire.
# Nobody who grew up speaking Spanish has reviewed these phrases yet.

date-today = hoy
date-yesterday = ayer
date-tomorrow = mañana
date-week-ago = hace una semana
    .by = hace una semana
date-week-ahead = de hoy en ocho días
date-last-weekday = el { $weekday } pasado
date-coming-weekday = el { $weekday }
date-day-month = el { $ordinal } de { $month }
date-day-month-year = el { $ordinal } de { $month } de { $year }
date-this-month = este mes
    .by = el fin de este mes
date-month = { $month }
    .on = en { $month }
    .by = fines de { $month }
date-month-year = { $month } de { $year }
    .on = en { $month } de { $year }
    .by = fines de { $month } de { $year }

date-by = a más tardar { $date }
time-at = a { $time }

days-none = menos de un día
days-one-day = un día
days-day = { UN($number) } días
days-one-week = una semana
days-week = { UNA($number) } semanas
about-one-week = como una semana
about-week = como { UNA($number) } semanas
about-one-month = como un mes
about-month = como { UN($number) } meses
about-one-year = como un año
about-year-and-half = como un año y medio
about-year = como { COUNTED($number, "año", "años", "m") }

time-noon = el mediodía
time-midnight = la medianoche
time-hour = { time-the-hour } { part-of-day }
    .short = { time-the-hour } { part-of-day }
time-hour-minute = { time-the-hour } y { $minute } { part-of-day }
    .short = { time-the-hour } y { $minute }
time-the-hour = { $hour ->
    [uno] la una
   *[other] las { $hour }
  }
part-of-day = { $part ->
    [morning] { $hour ->
        [doce] de la noche
       *[other] de la mañana
      }
    [afternoon] de la tarde
    [evening] { $hour ->
        [siete] de la noche
        [ocho] de la noche
       *[other] de la tarde
      }
   *[night] de la noche
  }

span-one-second = un segundo
span-seconds = { COUNTED($number, "segundo", "segundos", "m") }
span-one-minute = un minuto
span-minutes = { COUNTED($number, "minuto", "minutos", "m") }
span-minute-and-half = un minuto y medio
span-one-hour = una hora
span-hours = { COUNTED($number, "hora", "horas", "f") }
span-hour-and-half = una hora y media
span-one-day = un día
span-days = { COUNTED($number, "día", "días", "m") }
span-and = { $first } y { $second }

span-of = { $unit ->
    [hours] { span-low-f } { $count ->
        [one] hora
       *[other] horas
      }
    [weeks] { span-low-f } { $count ->
        [one] semana
       *[other] semanas
      }
    [months] { span-low-m } { $count ->
        [one] mes
       *[other] meses
      }
    [years] { span-low-m } { $count ->
        [one] año
       *[other] años
      }
   *[days] { span-low-m } { $count ->
        [one] día
       *[other] días
      }
  }
span-low-m = { $high ->
    [none] { UN($low) }
   *[other] { $low } a { UN($high) }
  }
span-low-f = { $high ->
    [none] { UNA($low) }
   *[other] { UNA($low) } a { UNA($high) }
  }

ago-now = hace un momento
ago-span = hace { $span }
ago-ahead = dentro de { $span }
ago-today = { $part ->
    [morning] esta mañana
    [afternoon] esta tarde
    [evening] esta tarde
   *[night] esta noche
  }
ago-yesterday = { $part ->
    [morning] ayer por la mañana
    [afternoon] ayer por la tarde
    [evening] ayer por la tarde
   *[night] anoche
  }

temperature = { UN($degrees) } { $count ->
    [one] grado
   *[other] grados
  } { $scale ->
    [celsius] centígrados
   *[fahrenheit] Fahrenheit
  }

times-one = una vez
times-two = dos veces
times-many = { UNA($number) } veces

# Dos nombres que ya llevan «y»: «arroz y frijoles, y papas y zanahorias».
list-pair-and = { $first }, y { $second }
list-pair-or = { $first }, o { $second }
list-empty = nada

# Cuando hay respuesta pero no palabras para ella en español: así se dice, y nunca a medias en inglés.
phrase-missing = Esa respuesta todavía no la sé decir en español, solo en inglés.

verbatim = { $text }

nouns-plural = {""}

# El verbo, según el nombre sea uno o varios.
contiene-o = { MANY($name) ->
    [many] contienen
   *[one] contiene
  }
lleva-o = { MANY($name) ->
    [many] llevan
   *[one] lleva
  }
es-o = { MANY($name) ->
    [many] son
   *[one] es
  }
esta-o = { MANY($name) ->
    [many] están
   *[one] está
  }
suele-o = { MANY($name) ->
    [many] suelen
   *[one] suele
  }
va-o = { MANY($name) ->
    [many] van
   *[one] va
  }
tiene-o = { MANY($name) ->
    [many] tienen
   *[one] tiene
  }
