# Ajustes de la casa y sus aparatos.

ask-watts = ¿De cuántos vatios es tu microondas? Lo dice una placa por dentro de la puerta.
ask-summary-at = ¿A qué hora te digo qué hay que usar?
watts-are = Tu microondas es de { UN($watts) } vatios.
watts-unknown = No está registrado de cuántos vatios es tu microondas.
guidance-is = Doy la guía de { $region ->
    [uk] Reino Unido, de la Food Standards Agency
   *[us] Estados Unidos, del Departamento de Agricultura
  }.
measures-are = Las medidas son ahora { $measures ->
    [metric] métricas
   *[us] de Estados Unidos
  }.
summary-at = El resumen llega a { $time }.
no-summary = Sin resumen de la noche.
quiet-from = Guardo silencio de { $from } a { $to }, salvo si me hablas.
no-quiet = Sin horas de silencio.
settings-help = Puedes ajustar los vatios del microondas, de quién es la guía, la hora del resumen y las horas de silencio.
no-devices = No se ha dado entrada a ningún aparato.
device = { $when ->
    [none] { THE($name) }, que aún no se ha oído
   *[other] { THE($name) }, oído por última vez { $when }
  }
devices-here = { $count ->
    [one] Uno: { $devices }.
   *[other] { CAP(UN($count)) } aparatos: { $devices }.
  }
confirm-setting = { $setting } ¿Está bien? Sí o no.
device-name = { THE($name) }
devices-for-owners = Eso solo lo hace el aparato de quien es dueño. Pídelo en uno de esos.
devices-not-in-practice = Mientras practicamos no toco los aparatos.
ask-code = ¿Qué código dice? Son ocho cifras.
ask-code-again = { $count ->
    [one] Oí una cifra
   *[other] Oí { UNA($count) } cifras
  }; un código tiene ocho. ¿Lo dices otra vez?
code-nobody = Ningún aparato espera con { $code }. Un código dura diez minutos.
codes-too-many = Demasiados códigos equivocados. Prueba en diez minutos.
device-let-in = { CAP(THE($name)) } ya { tiene-o } entrada.
device-may = Puede conversar y cambiar la cocina, y no puede dar entrada a otros.
confirm-let-in = ¿Doy entrada a { THE($name) }? Sí o no.
which-device = ¿Cuál: { $devices }?
device-unknown = Ningún aparato se llama { $device }. Conozco { $devices }.
ask-device-name = ¿Cómo llamo a { THE($name) }?
device-name-taken = Otro aparato ya se llama { $name }.
device-renamed = { CAP(THE($was)) } ahora es { THE($name) }.
confirm-rename-device = ¿Llamo { $name } a { THE($was) } de ahora en adelante? Sí o no.
device-last-owner = { CAP(THE($name)) } { es-o } el único aparato con ese permiso: sin él nadie podría dar entrada a otros. Dáselo antes a otro.
confirm-remove-device = ¿Quito { THE($name) }? Ya no podrá hablar aquí si no se le da entrada otra vez. Sí o no.
confirm-remove-device-here = ¿Quito { THE($name) }? Es por donde me hablas: aquí ya no te oiré. Sí o no.
device-removed = Quité { THE($name) }.
device-removed-here = Quité { THE($name) }. Adiós.
known-no-places = Todavía no hay lugares.
known-places = Guardas comida en { $places }.
known-nobody = No está registrado quién come aquí.
known-people = Comen aquí: { $people }.
known-foods = { $count ->
    [0] No hay comida registrada.
    [one] Hay una comida registrada.
   *[other] Hay { UNA($count) } comidas registradas.
  }
known-markers = { $count ->
    [one] Una marca, { $spare } libre.
   *[other] { CAP(UNA($count)) } marcas, { $spare } libres.
  }
