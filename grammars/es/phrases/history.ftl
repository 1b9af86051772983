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
nothing-taken-off = No salió nada del registro ahora, así que no deshago nada.
nothing-to-undo-of = Con { $name } no se hizo nada ahora, así que no deshago nada.
brought-back = Deshecho: { $about }, de vuelta { $at ->
    [none] en el registro
   *[other] { $at }
  }, como antes.
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

did-thing = { $about ->
    [none] algo
   *[other] { $about }
  }
did-by = { $who ->
    [you] , por ti
    [somebody] {""}
   *[other] , por { $who }
  }
did = { $verb ->
    [put-away] se guardó { did-thing }
    [took] se tomó de { did-thing }
    [finished] se acabó { did-thing }
    [threw-out] se tiró { did-thing }
    [gave-away] se regaló { did-thing }
    [moved] se cambió de lugar { did-thing }
    [marked] se puso una marca a { did-thing }
    [unmarked] se quitó la marca a { did-thing }
    [amended] se añadieron datos de { did-thing }
    [opened] se abrió { did-thing }
    [froze] se congeló { did-thing }
    [thawed] se puso a descongelar { did-thing }
    [took-out] se sacó { did-thing }
    [reheated] se recalentó { did-thing }
    [split] se repartió { did-thing }
    [merged] se juntó { did-thing }
    [built-a-place] se añadieron lugares a { did-thing }
    [renamed-a-place] se cambió { did-thing }
    [gave-dots-a-meaning] se dio el significado { did-thing }
    [put-on-the-list] se puso en la lista { did-thing }
    [took-off-the-list] se quitó de la lista { did-thing }
    [bought] se compró { did-thing }
    [noted] se dejó un recado{ $about ->
        [none] {""}
       *[other] {" "}para { $about }
      }
    [checked] se revisó { did-thing }
    [told-of-a-power-cut] se avisó de un corte de luz
    [added-a-marker] se añadió una marca
    [removed-a-place] se quitó el lugar { did-thing }
    [imported] se importó { did-thing }
   *[other] se cambió { did-thing }
  }{ did-by }, { $when }
entry = { $entry }.
entries = { CAP(UN($count)) } cambios: { $entries }.
nothing-done = No hay nada así registrado.
maker-is = { CAP($maker) }.
nobody-did = { $did ->
    [made] Nadie registró quién hizo { THE($name) }.
    [put-away] Nadie registró quién guardó { THE($name) }.
    [opened] Nadie registró quién abrió { THE($name) }.
    [bought] Nadie registró quién compró { THE($name) }.
   *[any] No hay nada registrado de { THE($name) }.
  }
nothing-of-yours = Todavía no has cambiado nada.
listed-by = { $who ->
    [you] Pusiste { $name } en la lista { $when }.
   *[other] { CAP($who) } puso { $name } en la lista { $when }.
  }
nobody-listed = Nadie registró quién puso { $name } en la lista.
checked-last = { CAP($when) } se revisó { THE($at) }{ $who ->
    [none] {""}
    [you] {" "}(fuiste tú)
   *[other] {" "}({ $who })
  }.
    .short = { CAP($when) }.
checked-never = No hay ninguna revisión de { THE($at) }.
nothing-changed = No ha cambiado nada.
gone-entry = { $name }, { $when }
gone-list = { $how ->
    [thrown-out] Se tiró
   *[used] Se acabó
  }: { $items }.
nothing-gone-then = Nada en ese tiempo.
nothing-gone = { $how ->
    [thrown-out] Que yo sepa, no se tiró nada.
   *[used] Que yo sepa, no se acabó nada.
  }
