# De la conversación misma.

nothing-said-yet = Todavía no he dicho nada.
waiting = Espero. Di sigue cuando quieras continuar.
    .short = Espero.
where-we-were = Donde íbamos.
where-we-stopped = { $session ->
    [count] Guardé el lugar. Di sigue con la revisión cuando quieras.
   *[setup] Guardé el lugar. Di sigue cuando quieras.
  }
nothing-more = Eso fue todo.
length-now = { $length ->
    [short] Seré breve.
    [full] Te contaré todo.
   *[usual] Hablaré con el largo de siempre.
  }
from-your-record = Eso es lo que me dijeron y quedó registrado.
faster-now = Más rápido.
slower-now = Más despacio.
louder-now = Más fuerte.
quieter-now = Más bajo.
whispering = En voz baja.
no-whisper = Ya no susurro.
as-fast-as-i-go = Más rápido no puedo.
as-slow-as-i-go = Más despacio no puedo.
as-loud-as-i-go = Más fuerte no puedo.
as-quiet-as-i-go = Más bajo no puedo.
spelled = { $letters }.
spell-what = ¿Qué deletreo?
names-only = { CAP($names) }.
no-names = No había nombres en eso.
that-many = { CAP($count) }.
steps-in-all = { CAP($count) } pasos.
nothing-to-count = No había nada que contar.
i-heard = Oí: { $heard }.
heard-nothing-yet = Antes de esto no oí nada.
procedure-ended = Está bien, ahí lo dejo.
nothing-open = No hay nada que cancelar. Deshacer quita el último cambio.
welcome = De nada.
hello = Hola{ $name ->
    [none] {""}
   *[other] , { $name }
  }. ¿Qué hacemos?
goodbye = Hasta luego.
say-next = Di siguiente para el próximo paso.
all-right = Está bien.
nothing-was-asked = No había preguntado nada. ¿Qué necesitas?
good = Bien.

# Ayuda, según dónde estamos.
help-general = Pregunta dónde está una comida, qué es lo más viejo, cuánto dura algo o cómo recalentarlo. Di más para oír más.
    .short = Di: dónde está; qué es lo más viejo; cuánto dura; cómo lo caliento. Di más para oír más.
help-start = Todavía no hay nada registrado. Guardar comida todavía se hace en inglés o en la página.
help-practice = Esto es práctica, así que prueba lo que quieras.
help-more-food = Comida: cuánto tiempo tiene el guiso; todavía está bueno el arroz; qué uso primero; deshacer.
help-more-kitchen = Cocina: qué hay en la segunda repisa; cuánta leche queda; qué no tiene fecha.
help-more-talk = Conversación: repite; más corto; más despacio; deletréalo; por qué; qué oíste; alto. Lo demás, por ahora, solo en inglés.
help-question = { $expecting ->
    [yes-no] Di sí o no, u olvídalo.
    [choice] { $choices ->
        [none] Di cuál, u olvídalo.
       *[other] Di { $choices }, u olvídalo.
      }
    [place] Di un lugar, como la segunda repisa del refrigerador, u olvídalo.
    [amount] Di cuánto: dos porciones, la mitad, todo. U olvídalo.
    [date] Di un día, como ayer o el viernes pasado. O di no sé.
    [marker] Di cómo se siente: una cuenta de madera, una cuerda con un nudo. U olvídalo.
    [time] Di una hora o cuánto tiempo. U olvídalo.
   *[other] Dilo en pocas palabras, u olvídalo.
  }
help-session = { $session ->
    [shop] Di cada comida y adónde va. Al final di que es todo.
    [count] Di sí, no, cambió, o cuántos. Di espera para hacer una pausa.
   *[setup] Contesta con tus palabras. Di siguiente para saltar una, o espera para hacer una pausa.
  }
help-steps = Di siguiente, atrás, repite, cuántos faltan, desde el principio, o listo cuando lo hayas hecho.

# Pasos guiados.
step = { $text }
steps-begin = { CAP($title) }, { $count ->
    [one] un paso.
   *[other] { UN($count) } pasos.
  }
    .short = { $count ->
    [one] Un paso.
   *[other] { CAP(UN($count)) } pasos.
  }
last-step = Último paso.
first-already = Ese era el primero.
steps-over = Ese fue el último paso.
reheating-over = Ese fue el último paso. Buen provecho.
no-steps = No estamos siguiendo pasos.
so-many-steps = { $count ->
    [one] Es un paso
   *[other] Son { UN($count) } pasos
  }.
no-such-step = No hay ningún paso de { $words }.
steps-left = { $left ->
    [0] Este es el último.
    [one] Falta uno después de este.
   *[other] Faltan { $left } después de este.
  }
timer-started = Temporizador puesto, { $time }.{ $last ->
    [yes] {""}
   *[no] {" "}Di siguiente cuando suene.
  }

step-time = { $step ->
    [none] { CAP($time) }.
   *[other] { CAP($time) }, en el { $step } paso.
  }
step-quoted = { $step ->
    [none] { $words }
   *[other] En el { $step } paso: { $words }
  }
step-coming = Después: { $text }
steps-none-coming = Nada más: este es el último paso.
step-number = El { $step } de { $count }.
steps-not-yet = Todavía no: { $left ->
    [one] falta un paso.
   *[other] faltan { $left } pasos.
  }
steps-more = Sí, { $left ->
    [one] falta un paso.
   *[other] faltan { $left } pasos.
  }
not-yet = Todavía no.
steps-heat = A { $heat }.
steps-watts = A { $watts } vatios.
steps-whole-time = { $time } en total.
steps-no-heat = Ningún paso dice a qué temperatura.
steps-no-sign = El paso no dice cómo se nota.
steps-no-amount = Los pasos no dicen cuánto.
steps-do-not-say = Los pasos no lo dicen.
steps-untimed = Ningún paso de aquí tiene tiempo.
