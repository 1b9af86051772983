# El tablero: esta noche, la lista de compras, las tarjetas, cada lugar, guardar, corregir.
# Nobody who grew up speaking Spanish has reviewed these words yet.

tonight = Esta noche
messages = Mensajes
message-from = { $from }: { $text }
use-first = Usar primero
nothing-urgent = Nada tiene que usarse hoy, según lo registrado.
show-fewer = Mostrar menos
show-all = Mostrar todo ({ $count })

list = Lista de compras
list-empty = La lista está vacía.
list-take-off = Quitar
list-put-on = Poner en la lista
list-add = Añadir
list-write = Escribe qué comprar, por ejemplo avena.
list-is-off = { $name } ya no está en la lista.
list-is-on = { $name } está en la lista.

card-feels = Al tacto: { $feels }
card-from = De { $maker }
card-says = Según { $source }
card-what-to-do = Qué hacer con { $name }
card-used-up = Se acabó
card-took-some = Tomé un poco
card-threw-out = Lo tiré
card-move = Mover
card-dates = Fechas y más
card-to-buy = Comprar
card-is-used-up = { $name }: se acabó.
card-is-thrown-out = { $name }: se tiró.
card-is-to-buy = { $name } está en la lista de compras.
card-is-moved = { $name } está ahora en: { $place }.
card-is-taken = { $name }: se tomaron { $count }.
card-half-taken = { $name }: se tomó la mitad.
take-how-many = Cuántos
take-how-many-of = Cuántos, en: { $unit }
take = Tomar
take-half = Tomé la mitad
where-to = Adónde
choose-place = Elige un lugar

places = Todo, lugar por lugar
places-empty = Todavía no hay nada en el registro. Guarda lo primero aquí arriba.
find = Busca una comida, un lugar, un alérgeno
find-nothing = Nada aquí corresponde.
find-count = Encontrado: { $count }.
find-some = Encontrado: { $count }; se muestran los primeros { $shown }.
find-heading = Lo que se encontró
foods = { $count ->
    [one] una comida
   *[other] { $count } comidas
  }
place-not-known = Lugar desconocido
nothing-in = Sin nada registrado en: { $places }.
pick-several = Elegir varios
pick-by-box = Elige comidas con sus casillas.
picked = Elegido: { $names }.
move-them = Moverlos a
are-moved = { $names }: ahora en { $place }.
are-to-buy = { $names }: en la lista de compras.

add-heading = Guardar algo
add-name = Qué es
add-count = Cuántos
add-count-in = Cuántos en el lugar { $number }
add-unit = De qué
add-place = Dónde
add-place-in = Dónde, lugar { $number }
add-not-said = Sin decir
add-another = Y en otro lugar
add-one-less = Un lugar menos
add-date = De cuándo
add-made = Hecho hoy
add-bought = Comprado hoy
add-frozen = Hecho y congelado hoy
add-other = De otro día
add-no-date = No se sabe
add-day = Se hizo el
add-more = Más: alérgenos, fecha límite, marca, quién lo hizo
add-contains = Contiene (alérgenos)
add-contains-hint = Separa con comas. Lo que no se escribe no se sabe si falta.
add-use-by = Fecha límite del paquete
add-marker = Marca de la caja de repuesto
add-maker = Lo hizo
add-do = Guardar
add-no-name = Escribe qué es, por ejemplo chili de frijol.
add-no-count = Escribe cuántos con cifras, por ejemplo 2 o 0.5.
add-no-day = Di qué día se hizo, o elige “No se sabe”.
add-done = { $name } está en el registro: { $where }.
add-count-at = { $count } en { $place }
units = tub, portion, jar, bag, packet, bottle, tin, bowl, slice, piece, loaf

edit-heading = Cambiar { $name }
edit-name = Nombre
edit-left = Cuánto queda
edit-unit = De qué
edit-unit-hint = Uno de ellos: envase, frasco, porción, gramo.
edit-place = Lugar
edit-place-unknown = No se sabe
edit-maker = Lo hizo
edit-diets = Señas de dieta
edit-diets-hint = Separa con comas, en las palabras del registro: hot, vegan.
edit-contains = Contiene (alérgenos)
edit-contains-hint = Separa con comas. Lo que no está en la lista no se sabe si falta.
edit-dates = Fechas
edit-made = Se hizo
edit-bought = Se compró
edit-opened = Se abrió
edit-frozen = Se congeló
edit-thawed = Se descongeló
edit-bestBefore = Consumir de preferencia antes de
edit-useBy = Fecha límite
edit-no-name = Dale un nombre.
edit-no-amount = Escribe la cantidad con cifras, por ejemplo 2 o 0.5.
edit-no-unit = Di qué se cuenta, por ejemplo envase.
edit-done = { $name }: cambiado.
