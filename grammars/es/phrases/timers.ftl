# Lo que se dice sin que nadie pregunte, cuando suena un temporizador o un recordatorio.

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
