# Temporizadores y recordatorios: lo que se dice cuando suenan, y al ponerlos.

timer-due = { $late ->
    [none] { $label ->
        [none] Terminó tu temporizador.
       *[other] Terminó el temporizador: { $label }.
      }
   *[other] { $label ->
        [none] Tu temporizador terminó { $late }.
       *[other] El temporizador terminó { $late }: { $label }.
      }
  }
    .short = { $late ->
    [none] { $label ->
        [none] Terminó el temporizador.
       *[other] { CAP($label) }: terminó.
      }
   *[other] { $label ->
        [none] El temporizador terminó { $late }.
       *[other] { CAP($label) }: terminó { $late }.
      }
  }
reminder-due = { $late ->
    [none] { $label ->
        [none] Este es el recordatorio que pediste.
       *[other] Recordatorio: { $label }.
      }
   *[other] { $label ->
        [none] Un recordatorio con retraso. Era { $late }.
       *[other] Un recordatorio con retraso, de { $late }: { $label }.
      }
  }
reminder-where = { CAP(THE($item)) } { is-at } { $at }.
    .short = {""}

# Poner, cambiar y preguntar.
ask-how-long = { $label ->
    [none] ¿Cuánto tiempo?
   *[other] ¿Cuánto tiempo para { $label }?
  }
ask-how-long-again = Di cuánto tiempo, como diez minutos.
ask-by-how-much = ¿Cuánto?
timer-set = { $label ->
    [none] Temporizador, { $time }.
   *[other] { CAP($label) }: temporizador, { $time }.
  }
confirm-timer = ¿Un temporizador de { $time }? Sí o no.
no-such-timer = No hay { $kind ->
    [timer] ningún temporizador
   *[other] ningún recordatorio
  } de { $label }.
no-timers = { $kind ->
    [timer] No hay temporizadores en marcha.
   *[other] No hay recordatorios.
  }
timer-with = { $label ->
    [none] uno al que le faltan { $left }
   *[other] { $label }, faltan { $left }
  }
which-timer = ¿Cuál: { $choices }?
timer-now = { $label ->
    [none] Ahora { $left }.
   *[other] { CAP($label) }: ahora { $left }.
  }
timer-longer = { $label ->
    [none] { CAP($time) } más.
   *[other] { CAP($label) }: { $time } más.
  }
timer-left = { CAP($left) } para terminar{ $label ->
    [none] {""}
   *[other] : { $label }
  }.
timers-running = { CAP(UN($count)) } temporizadores: { $timers }.
timer-cancelled = { $label ->
    [none] { $kind ->
        [timer] Cancelé el temporizador.
       *[other] Cancelé el recordatorio.
      }
   *[other] { CAP($label) }: cancelado.
  }
nothing-cancelled = No cancelo nada.
confirm-cancel-timer = ¿Cancelo el { $kind ->
    [timer] temporizador
   *[other] recordatorio
  }{ $label ->
    [none] {""}
   *[other] {" "}de { $label }
  }? Sí o no.
ask-remind-what = ¿Qué te recuerdo?
ask-remind-when = ¿Cuándo te lo recuerdo: { $label }?
reminder-set = Te lo recuerdo { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }a { $time }: { $label }.
confirm-reminder = ¿Te lo recuerdo { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }a { $time }: { $label }? Sí o no.
reminder-words = { $label }, { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }a { $time }
reminders-open = { $count ->
    [one] Uno: { $reminders }.
   *[other] { CAP($count) }: { $reminders }.
  }
timer-held = { $label ->
    [none] En pausa, quedan { $left }.
   *[other] { CAP($label) }, en pausa, quedan { $left }.
  }
timer-held-with = { $label ->
    [none] uno en pausa, quedan { $left }
   *[other] { $label }, en pausa, quedan { $left }
  }
timer-resumed = { $label ->
    [none] Sigue, quedan { $left }.
   *[other] { CAP($label) }, sigue, quedan { $left }.
  }
reminder-set-for = Se lo recordaré a { $name } { $date ->
    [none] {""}
   *[other] { ON($date) }{" "}
  }a { $time }: { $label }.
no-date-to-remind = No hay fecha apuntada para { $name }.
timer-rings = { $label ->
    [none] A { $time }.
   *[other] { CAP($label) }: a { $time }.
  }
none-due-then = No hay ningún recordatorio para entonces.
