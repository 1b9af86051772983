# Lo que dice la guía publicada, una frase por cada código.
# Aquí nada afirma que una comida no hace daño: se cuenta lo que dice la guía y, ante la duda, que se tire.

span-range = { $unit ->
    [hours] { UNA($low) } a { UNA($high) } horas
    [weeks] { UNA($low) } a { UNA($high) } semanas
    [days] { $low } a { UN($high) } días
    [months] { $low } a { UN($high) } meses
   *[years] { $low } a { UN($high) } años
  }
span-single = { $unit ->
    [hours] { COUNTED($high, "hora", "horas", "f") }
    [weeks] { COUNTED($high, "semana", "semanas", "f") }
    [days] { COUNTED($high, "día", "días", "m") }
    [months] { COUNTED($high, "mes", "meses", "m") }
   *[years] { COUNTED($high, "año", "años", "m") }
  }

# El título del documento se dice como está publicado.
source-cited = Fuente: { $agency }, { $document }{ $year ->
    [none] {""}
   *[other] , { $year }
  }{ $section ->
    [none] {""}
   *[other] , { $section }
  }.
source-year = { $year }
source-memory = Esa cifra es de memoria y no se consultó.
source-practice = Es práctica común, sin fuente publicada.

verdict-name = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }
# lo, la, los, las: por el nombre, si se dijo.
verdict-it = { $name ->
    [none] { $many ->
        [yes] los
       *[no] lo
      }
   *[other] { GENDER($name) ->
        [f] { $many ->
            [yes] las
           *[no] la
          }
       *[m] { $many ->
            [yes] los
           *[no] lo
          }
      }
  }
verdict-fine = { verdict-name }dentro de la guía{ $last ->
    [none] {""}
   *[other] {" "}hasta { $last }
  }.
verdict-use-soon = { verdict-name }hay que usar{ verdict-it } { $last ->
    [none] pronto
   *[other] a más tardar { $last }
  }.
verdict-last-day = { verdict-name }hoy es el último día según la guía.
verdict-throw-out = { verdict-name }pasó el plazo de la guía, así que hay que tirar{ verdict-it }.
verdict-past-best-quality = { verdict-name }ya pasó su mejor momento de sabor y textura.
verdict-cook-thoroughly = { verdict-name }usar pronto, bien cocido.
verdict-refrigerate-now = { verdict-name }hay que meter{ verdict-it } al refrigerador ahora.
verdict-no-figure = { verdict-name }la guía no da plazo, así que hay que seguir la etiqueta.
verdict-unknown = { verdict-name }no puedo decirlo, no hay fecha registrada. Ante la duda, tíra{ verdict-it }.
verdict-how-long = { verdict-name }la guía no da plazo para eso.

# Razones.
safety-within-guidance = van { $age } de { $span }.
safety-use-up = la guía da { $span }; van { $age }.
safety-last-day = la guía da { $span }, y hoy es el último día.
safety-over-limit = la guía da { $span }; se pasó por { $over }.
safety-over-limit-hours = han pasado { UNA($hours) } horas; la guía permite { $limit }.
safety-keeps = { OURS($food) }{ $type ->
    [none] {""}
   *[other] , { $type }
  }: { $span }.
safety-not-for-freezing = la tabla dice que no se congele.
safety-frozen-quality = mejor antes de { $to }, por el sabor; bien congelado, se conserva.
safety-past-quality = su mejor momento pasó en { $to }. Es cuestión de sabor y textura.
safety-frozen-keeps = lo que estuvo siempre congelado se conserva; los plazos del congelador son solo de calidad.
safety-frozen-unknown-date = no está registrado cuándo se congeló.
safety-use-by-passed = su fecha límite de uso fue { $day }.
safety-use-by-today = su fecha límite de uso es hoy.
safety-use-by-sooner = su fecha límite de uso es { $day }.
safety-use-by-quality = la fecha impresa, { $day }, es del fabricante, sobre todo por calidad.
safety-best-before-passed = su fecha de consumo preferente fue { $day }; es cuestión de calidad.
safety-best-before-eggs = los huevos se pueden usar hasta dos días después de esa fecha, bien cocidos.
safety-within-days-of-opening = la etiqueta dice { $days } después de abrir, o sea hasta { $day }.
safety-days-used-before-freezing = también cuentan { $days } en el refrigerador.
safety-clock-stopped = los días en el congelador no cuentan.
safety-thawed-undated = se descongeló, y no está registrado cuándo se hizo.
safety-after-thaw = después de descongelar, la guía da { $span }.
safety-over-before-freezing = ya se había pasado por { $over } antes de congelarse.
safety-refrozen = se volvió a congelar después de descongelarse.
safety-reheated-times = se recalentó { TIMES($times) }.
safety-reheat-once = la guía del Reino Unido dice que se recaliente una sola vez.
safety-left-out-over = estuvo fuera { $minutes }; la guía permite { $limit }.
safety-left-out-within = lleva fuera { $minutes } de { $limit }.
safety-left-out-unknown = no se sabe cuánto estuvo fuera; la guía permite { $limit }.
safety-left-out-long = estuvo fuera más de lo que permite la guía.
safety-power-lost = se calentó demasiado en un apagón, y eso no se pasa.
safety-power-doubtful = pasó por un apagón y nadie lo ha tocado ni medido desde entonces.
safety-power-holds = no hay luz; con la puerta cerrada sigue frío hasta más o menos { $until }.
safety-power-out = no hay luz, y nadie sabe si sigue frío.
safety-left-out-hot = a más de noventa grados Fahrenheit, solo se permite una hora.
safety-room-temperature = está guardado donde no hace frío.
safety-pantry-quality = la guía da { $span } en la alacena, por calidad.
safety-date-unknown = no hay fecha registrada.
safety-at-least-days = lleva aquí al menos { $days }.
safety-future-date = su fecha, { $day }, todavía no llega; revísala, por favor.
safety-label-decides = hay que seguir la etiqueta.
safety-opened-label-decides = está abierto: hay que seguir lo que dice la etiqueta sobre abrirlo.
safety-shelf-stable = se conserva a temperatura ambiente.
safety-sealed-only = ahí solo se conserva una lata o un cartón cerrado; lo demás, a la basura.
safety-produce-no-figure = no hay plazo para frutas y verduras frescas: tócalas y guíate por cómo están.
safety-no-uk-figure = la agencia de alimentos del Reino Unido no da plazo.
safety-general-answer = { $name } no está en ninguna tabla, así que es el plazo general.
safety-raw-assumed = lo tomé como crudo, que es el plazo más corto.
safety-older-guidance = esa cifra es de una tabla más antigua.
safety-guide-only = esa cifra es de un folleto, no de una tabla oficial.
safety-memory-only = esa cifra es de memoria y no se consultó.
safety-stricter-region = es la más estricta entre las guías de Estados Unidos y del Reino Unido.
safety-other-table = { $table ->
    [chart] La tabla de alimentos fríos dice
   *[data] Los datos de conservación dicen
  } { $span }.
safety-shorter-of-two = las tablas difieren, y este es el plazo más corto.
safety-earliest-part = cuenta la parte más vieja.
safety-home-canned = es conserva casera: si no sabes bien cómo se hizo, tírala.
safety-infant-food = la comida de bebé tiene sus propias reglas, más cortas.
safety-days-left = quedan { $days }.
safety-hazard-high = es de las comidas que más pronto enferman.
safety-opened-already = ya está abierto.
safety-lots-of-it = hay mucho: { $amount }.
safety-energy-equal = el tiempo está calculado para que la comida reciba la misma energía.
safety-first-check = revísalo antes: los hornos no son iguales.
safety-ratio-capped = los hornos son demasiado distintos para calcular más.
safety-watts-unknown = no están registrados todos los vatios, así que no puedo calcular el tiempo: caliéntalo de minuto en minuto.
safety-printed-column = ese tiempo está impreso para tu horno.
safety-doubled-portions = más porciones tardan más.
safety-portions-beyond = para tantas porciones no tengo cifra: calienta y revisa.
safety-not-yet-hot = { CAP($reached) } no es suficiente; la guía dice { $wanted }.
safety-hot-enough = según la guía, ya llegó a la temperatura.
safety-rest-more = déjalo reposar { $minutes } minutos más.
safety-held-too-short = mantenlo más tiempo: { $wanted } segundos en total.
safety-boil-wanted = debe llegar a hervir a borbotones.
safety-look-unusable = la señal de costumbre es para la vista: usa un termómetro parlante.
safety-fridge-too-warm = eso es demasiado caliente para un refrigerador.
safety-fridge-in-range = eso es lo bastante frío para un refrigerador.
safety-cooled-in-time = se enfrió a tiempo.
safety-cooled-too-slowly = se enfrió demasiado lento: tíralo.

# Cuidados.
caution-look-and-smell = el aspecto y el olor no dicen si está echado a perder.
caution-do-not-taste = no lo pruebes para averiguarlo.
caution-botulism-home-canned = una conserva casera mal hecha puede envenenar sin dar ninguna señal.
caution-botulism-garlic-oil = el ajo en aceite puede envenenar sin dar ninguna señal.
caution-botulism-foil-potato = una papa asada que se queda en papel aluminio puede envenenar sin dar ninguna señal: quítaselo.
caution-damaged-can = tira una lata hinchada, que gotea o muy abollada.
caution-at-risk-deli = para alguien con más riesgo, calienta las carnes frías hasta que salga vapor.
caution-at-risk-soft-cheese = alguien con más riesgo no debe comer queso blando si no es de leche pasteurizada.
caution-at-risk-queso-fresco = alguien con más riesgo no debe comer queso fresco, pasteurizado o no.
caution-at-risk-deli-salad = alguien con más riesgo no debe comer ensaladas preparadas en tienda.
caution-at-risk-sprouts = alguien con más riesgo no debe comer germinados si no están cocidos.
caution-at-risk-fermented-sausage = para alguien con más riesgo, calienta el embutido curado hasta que salga vapor.
caution-at-risk-smoked-fish = alguien con más riesgo debe comer el pescado ahumado solo cocido.
caution-at-risk-pate = alguien con más riesgo no debe comer paté refrigerado.
caution-at-risk-raw-milk = alguien con más riesgo no debe tomar leche cruda.
caution-at-risk-raw-eggs = para alguien con más riesgo, cuece el huevo hasta que clara y yema estén firmes.
caution-at-risk-raw-seafood = alguien con más riesgo no debe comer pescado ni mariscos crudos.
caution-raw-dough = nadie debe probar masa cruda: primero hornéala.
caution-at-risk-honey = nada de miel para un bebé de menos de un año.
caution-at-risk-general = alguien que come aquí tiene más riesgo, así que no te arriesgues.
caution-ask-clinician = pregunta a su médico.
caution-infant-no-microwave = no calientes la leche de un bebé en el microondas.
caution-infant-use-by = nunca uses fórmula infantil después de su fecha.
caution-allergen = contiene { OURS($allergens) }.
caution-allergen-usual = una comida así suele contener { OURS($allergens) }.
caution-allergens-unknown = sus alérgenos no están registrados.
caution-recorded = cuidado: { $words }.
caution-spicy = es picante: { $words }.
caution-hot-steam = va a salir vapor muy caliente: ábrelo del lado contrario a tu cara y tus manos.
caution-hot-dish = el recipiente estará caliente: usa guantes de cocina.
caution-hot-oil = el aceite puede salpicar: aleja la cara y los brazos.
caution-superheated = el líquido puede hervir de golpe al moverlo: déjalo reposar primero.
caution-follow-label = hay que seguir la etiqueta.
caution-rice = el arroz se debe enfriar y refrigerar rápido; ante la duda, tíralo.
caution-mould = si tiene moho o está baboso, tíralo.

# Por qué comida se tomó.
match-riskiest-part = decide la parte que se echa a perder antes.
match-taken-as = lo tomé como { OURS($food) }.
match-raw-assumed = lo tomé como crudo.
match-cooked-assumed = lo tomé como cocido.
match-not-in-table = no está en ninguna tabla.
match-several-fit = coinciden varias, y tomé el plazo más corto.

# Pasos para calentar.
step-own-words = { $words }
step-move-to-dish = Pásalo a un recipiente apto para microondas.
step-break-up = Sepáralo y extiéndelo parejo.
step-cover-vent = Tápalo y deja una esquina abierta para que salga el vapor.
step-cover-foil = Tápalo con papel aluminio.
step-set-microwave = Caliéntalo en el microondas{ $seconds ->
    [none] {""}
   *[other] {" "}{ $seconds }
  }{ $watts ->
    [none] {""}
   *[other] , a { UN($watts) } vatios
  }.
step-set-microwave-short = Caliéntalo en el microondas de minuto en minuto.
step-stir = Revuélvelo, de la orilla al centro.
step-turn = Dale la vuelta.
step-heat-again = Caliéntalo otra vez{ $seconds ->
    [none] {""}
   *[other] , { $seconds }
  }.
step-stand = Déjalo reposar tapado{ $seconds ->
    [none] {""}
   *[other] , { $seconds }
  }.
step-probe = Mete el termómetro parlante en varios puntos. En todos debe decir { $temperature }.
step-probe-hold = Mete el termómetro parlante en varios puntos. Debe decir { $temperature } y mantenerse así { $hold }.
step-more-time = Todavía no: caliéntalo un minuto más y revisa otra vez.
step-preheat = Calienta el horno a { $temperature }.
step-into-oven = Mételo al horno{ $seconds ->
    [none] {""}
   *[other] , { $seconds }
  }.
step-into-air-fryer = Mételo a la freidora de aire{ $seconds ->
    [none] {""}
   *[other] , { $seconds }
  }.
step-shake-basket = Sacude la canasta.
step-into-pan = Ponlo en una olla.
step-add-splash = Agrega un chorrito de agua.
step-bring-to-boil = Hazlo hervir a borbotones: escucha el burbujeo rápido y constante.
step-simmer = Déjalo a fuego bajo, revolviendo.
step-into-steamer = Ponlo en la vaporera.
step-into-toaster = Ponlo en el horno tostador.
step-serve = Ya está.
step-keep-doors-shut = Deja cerradas las puertas del refrigerador y del congelador.
step-note-time = Fíjate a qué hora se fue la luz: { $time ->
    [none] dime la hora
   *[other] { $time }
  }.
step-move-perishables = Pasa lo que se echa a perder a una hielera con hielo si dura más de cuatro horas.
step-read-thermometer = Lee el termómetro del refrigerador y del congelador.
step-feel-ice-crystals = Toca cada comida congelada: ¿tiene hielo?
step-go-item-by-item = Revisa la comida una por una.
step-never-taste = Nunca pruebes la comida para averiguarlo.
step-raw-juice-discard = Tira todo lo que haya recibido jugos de carne cruda.
step-no-snow = No pongas la comida en la nieve.
step-dry-ice = El hielo seco mantiene frío el congelador: usa guantes y deja una ventana abierta.
step-when-in-doubt = Ante la duda, tíralo.
step-clean-up = Lava el refrigerador y tus manos.

# Lo que no se calienta, y por qué.
refusal-past-guidance = Según la guía hay que tirarlo, así que no digo cómo calentarlo.
refusal-reheated-already = Ya se recalentó, y la guía dice que una sola vez. Tira lo que queda.
refusal-takeaway-rice = El arroz de comida para llevar no se recalienta.
refusal-slow-cooker = La olla de cocción lenta calienta muy despacio para recalentar. Caliéntalo primero en una olla o en el microondas.
refusal-no-microwave-for-infants = No uses el microondas para la leche de un bebé.
refusal-method-unknown = No conozco esa manera de calentar. Hay microondas, horno, estufa, freidora de aire y vaporera.
refusal-not-for-reheating = Eso se come como está.
refusal-age-unknown = No está registrado cuánto tiempo tiene. Ante la duda, tíralo.

# Quien está en apuros: primero, a quién llamar.
urgent-emergency = Llama ahora a emergencias, { $number ->
    [nine-one-one] nueve uno uno
    [nine-nine-nine] nueve nueve nueve
   *[other] a su número
  }. La hinchazón o la falta de aire no esperan.
    .short = Llama ahora a emergencias, { $number ->
    [nine-one-one] nueve uno uno
    [nine-nine-nine] nueve nueve nueve
   *[other] a su número
  }.
urgent-ill = Pregunta ahora a un médico o a un centro de toxicología, y guarda la comida para ellos. Si cuesta respirar, tragar o estar despierto, llama a emergencias, { $number ->
    [nine-one-one] nueve uno uno
    [nine-nine-nine] nueve nueve nueve
   *[other] a su número
  }.
urgent-medicine = Eso es para un farmacéutico o un médico: pregúntales antes de comerlo. De medicinas no sé nada.
urgent-illness = Eso es para un médico o un dietista: pregúntales.
urgent-not-a-doctor = Llevo la cuenta de una cocina, y de un cuerpo no sé.
danger-container = No lo pruebes: tíralo, cerrado como está. Un envase hinchado, que gotea o que salpica puede envenenar sin ninguna señal.
    .short = No lo pruebes: tíralo.
danger-nameless = No lo pruebes: tíralo. Nadie puede decir qué hay dentro ni cómo se hizo.
    .short = No lo pruebes: tíralo.
danger-dented = Si la abolladura es honda o está en una costura, no lo pruebes: tíralo. En la duda, tíralo.
danger-mould = No lo pruebes ni lo huelas: tíralo. En la duda, tíralo.
    .short = No lo pruebes ni lo huelas: tíralo.
danger-mould-cut = Un pedazo entero de queso duro se puede cortar { $inches ->
    [one] una pulgada
   *[other] { $inches } pulgadas
  } o más alrededor y debajo del moho, sin tocarlo con el cuchillo. En rebanadas, rallado o blando: tíralo. Ante la duda, tíralo.
danger-smell = No lo pruebes: tíralo. Ni el aspecto ni el olor dicen qué enferma, y un mal olor es razón para tirarlo.
    .short = No lo pruebes: tíralo.
danger-sniff = Ni el aspecto ni el olor lo dicen. Cuenta cuánto tiempo y con cuánto frío se guardó; en la duda, tíralo.
    .short = Ni el aspecto ni el olor lo dicen. Ante la duda, tíralo.
danger-taste = No lo pruebes para saberlo. Cuenta cuánto tiempo y con cuánto frío se guardó; en la duda, tíralo.
    .short = No lo pruebes para saberlo.
urgent-recorded = Me dijeron que { OURS($name) } { contiene-o } { OURS($allergens) }.
allergy-not-taken = Eso no lo anoté: ¿quién no puede comer { OURS($allergens) }? Di, por ejemplo, Jack es alérgico a { OURS($allergens) }.
confirm-said-free = ¿Lo dice la etiqueta, o quien lo hizo: que { OURS($name) } no { contiene-o } { OURS($allergens) }? Sí o no.

# Una pregunta de guía, con lo que se contó.
guidance-elsewhere = No puedo decirlo: no sé qué tan frío es ese lugar, { $place }. Ante la duda, tíralo.
guidance-if-fridge = En el refrigerador sería { $span }.
guidance-cook-now = Lo que se descongeló así se cocina enseguida y no se guarda.
guidance-unheard = No entendí «{ $words }», así que no digo si se puede.
guidance-sell-by = La fecha de venta es para la tienda.
guidance-refreeze-yes = Sí: según la guía, lo que se descongeló en el refrigerador se puede volver a congelar.
guidance-refreeze-cook-first = Primero cocínalo: solo así se puede volver a congelar.
guidance-refreeze-no = No: eso no se vuelve a congelar.
guidance-refreeze-unknown = ¿Cómo se descongeló: en el refrigerador, en agua fría, en el microondas o fuera? En la duda, no lo vuelvas a congelar.
guidance-probe-yes = Sí, según la guía ya está bastante caliente.
    .short = Bastante caliente.
guidance-probe-no = Todavía no.
guidance-fridge-warm = Demasiado caliente para un refrigerador: la guía dice { $wanted } o menos.
guidance-fridge-cold = Bastante frío para un refrigerador: la guía dice { $wanted } o menos.
guidance-freezer-warm = Demasiado caliente para un congelador: la guía dice { $wanted } o menos.
guidance-freezer-cold = Bastante frío para un congelador: la guía dice { $wanted } o menos.
guidance-power-since = ¿Cuánto tiempo estuvo sin luz?
guidance-thaw-fridge = En el refrigerador, { $low }{ $high ->
    [none] {""}
   *[other] {" "}a { $high }
  }.
guidance-thaw-water = En agua fría, { $time }, cambiando el agua cada media hora.
guidance-thaw-weight = Eso es por cada libra.
guidance-boil = Si dudas de cómo se hizo la conserva, tírala. La guía dice hervirla { $time } antes de probarla, y un minuto más por cada mil pies de altura.
guidance-boil-there = Si dudas de cómo se hizo la conserva, tírala. A esa altura, la guía dice hervirla { $time } antes de probarla.
guidance-mix-formula = Guíate por la etiqueta de la fórmula o por una enfermera: no tengo cifra para mezclarla. Una vez mezclada, no la hiervas.
guidance-warm-infant = Pon el biberón en agua tibia, y no lo hiervas.
guidance-feed-over = No: la guía dice tirar lo que queda { $limit } después de empezar.
guidance-bottle-over = No: tíralo. La guía da a un biberón de fórmula dos horas desde que se prepara y una desde que empieza la toma.
guidance-bottle-until = Hasta { $by }{ $begun ->
    [yes] , según la guía
   *[no] , según la guía, o una hora desde que empezó la toma si es antes
  }; luego hay que tirarlo.
guidance-feed-within = Hasta { $limit } desde que empezó, según la guía; luego hay que tirarlo.
guidance-power-hours = Con las puertas cerradas, el refrigerador aguanta { $fridge }; el congelador lleno, { $full }, y a medias, { $half }.
guidance-power-until = Con la puerta cerrada, el refrigerador aguanta hasta { $until }, más o menos.
guidance-power-past = El refrigerador llevaba demasiado tiempo sin luz a { $until }: tira lo perecedero.
guidance-cool = En la cocina profesional la comida cocida se enfría { $stages } en total.
guidance-chill-hot = Directo al refrigerador, caliente como está: en recipientes bajos, en { $time }. La guía no pide enfriarlo antes.
    .short = Directo, en recipientes bajos, en { $time }.
guidance-slow-cooker-frozen = No: descongélalo primero. Congelado, la olla de cocción lenta lo calienta demasiado despacio.
guidance-feed-limit = Hasta { $limit } { $of ->
    [human] después de la toma
   *[formula] desde que empezó la toma
  }, según la guía; luego hay que tirar lo que queda.
danger-frost = Las partes secas o con escarcha son cosa de sabor: córtalas. Si estuvo siempre congelado, no se pierde por eso.
    .short = Es cosa de sabor: córtalo.
guidance-code-date = { $kind ->
    [bestBefore] Consumo preferente
    [sellBy] Fecha de venta
    [expiry] Caduca
    [production] Hecho
    [packaging] Envasado
   *[due] Vence
  }: { $day }.
guidance-code-wrong = El código da un día que no existe: puede que falle un dígito.
guidance-code-none = No encuentro ninguna fecha en esos dígitos. Una empieza por diecisiete si es caducidad, o por quince si es consumo preferente.
guidance-cool-stage = a { $to } en { $time }
guidance-cool-late = Eso es demasiado lento: tíralo.
guidance-cool-so-far = A tiempo hasta ahora.
guidance-roast = { $method ->
    [oven] En el horno
    [grill] A la parrilla
    [braise] Guisado
    [simmer] Cubierto de agua, a fuego lento
    [slow-cooker] En la olla lenta
   *[skillet] En el sartén
  }{ $oven ->
    [none] {""}
   *[other] {" "}a { $oven }
  }, { $time }{ $per ->
    [pound] {" "}por libra
   *[all] {""}
  }.
guidance-roast-span = { $high ->
    [none] unas { $low }
   *[other] { $low } a { $high }
  }
guidance-roast-weights = Eso se publicó para { $from } a { $to } libras.
guidance-roast-done = Listo a { $temperature } por dentro.
cook-to = { $temperature } por dentro{ $rest ->
    [none] {""}
   *[other] , luego { $rest } de reposo
  }{ $hold ->
    [none] {""}
   *[other] , durante { $hold }
  }, para { $food }.
    .short = { CAP($temperature) }{ $rest ->
    [none] {""}
   *[other] , { $rest } de reposo
  }{ $hold ->
    [none] {""}
   *[other] , durante { $hold }
  }.
cook-to-each = { CAP($food) }{ $again ->
    [yes] , al recalentar
   *[no] {""}
  }: { $temperature }{ $rest ->
    [none] {""}
   *[other] , luego { $rest } de reposo
  }{ $hold ->
    [none] {""}
   *[other] , durante { $hold }
  }.
cook-if-poultry = Si lleva pollo o pavo, { $temperature }.
cook-boil = Las sopas y salsas, hasta que hiervan bien.
thaw-counter-no = No: la guía dice que nunca sobre la mesa ni en agua caliente.
guidance-fridge-lost = Lo perecedero pasó dos horas o más sin frío: tíralo.
power-one = { $name }: { $verdict ->
    [keep] la guía dice que se conserva.
    [discard] hay que tirarlo, { $reason }.
    [discard-in-doubt] ante la duda, tíralo: { $reason }.
    [use-now] úsalo ahora, { $reason }.
    [check] primero busca hielo o usa un termómetro: { $reason }.
   *[other] { $reason }.
  }
power-door-shut-within-hours = las puertas estuvieron cerradas y no se pasó el plazo
power-still-cold = sigue bastante frío
power-table-keep = la guía dice que se conserva
power-table-discard = la guía dice que sin frío no se conserva
power-table-refreeze = la guía dice que se puede volver a congelar
power-table-refreeze-loss = se puede volver a congelar, con algo menos de calidad
power-hours-not-over = no se pasaron sus horas
power-hours-over = se pasaron sus horas
power-check-signs = tíralo si hay moho, olor a levadura o baba
power-past-hours-check = se pasaron las horas, así que hay que revisarlo
power-not-in-table = no está en ninguna tabla
power-unknown-temperature = nadie sabe cuánto se calentó
power-opened-within-hours = se abrió la puerta
power-not-affected = se conserva sin frío

# Descongelar y etiquetas.
thaw-start-fridge = Pásalo ahora al refrigerador.
thaw-low-shelf-on-tray = Ponlo en la repisa más baja, en una charola, para que no gotee sobre otra comida.
thaw-start-cold-water = Ponlo en agua fría.
thaw-change-water = Cambia el agua cada treinta minutos.
thaw-leak-proof-bag = Mételo en una bolsa que no deje pasar agua.
thaw-cook-at-once = Cocínalo en cuanto se descongele.
thaw-keeps-days-after = Descongelado en el refrigerador, aguanta uno o dos días más antes de cocinarlo.
thaw-check-thawed = Siente que no quede hielo en el centro.
thaw-microwave-book = En el microondas, sigue su manual y cocina enseguida.
thaw-cook-from-frozen = Se puede cocinar desde congelado: como la mitad más de tiempo.
thaw-never-on-counter = Nunca descongeles fuera del frío ni en agua caliente.
thaw-weight-unknown = No está registrado cuánto pesa, así que esto es para una pieza pequeña.
thaw-refreeze-raw-ok = Descongelado en el refrigerador, se puede volver a congelar.
thaw-cook-before-refreezing = Cocínalo antes de volver a congelarlo.
thaw-use-within-day = Úsalo antes de veinticuatro horas de descongelado.
guidance-claim = { CAP(OURS($claim)) } quiere decir { $strict ->
    [yes] menos de
   *[no] como máximo
  } { $limit } { $unit ->
    [mg] miligramos
    [g] gramos
   *[ppm] partes por millón
  } de { OURS($nutrient) } en { $per ->
    [serving] una porción normal
    [food] el alimento
    [grams] cien gramos
   *[other] cien gramos o mililitros
  }.
guidance-claim-gluten-free = No es lo mismo que no llevar trigo: oye qué dice su lista de lo que contiene.
guidance-claim-unsalted = Sin sal añadida quiere decir que no se le puso sal. No quiere decir sin sodio: la comida tiene el suyo.
guidance-claim-unknown = No tengo regla para eso. Guíate por las cifras de la etiqueta.
guidance-label-useBy-safety = La caducidad es una fecha de seguridad: después no se come, ni se cocina, ni se congela. El aspecto y el olor no avisan.
guidance-label-useBy-quality = Es el último día de mejor calidad; en fórmula infantil es fecha de seguridad. Lo cuento como el último día.
guidance-label-bestBefore-quality = El consumo preferente habla de calidad y sabor. No es fecha de seguridad.
guidance-label-sellBy-quality = La fecha de venta es para la tienda. No es fecha de seguridad.
