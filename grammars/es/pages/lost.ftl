# La página de una dirección equivocada. La hace el servicio, en el idioma del navegador.
# Nobody who grew up speaking Spanish has reviewed these words yet.

lost-title = No existe esa página
lost-heading = No hay ninguna página en esta dirección
lost-board = El tablero: lo que hay en la cocina, y hablar con ella
lost-home = Casa: personas, aparatos, ajustes
lost-labels = Etiquetas
lost-charts = Cuentas
