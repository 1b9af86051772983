# Las cuentas de la página: títulos, barras y la única frase que dice lo que muestra cada una.
# Nobody who grew up speaking Spanish has reviewed these phrases yet.

plot-group = { $group }
plot-items = comidas
plot-used = se acabó
plot-thrown-out = se tiró
plot-given-away = se regaló

plot-ages-title = Cuánto tiempo tienen las cosas
plot-age-group = { $from ->
    [0] hasta { $to ->
        [one] un día
       *[other] { UN($to) } días
    }
   *[other] de { UN($from) } a { UN($to) } días
}
plot-age-over = más de { $days }
plot-age-unknown = sin fecha conocida
plot-ages-sentence = { $count ->
    [0] No hay nada en la cocina.
    [one] Una comida, { $fresh ->
        [0] de hace más de una semana
       *[other] de los últimos siete días
      }.
   *[other] De { UNA($count) } comidas, { $fresh ->
        [0] ninguna es
        [one] una es
       *[other] { UNA($fresh) } son
      } de los últimos siete días, y { $unknown ->
        [0] todas tienen fecha
        [one] una no tiene fecha
       *[other] { UNA($unknown) } no tienen fecha
      }.
  }

plot-calendar-title = Cuándo llega el último día
plot-calendar-past = ya pasó su fecha
plot-calendar-sentence = { $past ->
    [0] Nada pasó de su último día
    [one] Una comida pasó de su último día
   *[other] { UNA($past) } comidas pasaron de su último día
  }, { $today ->
    [0] ninguna llega hoy
    [one] una llega hoy
   *[other] { UNA($today) } llegan hoy
  }, y { $week ->
    [0] ninguna
    [one] una
   *[other] { UNA($week) }
  } en los próximos siete días.

plot-use-title = Qué fue de las cosas, mes por mes
plot-use-sentence = Este mes { $used ->
    [0] no se acabó nada
    [one] se acabó una comida
   *[other] se acabaron { UNA($used) } comidas
  }, { $thrown ->
    [0] no se tiró ninguna
    [one] se tiró una
   *[other] se tiraron { UNA($thrown) }
  } y { $given ->
    [0] no se regaló ninguna
    [one] se regaló una
   *[other] se regalaron { UNA($given) }
  }. El mes pasado { $thrownBefore ->
    [0] no se tiró ninguna
    [one] se tiró una
   *[other] se tiraron { UNA($thrownBefore) }
  }.
