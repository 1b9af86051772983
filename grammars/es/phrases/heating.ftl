# Recalentar. Cocinar, descongelar, comida fuera y cortes de luz: en español todavía no.

ask-reheat = ¿Qué recaliento?
reheat-title = { $name }{ $method ->
    [microwave] {" "}en el microondas
    [oven] {" "}en el horno
    [air-fryer] {" "}en la freidora de aire
    [hob] {" "}en la estufa
    [steamer] {" "}en la vaporera
   *[toaster] {" "}en el horno tostador
  }{ $from ->
    [freezer] , desde congelado
   *[fridge] {""}
  }
reheat-minutes = { CAP($time) } a { UN($watts) } vatios.
    .full = { CAP($name) }: { $time } a { UN($watts) } vatios; luego déjalo reposar y revisa que esté bien caliente por dentro.
reheat-undated = No hay fecha registrada. Ante la duda, tíralo.
offer-throw-out = ¿Anoto { $name } como tirado?
