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
help-start = Todavía no hay nada registrado. Di ayúdame a empezar, o dime una comida y dónde la pusiste.
help-practice = Esto es práctica, así que prueba lo que quieras.
help-more-food = Comida: cuánto tiempo tiene el guiso; pasa la sopa al congelador; saqué dos; pon avena en la lista; deshaz.
help-more-kitchen = Cocina: qué hay en la segunda repisa; qué lleva la cuenta de vidrio; un nudo quiere decir que hay que comerlo pronto; revisemos el congelador.
help-more-talk = Conversación: repite; más corto; más despacio; deletréalo; por qué; qué oíste; alto.
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
help-lesson = Haz la tarea con tus palabras. O di una pista, cuál era la tarea, salta la tarea, cómo me fue, o deja la lección.
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
steps-left-own = Faltan { $left }: { UN($own) } { $own ->
    [one] tuyo
   *[other] tuyos
  } y { UN($other) } de la guía.
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
step-before = Primero: { $text }
step-then = Después: { $words }
back-to-step = Entonces volvemos atrás; di siguiente cuando esté.
wait-until-so = Espero. Di siguiente cuando esté.
    .short = Espero.
steps-after-own = Después { $left ->
    [one] uno más, de la guía.
   *[other] { UN($left) } más, de la guía.
  }
step-coming = Después: { $text }
steps-none-coming = Nada más: este es el último paso.
step-number = El { $step } de { $count }.
steps-no-caution = El paso no dice nada de eso.
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

usual-speed = Hablo como siempre.
usual-volume = Mi volumen de siempre.
whispering-tonight = Hablo en voz baja hasta la mañana.
sounds-on = Un sonido corto antes de cada respuesta.
sounds-off = Ya no hay sonidos.
offer-undo = ¿Deshago lo último{ $about ->
    [none] {""}
   *[other] , de { THE($about) }
  }?
hello-empty = Hola{ $name ->
    [none] {""}
   *[other] {" "}{ $name }
  }. Recuerdo qué comida tienes, dónde está y de cuándo es.
    .short = Hola. Llevo la cuenta de tu comida.
offer-begin = ¿Empezamos?
help-topic = { $topic ->
    [list] Di: pon avena en la lista; que sean dos bolsas; quítala; hay leche en la lista; qué hay que comprar; ya compré los huevos.
    [notes] Di: deja un recado para, el nombre, y las palabras. Pregunta: hay recados. De una comida: ponle una nota a la sopa que diga que le falta sal.
    [people] Di: Dele es alérgica al cacahuate; Ruth es vegana; el hummus lleva ajonjolí. Pregunta: qué puede comer Dele; el guiso es vegano.
    [markers] Di: ponle la cuenta de madera a la sopa; qué lleva el parche de tela; qué marcas hay libres.
    [timers] Di: pon un temporizador de diez minutos para el arroz; cuánto le falta; recuérdame mañana congelar el pollo; para el temporizador.
    [touch] Toca su marca, o dime cómo se siente: la tapa, una liga, puntos, la forma. Di: qué es el frasco del parche de tela.
    [freezing] Di: qué hay en el congelador; congela el pollo; cuánto dura congelado un guiso; revisemos el congelador.
    [places] Di: qué hay en la segunda repisa; qué lugar está vacío; el congelador tiene tres canastas.
    [dates] Di: caduca el viernes; lo abrí ayer; cuándo caduca el yogur; qué hay que usar primero.
    [heating] Di: cómo caliento el guiso; y luego siguiente, atrás, repite, y listo después de cada paso.
    [putting] Di qué es y dónde: mantequilla en la repisa de arriba, caduca el viernes. Lo que falte se puede decir después.
    [using] Di: se acabó la leche; saqué dos; queda la mitad; tiré el jamón. Deshaz lo devuelve.
    [finding] Pregunta: dónde está; qué hay en la segunda repisa; qué lleva la cuenta; qué tengo con jitomate.
    [stopping] Di basta, y me callo. Di sigue para lo que falta; más corto, o más despacio, para cambiar cómo hablo.
    [lessons] Las lecciones todavía están solo en inglés.
    [checks] Di: revisemos el congelador; o una repisa y lo que hay en ella: repisa de arriba, mantequilla y dos frascos de mermelada.
    [power] Di: se fue la luz a las seis; qué se perdió; ya volvió la luz.
    [summary] Di: dime el resumen; el resumen a las siete; qué hay que usar primero.
    [guide] Una página para quien ve imprime una guía de esta cocina, de una hoja, en letra grande y braille: en Etiquetas, pulsa guía.
    [batches] Di: seis porciones de sopa, dos en el refri y cuatro en el congelador, de hoy. Después: una porción menos.
   *[undo] Di deshaz y se deshace el último cambio. Di: no, en la de arriba, y solo eso se corrige.
  }
explained = { $topic ->
    [markers] Una marca es algo que se siente en un recipiente, para saber qué hay dentro.
    [list] La lista es lo que hay que comprar.
    [notes] Una nota es un recado que espera a alguien, o algo que se recuerda de una comida.
    [people] Recuerdo quién come aquí y qué no debe comer, y lo digo cuando importa.
    [timers] Un temporizador cuenta hacia atrás; un recordatorio espera su día.
    [places] Un lugar es donde está la comida; puede tener repisas, cajones, canastas y una puerta.
    [dates] Recuerdo el día en que algo se hizo, se compró, se abrió o se congeló, y lo que dice su etiqueta.
    [heating] Leo cómo calentar paso por paso, y te espero.
    [lessons] Una lección es práctica en una cocina aparte; la tuya no se toca.
    [checks] Una revisión recorre un lugar contigo, cosa por cosa, para que el registro sea lo que hallan tus manos.
    [power] Cuando se va la luz te digo lo que indica la guía para la comida, paso por paso.
    [summary] El resumen te dice cada noche qué hay que usar.
    [guide] La guía es una hoja que dice qué decir y qué significa aquí cada marcador.
    [batches] Una tanda es lo cocinado de una vez en varios recipientes; lo que me digas vale para todos.
   *[undo] Nada de lo que dices se pierde: el último cambio siempre se puede deshacer.
  }
example-marked = En tu cocina, { THE($marker) } quiere decir { $name }.
example-mark = Para ti: pon { THE($marker) } a { THE($name) }.
example-listed = En la tuya: { $name }.
example-person = Para ti: qué puede comer { $name }.
example-place = Para ti: qué hay en { THE($name) }.
example-heated = Para ti: cómo caliento { THE($name) }.
example-dated = Para ti: de cuándo es { THE($name) }.
example-found = Para ti: dónde está { THE($name) }.
example-used = Para ti: se acabó { THE($name) }.
picked-up = { CAP($title) }, { $step } paso, de { $when }.
    .short = { CAP($step) } paso.
no-steps-for = No hay pasos abiertos de { THE($name) }. Di cómo lo caliento, para empezar.
