# Hablar en el tablero: la respuesta, el botón, lo que se guarda, cómo se leen las respuestas.
# Nobody who grew up speaking Spanish has reviewed these words yet.

talk-last-answer = Última respuesta
talk-you = Tú:
talk-hearing = Oigo:
talk-kitchen = Cocina:
talk-page = Esta página:
talk-answer = Respuesta
talk-nothing-said = Pregunta, o di lo que hiciste.
talk-can-say = Puedes decir
talk-about-answer = Sobre la respuesta
talk-again = Otra vez
talk-slower = Más lento
talk-stop = Alto
talk-next-step = Paso siguiente
talk-repeat-step = Repetir el paso
talk-step-back = Paso anterior

# Lo que un botón dice por su persona, como lo oye la gramática de este idioma.
say-next = siguiente
say-repeat = repite
say-back = atrás
say-yes = sí
say-no = no
say-undo = deshacer
say-slower = más despacio
say-faster = más rápido
say-shorter = más corto
say-longer = más largo
say-what-is-this = qué es esto

talk-connecting = Conectando con la cocina.
talk-lost = No hay conexión con la cocina. Lo que digas o presiones ahora se guarda aquí, y se envía cuando vuelva.
talk-closed = Sin conexión.
talk-record-as-of = Este es el registro de las { $time }.
talk-kept = No hay conexión con la cocina. Esto se guarda aquí, y se envía cuando vuelva la conexión.
talk-not-taken = La cocina no pudo tomar eso. { $why }
talk-nothing-heard = (no se oyó nada)

talk-first-question = ¿Quién te lee las respuestas?
talk-own-voice = La voz de esta página
talk-screen-reader = Mi lector de pantalla
talk-read-by-page = La voz de esta página te leerá las respuestas. Se cambia en el tablero, en “Cómo se leen las respuestas”.
talk-read-by-screen-reader = Tu lector de pantalla te leerá las respuestas. Se cambia en el tablero, en “Cómo se leen las respuestas”.
talk-said-here = Lo que se dijo en esta página
talk-nothing-yet = Nada todavía.

talk-ear = Di algo
talk-type = O escríbelo
talk-send = Enviar
talk-cannot-listen = Este navegador no escucha: escribe, o dicta a tu teclado.
talk-button = Hablar
talk-opening = Un momento
talk-listening = Escucho. Presiona al terminar
talk-heard = Oído
talk-stop-ringing = Parar la alarma
talk-hint-both = Mantén el botón y habla, o presiónalo una vez para empezar y otra al terminar.
talk-hint-hold = Mantén el botón mientras hablas.
talk-hint-tap = Presiona el botón una vez para empezar y otra al terminar.

talk-mic-not-allowed = Esta página no puede usar el micrófono. Permítelo en el navegador, o escribe abajo: el teclado de un teléfono también toma dictado.
talk-no-microphone = No se encontró micrófono. Escribe abajo: el teclado de un teléfono también toma dictado.
talk-mic-failed = El micrófono no funcionó. Intenta otra vez, o escribe abajo.
talk-voice-failed = La voz de este navegador no funciona ahora. Las respuestas quedan para tu lector de pantalla, y están en la página.

talk-due = { $label }: ya es hora.
timer = Temporizador
reminder = Recordatorio
timers = Temporizadores y recordatorios
timer-left = { $label }: faltan { $left }
timer-held = { $label }: en pausa, faltan { $left }
timer-end = Terminarlo
timer-ended = { $label }: terminado.
left-hours = { $hours } h { $minutes } min
left-minutes = { $minutes } min { $seconds } s
left-seconds = { $seconds } s

kept-heading = Guardado aquí, sin enviar
kept-refused = La cocina no lo tomó: { $why }
kept-ask = Esto se dijo hace rato. ¿Lo envío de todos modos?
kept-send = Enviarlo
kept-try-again = Intentar otra vez
kept-forget = Olvidarlo
kept-sent = Enviado ahora: { $words }.
kept-edits-sent = { $count ->
    [one] Se envió un cambio de las tarjetas.
   *[other] Se enviaron { $count } cambios de las tarjetas.
  }
kept-not-taken = No se tomó: { $words } { $why }
kept-waits = { $count ->
    [one] Una cosa que dijiste hace rato te espera, en “Guardado aquí”.
   *[other] { $count } cosas que dijiste hace rato te esperan, en “Guardado aquí”.
  }
kept-taken-back = Retirado, y sin enviar: { $words }
kept-done = { $done } Guardado aquí; se envía cuando vuelva la conexión con la cocina.
kept-on-card = Sin enviar todavía: { $done }

reading-heading = Cómo se leen las respuestas
reading-who = Quién lee las respuestas
reading-page = Esta página
reading-no-voice = Este navegador no tiene voz. Tu lector de pantalla lee las respuestas.
reading-button = El botón Hablar
reading-both = Mantenerlo al hablar, o presionar una vez para empezar y otra al terminar
reading-tap = Solo presionar: una vez para empezar, otra al terminar
reading-hold = Solo mantener: presionar poco no hace nada
reading-yours = Esto es tuyo dondequiera que hables con esta cocina; pedirlo en voz alta hace lo mismo.
reading-slower = Respuestas más lentas
reading-faster = Respuestas más rápidas
reading-shorter = Respuestas más cortas
reading-longer = Respuestas más largas
reading-voice = Voz
reading-browser-choice = La que elija el navegador
reading-volume = Volumen: { $percent } por ciento
reading-percent = { $percent } por ciento

notice-heading = Cuando esta página está cerrada
notice-on = Que suene aquí de todos modos
notice-off = Que ya no suene aquí
notice-is-on = Los temporizadores, los recordatorios y el resumen de la noche llegan a este aparato como avisos, también con la página cerrada.
notice-is-off = Con la página cerrada, nada suena en este aparato.
notice-denied = Este navegador no puede mostrar avisos de esta dirección. Permítelos en sus ajustes y presiona otra vez.
notice-first-install = En un iPhone o iPad, pon primero esta página en la pantalla de inicio, y ábrela desde ahí.
notice-failed = Eso no funcionó aquí: este navegador no dio una dirección para avisos.
