# Palabras que comparten varias páginas.
# Nobody who grew up speaking Spanish has reviewed these words yet.
# $name: una comida, una persona o un aparato, como lo escribió la casa.

page-board = Tablero
page-home = Casa
page-labels = Etiquetas
page-charts = Cuentas
page-teach = Lecciones
pages = Páginas
skip = Ir a la página
one-moment = Un momento.
save = Guardar
leave-it = Dejarlo
leave-as-it-was = Dejarlo como estaba
undo = Deshacer
undone = Deshecho.
yes = Sí
no = No
nothing-there = Ninguna

not-reached = No hay conexión con la cocina. No se cambió nada.
did-not-work = Eso no funcionó.
some-were-done = Se hicieron { $done } de { $all }.
wrong-field = { $field }: { $why }

amount-about = más o menos { $amount }
age-made = se hizo { $ago }
age-bought = se compró { $ago }
age-opened = se abrió { $ago }
age-frozen = se congeló { $ago }
age-thawed = se descongeló { $ago }
age-unknown = sin fecha conocida

until-past-days = { $days ->
    [one] un día más de lo que dice la guía: tíralo
   *[other] { $days } días más de lo que dice la guía: tíralo
  }
until-past = pasó lo que dice la guía: tíralo
until-refrigerate-now = está afuera: mételo ya al refrigerador
until-last-day = hoy es el último día
until-cook-thoroughly = cocínalo muy bien, hoy o mañana
until-past-best = ya pasó su mejor calidad
until-unknown = no se sabe cuánto dura
until-no-figure = la guía no da una cifra: guíate por el paquete
until-within = dentro de lo que dice la guía
until-day = hasta el { $day }

contains = Contiene { $allergens }
contains-not-for = Contiene { $allergen }: no es para { $person }
usually-contains = Esta clase de comida suele contener { $allergen }: pregunta, por { $person }
said-free-from = Dicen que no lleva { $allergen }, y esta clase de comida suele contenerlo: pregunta, por { $person }
place-unknown = lugar desconocido
