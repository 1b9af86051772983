# La entrada: una página que todavía no tiene permiso, o que ya no lo tiene.
# Nobody who grew up speaking Spanish has reviewed these words yet.

gate-title = Esta página todavía no tiene permiso
gate-sent-away-title = Esta página ya no tiene permiso
gate-sent-away = Un dueño de la cocina le quitó la llave, o se cerró la sesión. Lo que esta página sabía de la cocina se olvidó aquí.
gate-ask = Pedir permiso
gate-name = Cómo llamar a este aparato, por ejemplo teléfono de Ruth
gate-get-code = Pedir un código
gate-code-is = El código es
gate-code-then = Un dueño de la cocina dice en inglés en un aparato con permiso: “let in the device with code” y las cifras, o lo confirma en su página Casa. Esta página se abre entonces sola. El código dura diez minutos.
gate-key-heading = O usar una llave
gate-key = Llave de un aparato de esta cocina (el servicio imprime una cuando arranca)
gate-go-in = Entrar
gate-wrong-key = Esa llave no se conoce aquí.
gate-needs-https = La llave es correcta, pero el navegador solo la guarda con https. Abre esta página por su dirección https; o, en una red de casa en la que confías, quien maneja el servicio pone SECURE_COOKIES=false y lo arranca de nuevo.
gate-needs-cookies = La llave es correcta, pero este navegador no la guardó. Permite las cookies de esta dirección.
device-phone = teléfono
device-tablet = tableta
device-computer = computadora
device-page = página

join-title = Te invitan a { $household }
join-as-speak = Este aparato podrá hablar con la cocina, y hacer en el tablero lo que se puede decir.
join-as-help = Este aparato podrá ayudar: ver la cocina, hablarle y corregir su registro.
join-as-own = Este aparato podrá hacer todo, como dueño: también personas, aparatos y ajustes.
join-go-in = Entrar
join-not-valid = Esta invitación ya no sirve. Se usó, la retiraron, o tiene más de una hora. Pide otra.
join-unreadable = Esta invitación no está completa. Pídela otra vez.
