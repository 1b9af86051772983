# El calendario de la casa: se lee, no se dice.

calendar-last-day = { CAP($item) }: último día según la guía.
calendar-where = { CAP($at) }.
calendar-source = Fuente: { $source }.
calendar-in-doubt = Ante la duda, a la basura.
calendar-name = { $household }, últimos días y recordatorios.

# La página de una tableta en la pared.
wall-days = Último día según la guía
wall-no-days = Nada llega a su último día en los próximos tres días.
wall-day = { CAP($item) }: { $past ->
    [none] { $day }
   *[past] { $day }, pasó el plazo de la guía
  }.
wall-list = Para comprar
wall-no-list = No hay nada en la lista.
list-line = { $name }{ $amount ->
    [none] {""}
   *[other] , { $amount }
  }{ $note ->
    [none] {""}
   *[other] , { $note }
  }{ $shop ->
    [none] {""}
   *[other] , de { $shop }
  }{ $person ->
    [none] {""}
   *[other] , para { $person }
  }
wall-reminders = Temporizadores y recordatorios
wall-no-reminders = No corre ninguno.
wall-reminder = { $label ->
    [none] { $kind ->
        [timer] Un temporizador
       *[reminder] Un recordatorio
      }
   *[other] { CAP($label) }
  }, { $day ->
    [none] { AT($time) }
   *[other] { ON($day) } { AT($time) }
  }.
wall-in-doubt = Los días son los de la guía publicada. Ante la duda, a la basura.
wall-as-of = Visto { AT($time) }.
