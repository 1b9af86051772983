# Por qué no se hizo un cambio: una frase por cada razón.

refused-unknown-item = Eso ya no está en el registro.
refused-unknown-place = No conozco ese lugar.
refused-unknown-marker = No conozco esa marca.
refused-unknown-person = No conozco a esa persona.
refused-unknown-purchase = Eso no está en la lista.
refused-unknown-reminder = Ese temporizador ya terminó.
refused-unknown-note = Ese mensaje ya no está.
refused-unknown-stock-take = Esa revisión ya terminó.
refused-already-gone = { $name ->
    [none] Eso ya no está en el registro.
   *[other] { CAP($name) }: ya no está en el registro.
  }
refused-still-here = { $name ->
    [none] Eso todavía está aquí.
   *[other] { CAP($name) }: todavía está aquí.
  }
refused-nothing-changes = { $name ->
    [none] Ya lo tengo así.
   *[other] { CAP($name) }: ya lo tengo así.
  }
refused-no-name = Necesito un nombre.
refused-amount-unknown = No sé cuánto había{ $name ->
    [none] {""}
   *[other] {" "}de { $name }
  }. Dime cuánto queda.
refused-more-than-there-is = { $have ->
    [none] No hay tanto.
   *[other] Solo hay { $have }.
  }
refused-unit-differs = { $have ->
    [none] Lo tengo en otra medida.
   *[other] Lo tengo como { $have }. Dímelo en esa medida, o cuánto queda.
  }
refused-not-an-amount = Esa cantidad no la puedo anotar.
refused-marker-in-use = { $name ->
    [none] Esa marca está en otra cosa.
   *[other] Esa marca está en { THE($name) }.
  }
refused-no-marker = No lleva marca.
refused-looks-alike = Tienes una marca que se siente igual.
refused-no-touch = Dime cómo se siente.
refused-not-a-freezer = Eso no es un congelador.
refused-which-freezer = { $places ->
    [none] No conozco ningún congelador.
   *[other] ¿Qué congelador: { $places }?
  }
refused-already-frozen = Eso ya está en el congelador.
refused-not-frozen = Eso no está registrado como congelado.
refused-not-out = Eso no está registrado como puesto afuera.
refused-different-foods = Son comidas distintas.
refused-too-few = Para eso hacen falta al menos dos.
refused-contains-it = Está registrado que lo contiene.
refused-place-not-empty = Todavía hay comida ahí.
refused-place-exists = Ya tengo ese lugar.
refused-place-inside-itself = Un lugar no puede estar dentro de sí mismo.
refused-already-listed = { $name ->
    [none] Eso ya está en la lista.
   *[other] { CAP($name) }: ya está en la lista.
  }
refused-list-empty = La lista está vacía.
refused-person-exists = Ya conozco a esa persona.
refused-check-open = Ese lugar ya se está revisando.
refused-check-closed = Esa revisión ya terminó.
refused-too-many = Son demasiados para mí.
refused-in-the-past = Esa hora ya pasó.
refused-changed-since = { $name ->
    [none] Algo lo cambió después.
   *[other] { CAP($name) }: cambió después.
  }
refused-nothing-to-undo = No hay nada que deshacer.
refused-not-a-date = No conozco ese día.
refused-bad-setting = Eso no lo puedo ajustar. ¿Lo dices de otra manera?
