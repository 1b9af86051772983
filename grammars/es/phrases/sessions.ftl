# Lo que dura varias vueltas: guardar la compra, recorrer un lugar, revisar, poner en marcha, practicar.

shop-start = Dime cada comida y dónde va. Al final di: es todo.
    .short = Di comida y lugar.
survey-start = Di dónde estás y luego lo que tocas, una cosa tras otra. Al final di: es todo.
    .short = El lugar, y luego la comida.
survey-where = ¿Por qué lugar empezamos?
survey-here = Entonces, { THE($place) }.
    .short = { CAP($place) }.
survey-recap = { $count ->
    [one] Una cosa registrada.
   *[other] { CAP(UNA($count)) } cosas registradas.
  }
survey-undated = { $all ->
    [yes] No se sabe ninguna fecha.
   *[no] { CAP($count) } sin fecha.
  } Dime las que encuentres; lo demás queda sin saber.
    .full = { $all ->
    [yes] No se sabe ninguna fecha.
   *[no] { CAP($count) } sin fecha.
  } Dime las que encuentres, por ejemplo: { THE($name) } caduca el viernes. Lo demás queda sin saber.
shop-going-on = Sigue, ¿qué más?
shop-nothing = No se guardó nada.
is-there-already = Sí, { $at }.
shop-recap = { $count ->
    [one] Una cosa guardada.
   *[other] { CAP(UNA($count)) } cosas guardadas.
  }
recap-more = { $left ->
    [one] Un lugar más.
   *[other] { CAP(UN($left)) } lugares más.
  } ¿Sigo?
recap-place = { $items } { $at }
recap-fix = {""}
    .full = Dime si algo está mal.
shop-next-there = { CAP($name) }: ¿{ $at }, como siempre?
    .short = { CAP($name) }, ¿{ $at }?
shop-next = ¿Dónde { goes } { THE($name) }?
    .short = { CAP($name) }: ¿dónde?
shop-anything-else = ¿Algo más? Si no, di: es todo.
    .short = ¿Algo más?
shop-left = Sin guardar: { $items }.
ask-count-where = ¿Qué lugar revisamos?
count-place-empty = En { THE($place) } no hay nada registrado, así que no hay qué revisar.
count-instead = ¿Reviso mejor { THE($place) }?
count-start = { CAP(THE($place)) }: { $count ->
    [one] una cosa
   *[other] { UNA($count) } cosas
  } en el registro. Di sí, no o cambió.
count-resume = De vuelta en { THE($place) }, { $left ->
    [one] falta una cosa
   *[other] faltan { UNA($left) } cosas
  }.
count-ask = { CAP($item) }{ $at ->
    [none] {""}
   *[other] , { $at }
  }{ $feel ->
    [none] {""}
   *[other] , { $feel }
  }: ¿sigue ahí?
    .short = ¿{ CAP($item) }?
count-paused = Recuerdo dónde íbamos. Di sigue cuando quieras, hoy u otro día.
count-over = Terminó la revisión.
count-no-answer = No apunté nada. Di para si ya no quieres seguir.
count-stopped = Dejo la revisión.
count-stopped-gone = Apunté que ya no está: { $items }.
count-stopped-changed = Cambió: { $items }.
count-stopped-rest = { $none ->
    [yes] No cambió nada.
   *[no] Lo demás queda como estaba.
  }
count-tally = { CAP(THE($place)) }, revisión hecha: { $counts }.
count-tally-none = { CAP(THE($place)) }, revisión hecha.
count-there = { $count } ahí
count-gone = { $count } ya no
count-changed = { $count } con cambios
count-other = Entonces eso era { THE($name) }.
count-back-gone = { CAP($name) }: otra vez en el registro.
count-revised = { $seen ->
    [gone] { CAP($name) }: ya no está.
   *[there] { CAP($name) }: ahí está.
  }
count-not-among = En { THE($place) } no hay { $name } en el registro.
count-unsure = { CAP($count) } sin seguridad.
count-not-looked = { CAP($count) } sin mirar.
count-more-than = En el registro solo tengo { $count }. Guarda después los demás como nuevos. ¿Cuántos de los míos hay?
count-how-many = Di cuánto queda en total de { THE($name) }.
count-noted = { CAP($there) } ahí, { $gone } ya no.
count-elsewhere = Ahora { $at }.
count-passed-over = Ese lo dejo.
count-told = { $seen ->
    [there] { CAP($items) }: ahí está.
    [gone] { CAP($items) }: se acabó.
   *[unsure] { CAP($items) }: sin seguridad, queda en el registro.
  }
count-missing = { CAP($items) }: no aparece. { $count ->
    [one] ¿Se acabó?
   *[other] ¿Se acabaron?
  } Sí o no.
count-moved = { CAP($name) }, ahora { $at }.
count-noted-of = { CAP($name) }: { $there } ahí, { $gone } ya no.
count-only-so-many = { CAP($name) }: en el registro solo tengo { $count }. Guarda después los demás como nuevos.
count-recorded-at = { CAP($name) } está en el registro { $at }.
count-move-here = ¿{ CAP(THE($name)) } { esta-o } ahora en { THE($place) }? Sí o no.
count-add-here = En { THE($place) } no tengo { $name } en el registro. ¿Lo apunto ahí? Sí o no.
count-to-go = Falta revisar { $count }{ $left ->
    [0] :
   *[other] , entre otras cosas
  } { $items }.
noted-gone = Ya no está.
noted-changed = Cambió. Dime después cómo.
setup-start = { $count ->
    [one] Una pregunta corta.
   *[other] { CAP(UNA($count)) } preguntas cortas.
  } Di siguiente para pasar una, o espera para hacer una pausa.
setup-more-to-come = Hay más que ayuda, de una en una. Di siguiente para pasar una.
setup-again = Seguimos con la puesta en marcha.
setup-wholes = ¿Dónde guardas la comida: refrigerador, congelador, despensa?
setup-eaters = ¿Quién come aquí, y qué no debe comer cada quien?
setup-manner = ¿Cómo te hablo: corto o completo, más despacio o más rápido, más fuerte o más bajo?
setup-right = { CAP($told) }. ¿Está bien?
setup-kept = Guardado.
setup-tell-again = No guardé nada. Dímelo otra vez.
setup-which-nuts = { $name ->
    [none] Tú y las nueces
   *[other] { $name } y las nueces
  }: ¿nueces de árbol, cacahuates, o ambos?
setup-both-nuts = Entonces ambos, por precaución.
setup-what-not = { $name ->
    [none] ¿Qué es lo que no debes comer? No lo entendí.
   *[other] ¿Qué es lo que { $name } no debe comer? No lo entendí.
  }
setup-whose = ¿Quién no debe comer { OURS($allergens) }?
setup-say-who = Di un nombre, o di siguiente para dejarlo.
setup-whose-not-kept = Sin guardar, porque nadie dijo de quién es: { OURS($what) }.
setup-unclear-not-kept = { $name ->
    [none] Lo que no debes comer no quedó guardado.
   *[other] Lo que { $name } no debe comer no quedó guardado.
  }
setup-whose-else = ¿De quién es esto: { OURS($what) }?
eaters-noted = Anotado: { $told }.
eaters-known = Eso ya lo tengo: { $told }.
setup-your-name = ¿Y cómo te llamas?
setup-not-kept = Sin guardar: { $told }.
setup-first-over = Es todo por hoy. Dime una comida y dónde está. Di sigue con la puesta en marcha cuando quieras.
    .short = Es todo. Dime una comida y dónde está.
told-whole = { A($name) }
told-whole-with = { A($name) } con { $parts }
told-eater = { $name ->
    [none] tú
   *[other] { $name }
  }{ $allergens ->
    [none] {""}
   *[other] {" "}que no debe comer { OURS($allergens) }
  }{ $diets ->
    [none] {""}
   *[other] , { OURS($diets) }
  }{ $risk ->
    [none] {""}
    [pregnant] {""}, que está embarazada y tiene más riesgo
   *[other] , con más riesgo por la comida
  }
told-length = { $length ->
    [short] respuestas cortas
    [full] respuestas completas
   *[usual] respuestas como ahora
  }
told-rate = { $rate ->
    [slower] un poco más despacio
   *[faster] un poco más rápido
  }
told-volume = { $volume ->
    [louder] más fuerte
   *[quieter] más bajo
  }
told-whisper = en voz baja
setup-parts = ¿Cómo se dividen? Di, por ejemplo: el refrigerador tiene cuatro repisas y dos cajones.
setup-markers = ¿Qué marcas tienes? Di una por una, como una cuenta de madera o dos ligas.
setup-dots = ¿Algún número de nudos, relieves o puntos quiere decir algo? Di, por ejemplo: un nudo quiere decir que hay que comerlo pronto.
setup-watts = ¿De cuántos vatios es tu microondas?
setup-region = ¿De quién doy la guía de seguridad: Estados Unidos o Reino Unido?
setup-summary = ¿A qué hora te digo cada noche qué hay que usar?
setup-more = { $step ->
    [parts] ¿Más repisas, cajones o canastas? O di siguiente.
    [markers] ¿Otra marca? O di siguiente.
    [dots] ¿Otro significado? O di siguiente.
   *[other] ¿Algo más? O di siguiente.
  }
setup-no-question = Ninguna de las { UNA($count) } preguntas trata de eso.
offer-parts = ¿Anoto cómo se divide { THE($place) }? Así puedo decir qué repisa.
    .short = ¿Anoto cómo se divide { THE($place) }?
offer-markers = Hay varios que se sienten igual: { PLURAL(TOUCH($container)) }. ¿Les elegimos marcas?
    .short = { CAP(PLURAL(TOUCH($container))) }: ¿elegimos marcas?
setup-part-over = Bien.
setup-over = Esa fue la puesta en marcha. Di ayuda cuando no sepas qué decir.
setup-paused = Recuerdo dónde íbamos. Di sigue cuando quieras.
setup-left = Recuerdo dónde íbamos: { $left ->
    [one] falta una pregunta
   *[other] faltan { UNA($left) } preguntas
  }. Di sigue con la puesta en marcha para continuar.
setup-go-ahead = Adelante, dime.
confirm-practice = ¿Practicamos, sin cambiar nada de tu cocina? Sí o no.
practice-start = Esto es práctica: nada de lo que digas cambia tu cocina. Di deja de practicar para terminar.
practice-going-on = Ya estamos practicando.
practice-over = Terminó la práctica. Tu cocina está como estaba.
lesson-begins = Lección { $number }: { $name }. { $purpose }
    .short = Lección { $number }: { $name }.
lesson-apart = Es una cocina aparte; la tuya no se toca.
lesson-caution = { $caution }
lesson-task = Tu tarea: { $task }
    .short = { $task }
lesson-hint = { $hint }
lesson-well = { $how ->
    [alone] { $tries ->
        [1] Hecho, a la primera.
       *[other] Hecho.
      }
   *[hint] Hecho, con una pista.
  }
lesson-over = Esa era la última tarea.
lesson-report = { CAP($name) }: { $count ->
    [one] una tarea
   *[other] { UNA($count) } tareas
  }, { $alone ->
    [0] ninguna
   *[other] { UNA($alone) }
  } sin ayuda{ $hinted ->
    [0] {""}
   *[other] , { UNA($hinted) } con pista
  }.
lesson-after = Di siguiente lección, otra vez esa lección, o deja la lección.
confirm-sharing = ¿Puede quien te enseña saber, tarea por tarea, cómo te fue en las lecciones? De tu cocina, nada. Sí o no.
sharing-on = Quien te enseña puede saber cómo te fue en las lecciones. Di deja de compartir mis lecciones cuando quieras.
sharing-off = Nadie más sabe cómo te fue en las lecciones.
sharing-is = { $may ->
    [yes] Sí: quien te enseña puede saber cómo te fue en las lecciones. Para terminar, di deja de compartir mis lecciones.
   *[no] No, nadie más sabe cómo te fue en las lecciones.
  }
lesson-left = Terminó la lección. Estamos otra vez en tu cocina.
lessons-are = { CAP(UNA($count)) } lecciones: { $lessons }. Di lección uno, o la que quieras.
no-lessons = En español todavía no hay lecciones.
no-such-lesson = Hay { UNA($count) } lecciones.
no-lesson-now = No hay ninguna lección en curso. Di empieza una lección.
no-lesson-yet = Todavía no hubo ninguna lección. Di empieza una lección.
