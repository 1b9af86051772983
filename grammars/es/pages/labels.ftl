# La página de etiquetas, y los chips.
# Nobody who grew up speaking Spanish has reviewed these words yet.

labels-title = Etiquetas
labels-how = Letra grande, líneas de Braille y un código cuadrado de esquinas gruesas. Realza las esquinas con pintura táctil o cinta, para que un dedo encuentre el código. El Braille de una impresora común no se siente: le muestra a un ayudante que ve dónde grabar, o pasa por un calentador en papel que se hincha; una impresora Braille toma el archivo BRF.
labels-local = Los códigos cuadrados llevarían { $address }, que solo esta máquina puede abrir. Quien maneja el servicio pone en PUBLIC_URL la dirección por la que llegan los teléfonos.
labels-nothing = Todavía no hay nada que etiquetar. Guarda comida en el tablero, o añade una marca en la página Casa.
labels-items = Comidas
labels-markers = Marcas
labels-all-items = Elegir todas las comidas
labels-no-items = No elegir ninguna comida
labels-all-markers = Elegir todas las marcas
labels-no-markers = No elegir ninguna marca
labels-marker = marca
labels-sheet = Hoja
labels-own-size = Un tamaño propio
labels-millimetres = Tamaño en milímetros
labels-width = Ancho
labels-height = Alto
labels-braille = Braille
labels-grade-2 = Braille inglés unificado, contraído (grado 2)
labels-grade-1 = Braille inglés unificado, sin contraer (grado 1)
labels-no-braille = Ninguno
labels-print = Obtener la hoja para imprimir (PDF)
labels-emboss = Obtener el archivo para impresora Braille (BRF)
labels-pick-one = Elige al menos una comida o una marca.
labels-ready = { $name } está listo.
counted-dot = { $count ->
    [one] un punto
   *[other] { $count } puntos
  }
counted-knot = { $count ->
    [one] un nudo
   *[other] { $count } nudos
  }
counted-ridge = { $count ->
    [one] un borde
   *[other] { $count } bordes
  }
counted-notch = { $count ->
    [one] una muesca
   *[other] { $count } muescas
  }

guide-heading = La clave del tacto de esta casa
guide-how = Una página para la familia y las visitas: qué no se le debe dar a nadie aquí, qué significan las marcas y sus puntos, dónde está cada cosa, qué decir. En letra grande, o para impresora Braille. Está en inglés.
guide-print = Obtener la clave para imprimir (PDF)
guide-emboss = Obtener la clave en Braille (BRF)

nfc-heading = Un chip para { $name }, para tocarlo con el teléfono
nfc-how = Al tocar el chip con un teléfono se abre el tablero con esto en la mano.
nfc-cannot = Este navegador no puede ponerlo en un chip: lo que va en él
nfc-address = Como dirección:
nfc-bytes = Como los bytes de su único registro:
nfc-put = Ponerlo en un chip
nfc-hold = Pon el chip detrás del teléfono
nfc-done = { $name } está en el chip.
