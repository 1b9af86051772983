# La página de quien enseña.
# Nobody who grew up speaking Spanish has reviewed these words yet.

teach-title = Lecciones
teach-by-talking = Para practicar, di o escribe “lesson one” en el tablero: por ahora las lecciones se dan en inglés. Cada una transcurre en una cocina propia, y nada de ella llega al registro de esta.
teach-for-helpers = Cómo fueron las lecciones se muestra a quien enseña, en un dispositivo que pueda ayudar. Una persona propietaria puede permitírselo a este en la página Casa.
teach-went = Cómo fue
teach-not-asked = No se muestra nada hasta que quien practica lo diga en voz alta: por ahora, en inglés.
teach-not-shared = Se dijo en voz alta que nadie lo vea. Solo un sí en voz alta lo cambia.
teach-none-held = En los últimos siete días no hubo ninguna lección.
teach-take-back = Se muestra porque se permitió en voz alta, y se puede retirar en cualquier momento. Se guarda siete días.
teach-held = { $name }, { $day }
teach-counts = { $count ->
    [one] Una tarea
   *[other] { $count } tareas
  }: { $alone } sin ayuda, { $hinted } con una pista.
teach-alone = Hecha sin ayuda.
teach-hint = Hecha con una pista.
teach-passed = Pasada por alto.
teach-open = Sin empezar.
teach-file = Guardarlo como tabla (CSV)
teach-ready = { $name } está listo.
teach-look-again = Mirar otra vez
teach-lessons = Lo que se puede practicar
teach-no-lessons = Todavía no hay lecciones en este idioma.
teach-how = Cada una tiene lugar en una cocina propia con doce cosas; nada llega al registro de esta cocina.
teach-guidance = La práctica con cuchillos, calor, vapor y alimentos sigue las pautas profesionales locales; estas lecciones solo enseñan a llevar el registro y a preguntarle.
teach-lesson = Lección { $number }: { $name }
teach-hints = Pistas
