# Casa: personas, aparatos, lugares, ajustes, lo que se cambió, salir.
# Nobody who grew up speaking Spanish has reviewed these words yet.

home-title = { $household }: la casa
home-as-own = Esta página tiene permiso como { $device }, dueño.
home-as-help = Esta página tiene permiso como { $device }, ayudante. Las personas, los aparatos y los ajustes los cambia un dueño.
home-as-speak = Esta página tiene permiso como { $device }, para hablar. Las personas, los aparatos y los ajustes los cambia un dueño.

people = Personas
people-unknown = Lo que no está escrito de un alérgeno no se sabe; nunca quiere decir que falte. Pregunta a quien cocinó y lee la etiqueta.
people-add = Añadir a alguien
person-new = Alguien nuevo
person-name = Nombre
person-no-name = Escribe un nombre.
person-eats-here = Come aquí
person-at-risk = Guía más estricta: bebé o niño pequeño, embarazo, edad avanzada, o defensas bajas
person-must-not = No debe comer
person-and = Y, separado por comas
person-diets = Come por elección: vegano, bajo en sal
person-needs = Cómo ha de ser su comida: cortada pequeña, en puré
person-comes = Viene como invitado el
person-add = Añadir
person-changed = { $name }: cambiado.
person-added = { $name }: añadido.
person-not = no { $allergens }
person-strict = guía más estricta
person-away = no come aquí
person-has-needs = comida { $needs }
person-is-coming = viene el { $day }

devices = Aparatos
role-speak = Habla, y hace en el tablero lo que se puede decir
role-help = Ayudante: también corrige el registro
role-own = Dueño: también personas, aparatos y ajustes
device-is-speak = habla
device-is-help = ayudante
device-is-own = dueño
device-everybodys = De todos
device-line = { $name }, { $role }
device-this-one = { $name } (este), { $role }
device-last-heard = { $line }, se oyó por última vez el { $when }
device-name = Nombre
device-role = Qué puede hacer
device-whose = De quién es
device-changed = { $name }: cambiado.
device-send-away = Quitarle el permiso
device-send-away-sure = Sí, quitarle el permiso a { $name }
device-sent-away = { $name } ya no tiene permiso.
invite-heading = Invitar a alguien
invite-how = Una invitación deja entrar a un aparato, una vez, dentro de una hora. Muestra el código cuadrado a la cámara de un teléfono, o envía el enlace.
invite-name = Cómo llamar a su aparato, por ejemplo teléfono de Ruth
invite-make = Hacer una invitación
invite-made = La invitación para { $name } está lista. Sirve una vez, hasta las { $until }.
invite-code = Código cuadrado de la invitación para { $name }: acércale la cámara de un teléfono
invite-send = Enviar el enlace
invite-copy = Copiar el enlace
invite-copied = El enlace está copiado.
invite-take-back = Retirar la invitación
invite-taken-back = La invitación está retirada. Nadie entra con ella.
invite-no-name = Escribe cómo llamar a su aparato.
invite-local = La dirección de esta cocina solo se abre en esta máquina, así que la invitación no sirve en ningún teléfono. Quien maneja el servicio pone PUBLIC_URL.
device-let-in-heading = Dar permiso a un aparato que muestra un código
device-let-in-how = Abre esta dirección en el aparato nuevo y presiona ahí “Pedir un código”. Luego escribe ese código aquí, o di en inglés “let in the device with code” y sus cifras.
device-code = Su código, ocho cifras
device-let-in = Darle permiso
device-is-let-in = Tiene permiso. Su página se abre sola.

home-places = Lugares
home-no-places = Todavía no hay ningún lugar. Añade uno aquí, o dilo en el tablero: “la nevera tiene cuatro baldas y dos cajones”.
home-place-with = { $place }: { $parts }
home-add-place = Añadir un lugar
home-place-name = Cómo se llama, por ejemplo congelador grande
home-place-kind = Qué es
home-place-within = Dentro de
home-place-alone = Nada: está por sí solo
home-place-add = Añadir el lugar
home-place-added = { $name } ya es un lugar.
kind-fridge = refrigerador
kind-freezer = congelador
kind-pantry = despensa
kind-counter = mostrador
kind-cupboard = alacena
kind-shelf = repisa
kind-drawer = cajón
kind-basket = canasta
kind-door = puerta
markers = Marcas
markers-none = Todavía no hay ninguna marca. Una marca es lo que la mano encuentra en un recipiente: una liga, una cuenta, un parche.
markers-all = { $count ->
    [one] Una marca
   *[other] Las { $count } marcas
  }
marker-line = { $marker }; { $where }
marker-on = en { $item }
marker-spare = en la caja de repuestos
marker-fastening = Qué es
marker-texture = Cómo se siente
marker-shape = Su contorno
marker-spot = En qué parte del recipiente
marker-counted = Qué se cuenta
marker-counted-dot = puntos
marker-counted-knot = nudos
marker-counted-ridge = bordes
marker-counted-notch = muescas
marker-fastenings = Cuántas hay, si eso dice algo
marker-dots = Cuántos puntos se le cuentan
marker-care = Cómo se cuida, por ejemplo lavar a mano
marker-not-said = No se ha dicho
marker-no-touch = Elige algo que la mano encuentre en ella.
marker-changed = La marca está cambiada.
marker-added = La marca está en la caja de repuestos.
marker-add-one = Añadir una marca
marker-add = Añadir la marca
marker-anyway = Dejarla así de todos modos
home-points = Qué significan aquí los puntos que se sienten
home-point = { $count }: { $meaning }

bring = Traer una lista
bring-file = Una lista de comida que ya tienes, como archivo
bring-hint = Una hoja guardada como CSV, con encabezados como Producto, Lugar, Cantidad, Caducidad. Primero ves por qué se toma cada encabezado y cada fila; después entra todo, o nada.
bring-make-places = Crear los lugares que aún no existen
bring-make-places-hint = Los lugares que no existen se crean si marcas la casilla de arriba.
bring-headings = Por qué se toman los encabezados
bring-rows = Por qué se toman las filas
bring-left-out = no se usa
bring-pair = { $what }: { $value }
bring-row = Fila { $row }: { $cells }
bring-more-rows = { $count ->
    [one] Y una fila más.
   *[other] Y { $count } filas más.
  }
bring-wrong = No entra nada hasta que esto se corrija en el archivo, por su fila y columna:
bring-items = { $count ->
    [0] No trae nada nuevo.
    [one] Entraría una comida.
   *[other] Entrarían { $count } comidas.
  }
bring-places = Lugares nuevos: { $places }.
bring-already = { $count ->
    [one] Una ya está y no se repite.
   *[other] { $count } ya están y no se repiten.
  }
bring-do = Traerlo todo
bring-done = { $count ->
    [one] Una comida está en el registro. “Deshacer” la quita.
   *[other] { $count } comidas están en el registro. “Deshacer” las quita.
  }
column-name = nombre
column-amount = cantidad
column-unit = medida
column-place = lugar
column-inside = dónde en el lugar
column-container = recipiente
column-made = hecho el
column-bought = comprado el
column-opened = abierto el
column-frozen = congelado el
column-best-before = consumo preferente
column-use-by = fecha de caducidad
column-maker = hecho por
column-owner = de quién es
column-contains = contiene
column-diets = marcas de dieta
column-notes = notas

settings = Ajustes
settings-name = Nombre de la casa
settings-region = De quién es la guía de alimentos que se dice
settings-us = Estados Unidos
settings-uk = Reino Unido
settings-measures = Medidas
settings-measures-us = Tazas, libras, Fahrenheit
settings-measures-metric = Litros, kilos, Celsius
settings-language = Idioma
settings-language-hint = El español oye y contesta una parte de lo que hace el inglés, y dice dónde no puede.
settings-watts = Potencia del microondas, en vatios
settings-watts-hint = Está escrita atrás o en la puerta.
settings-summary = Hora del resumen de la noche
settings-summary-hint = Vacío: ninguno.
settings-quiet-from = Silencio desde
settings-quiet-hint = A esas horas no se dice nada sin que pregunten; los temporizadores susurran.
settings-quiet-to = Silencio hasta
settings-save = Guardar los ajustes
settings-saved = Los ajustes están guardados.
settings-address = Las etiquetas y los códigos dicen que a esta cocina se llega en { $address }.
settings-address-local = Eso solo lo puede abrir esta máquina, ningún teléfono. Quien maneja el servicio pone PUBLIC_URL.

changed-heading = Lo que se cambió
changed-nothing = Todavía no se cambió nada.
changed-line = { $when }: { $deed }
somebody = Alguien
deed-told = { $what ->
    [none] Se oyó un temporizador, un recordatorio o un resumen
   *[other] Se oyó: { $what }
  }
deed-undid = { $what ->
    [none] { $who } deshizo un cambio del registro
   *[other] { $who } deshizo un cambio de { $what }
  }
deed-redid = { $what ->
    [none] { $who } rehízo un cambio del registro
   *[other] { $who } rehízo un cambio de { $what }
  }
deed-took = { $who } tomó un poco de { $what }
deed-put-away = { $who } guardó { $what }
deed-finished = { $who } acabó { $what }
deed-threw-out = { $who } tiró { $what }
deed-gave-away = { $who } regaló { $what }
deed-moved = { $who } movió { $what }
deed-marked = { $who } le puso una marca a { $what }
deed-unmarked = { $who } le quitó la marca a { $what }
deed-amended = { $who } corrigió { $what }
deed-opened = { $who } abrió { $what }
deed-froze = { $who } congeló { $what }
deed-thawed = { $who } descongeló { $what }
deed-took-out = { $who } sacó { $what }
deed-reheated = { $who } recalentó { $what }
deed-split = { $who } dividió { $what }
deed-merged = { $who } juntó { $what }
deed-added-a-marker = { $who } añadió una marca: { $what }
deed-built-a-place = { $who } hizo un lugar: { $what }
deed-renamed-a-place = { $who } cambió el nombre de un lugar: { $what }
deed-removed-a-place = { $who } quitó un lugar: { $what }
deed-gave-dots-a-meaning = { $who } dio un significado a los puntos: { $what }
deed-put-on-the-list = { $who } puso en la lista: { $what }
deed-took-off-the-list = { $who } quitó de la lista: { $what }
deed-bought = { $who } compró { $what }
deed-noted = { $who } anotó: { $what }
deed-checked = { $who } revisó { $what }
deed-told-of-a-power-cut = { $who } avisó de un corte de luz
deed-set = { $who } puso { $what }
deed-imported = { $who } tomó de un archivo: { $what }

leave-heading = Llevarse los datos, cerrar la sesión
leave-take = Llevarse todo (JSON)
leave-taken = kitchen.json tiene todo lo que se guarda de esta casa.
leave-out = Cerrar la sesión de esta página
leave-out-sure = Cerrar la sesión y olvidar lo que no se envió
leave-signed-out = Sesión cerrada.
leave-unsent = { $count ->
    [one] Hay una cosa guardada en el tablero de esta página y sin enviar. Cerrar la sesión la olvida.
   *[other] Hay { $count } cosas guardadas en el tablero de esta página y sin enviar. Cerrar la sesión las olvida.
  }
