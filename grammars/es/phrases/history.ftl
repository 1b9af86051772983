# Deshacer y rehacer.

undone = Deshecho: { $verb ->
    [put-away] { $about ->
        [none] salió del registro
       *[other] { $about } { undone-out }
      }
    [finished] { $about } { undone-back }
    [threw-out] { $about } { undone-back }
    [gave-away] { $about } { undone-back }
    [put-on-the-list] { $about } { undone-unlisted }
    [took-off-the-list] { $about } { undone-listed }
    [bought] { $about } { undone-listed }
   *[other] { $about ->
        [none] todo está como antes
       *[other] { $about } { undone-as-before }
      }
  }.
    .short = Deshecho.
undone-out = { MANY($about) ->
    [many] salieron del registro
   *[one] salió del registro
  }
undone-back = { MANY($about) ->
    [many] están otra vez en el registro
   *[one] está otra vez en el registro
  }
undone-unlisted = { MANY($about) ->
    [many] salieron de la lista
   *[one] salió de la lista
  }
undone-listed = { MANY($about) ->
    [many] están otra vez en la lista
   *[one] está otra vez en la lista
  }
undone-as-before = { MANY($about) ->
    [many] están como antes
   *[one] está como antes
  }
nothing-to-undo = No hay nada tuyo que deshacer.
undo-blocked = No lo puedo deshacer: { $about ->
    [none] algo
   *[other] { $about }
  } cambió después{ $who ->
    [none] {""}
   *[other] , por { $who }
  }.
nothing-to-redo = No hay nada que rehacer.
redone = Hecho otra vez{ $about ->
    [none] {""}
   *[other] : { $about }
  }.
