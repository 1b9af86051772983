# La página de cuentas.
# Nobody who grew up speaking Spanish has reviewed these words yet.

charts-title = Cuentas
charts-nothing = Todavía no hay nada que contar. Guarda algo en el tablero.
thrown-heading = Lo que se tiró
thrown-nothing = En los últimos dos meses no se tiró nada, según lo registrado.
thrown-kept = { $days ->
    [one] guardado un día
   *[other] guardado { $days } días
  }
thrown-opened = { $days ->
    [one] abierto un día
   *[other] abierto { $days } días
  }
thrown-thawed = { $days ->
    [one] descongelado un día
   *[other] descongelado { $days } días
  }
thrown-age-unknown = no se sabe cuánto tiempo tenía
