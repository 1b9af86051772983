# Listas: primero cuántas cosas, luego de tres o cuatro en cuatro.

list-group = { $items }
list-more = { $left ->
    [one] Una cosa más.
   *[other] { CAP(UNA($left)) } más.
  } ¿Sigo?
    .short = { $left ->
        [one] ¿Una más?
       *[other] ¿{ UNA($left) } más?
      }
list-done = Eso es todo.
    .short = Es todo.
