# Género y número de los nombres, donde la terminación engaña. Palabras sueltas, en minúsculas.

# Terminan en «s» y son una sola cosa.
nouns-singular = cuscús, cuscus, anís, couscous, hummus, res, quiches, asparagus, swiss, bies, gas, lunes, martes, miércoles, jueves, viernes, mus, jus
nouns-feminine = leche, carne, nieve, nuez, sal, miel, col, coliflor, res, parte, base, noche, tarde, torre, mousse, quiche, fuente, llave, piel, crème, flor, cruz, raíz, hiel, sangre, clase
nouns-masculine = día, mapa, clima, problema, tema, sofá, té, café, paté, pez, ajonjolí, ají, maíz, arroz, pan, flan, jerez, tequila, pijama, vodka, agua fresca, orégano, curry
# Femeninos que en singular llevan «el»: el agua, el ave.
nouns-stressed-a = agua, ave, alga, alma, ala, área, aula
# Singular/plural que la regla no da.
nouns-plurals = chile/chiles, tamal/tamales, frijol/frijoles, aceite/aceites, tomate/tomates, jitomate/jitomates, aguacate/aguacates, limón/limones, mole/moles, nopal/nopales, jamón/jamones, pastel/pasteles, molde/moldes, verde/verdes, grande/grandes, dulce/dulces, envase/envases, bote/botes, elote/elotes, picante/picantes, nuez/nueces, lápiz/lápices, tazón/tazones, cajón/cajones, atún/atunes, camarón/camarones, melón/melones, ratatouille/ratatouilles, crujiente/crujientes, recipiente/recipientes, estante/estantes
