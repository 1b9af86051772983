/**
 * A conversation in Spanish through the whole engine: a household of its own, and an English one
 * that is asked in Spanish.
 */
import { afterEach, describe, expect, it } from 'vitest';
import type { Kitchen } from '../../src/kitchen/model.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import type { TurnReply, TurnRequest } from '../../shared/wire/turn.js';
import { JUEVES, spanishKitchen } from '../support/spanish-kitchen.js';
import { kitchenOf } from '../support/service.js';

const stores: Store[] = [];
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

/** A device of a household; what it is told, and every fault of the phrase files on the way. */
const talkingTo = async (kitchen: Kitchen) => {
  const store = openSqliteStore(':memory:');
  stores.push(store);
  await store.migrate();
  await store.createHousehold(kitchen, JUEVES.now);
  const faults: string[] = [];
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => void faults.push(error.message)),
    now: () => JUEVES.now,
  });
  const speaker = { householdId: kitchen.household.id, deviceId: 'bocina', personId: null };
  let turns = 0;
  const ask = (text: string, more: Partial<TurnRequest> = {}): Promise<TurnReply> => {
    turns += 1;
    return households.takeTurn(speaker, {
      id: `turno-${turns}`,
      conversation: 'cocina',
      hypotheses: [{ text }],
      ...more,
    });
  };
  const hear = async (text: string, more: Partial<TurnRequest> = {}): Promise<string> =>
    (await ask(text, more)).speech.text;
  return { ask, hear, faults, households };
};

describe('an evening in Spanish', () => {
  it('finds, tells the age, warns, heats a step at a time and undoes', async () => {
    const { hear, ask, faults } = await talkingTo(spanishKitchen());
    expect(await hear('Buenas tardes')).toBe('Hola. ¿Qué hacemos?');
    expect(await hear('¿Dónde está el guiso de lentejas?')).toBe(
      'El guiso de lentejas está en la segunda repisa del refrigerador, un envase grande de plástico con la cuenta de madera.',
    );
    expect(await hear('¿dónde están los frijoles negros?')).toBe(
      'Frijoles negros, hay dos. En la canasta izquierda del congelador, un envase chico. ' +
        'En la primera repisa del refrigerador, un frasco grande con la cuerda con un nudo.',
    );
    expect(await hear('el del congelador')).toBe(
      'Los frijoles negros están en la canasta izquierda del congelador, un envase chico.',
    );
    expect(await hear('¿Hay leche?')).toBe('Sí, la leche está en la puerta del refrigerador.');
    expect(await hear('¿cuántos huevos quedan?')).toBe('Seis huevos. En la primera repisa del refrigerador.');
    expect(await hear('¿hay mermelada?')).toBe('No tengo mermelada en el registro.');
    expect(await hear('¿Cuánto tiempo tiene el guiso de lentejas?')).toBe(
      'Guiso de lentejas: se hizo el martes pasado, hace dos días. Dentro de la guía hasta el sábado.',
    );
    expect(await hear('¿Todavía está bueno el arroz?')).toBe(
      'Arroz blanco: pasó el plazo de la guía, así que hay que tirarlo. La guía da tres a cuatro días; se pasó por un día.',
    );
    expect(await hear('¿quién lo dice?')).toMatch(/Fuente: USDA/);
    expect(await hear('¿qué uso primero?')).toMatch(
      /hay que tirarlo: arroz blanco en la primera repisa del refrigerador\.$/,
    );

    expect(await hear('¿cómo caliento el guiso de lentejas en el microondas?')).toBe(
      'Guiso de lentejas en el microondas, ocho pasos. Pásalo a un recipiente apto para microondas.',
    );
    expect(await hear('siguiente')).toBe('Tápalo y deja una esquina abierta para que salga el vapor.');
    const heating = await hear('siguiente');
    expect(heating).toBe('Caliéntalo en el microondas un minuto y quince segundos, a mil vatios.');
    expect(await hear('repite, por favor')).toBe(heating);
    expect(await hear('¿cuántos pasos faltan?')).toBe('Faltan cinco después de este.');
    expect(await hear('siguiente')).toBe(
      'Va a salir vapor muy caliente: ábrelo del lado contrario a tu cara y tus manos. Revuélvelo, de la orilla al centro.',
    );
    await hear('siguiente');
    await hear('siguiente');
    expect(await hear('siguiente')).toMatch(
      /En todos debe decir ciento sesenta y cinco grados Fahrenheit\.$/,
    );
    expect(await hear('listo')).toBe(
      'Último paso. El recipiente estará caliente: usa guantes de cocina. Ya está.',
    );

    expect(await hear('cómo caliento el arroz')).toMatch(/¿Anoto arroz blanco como tirado\?$/);
    const thrown = await ask('sí');
    expect(thrown.speech.text).toBe('Arroz blanco: se tiró. Queda libre la liga.');
    expect(thrown.changes).toHaveLength(1);
    const undone = await ask('deshaz eso');
    expect(undone.speech.text).toBe('Deshecho: arroz blanco está otra vez en el registro.');
    expect(await hear('deletréalo')).toBe('A, R, R, O, Z, espacio, B, L, A, N, C, O.');
    expect(await hear('pon música')).toBe(
      'Solo me ocupo de la comida de esta cocina: dónde está, de cuándo es y cómo se calienta.',
    );
    expect(await hear('muchas gracias')).toBe('De nada.');
    expect(await hear('hasta luego')).toBe('Hasta luego.');
    expect(faults).toEqual([]);
  });

  it('asks before anything is thrown out, and a no changes nothing', async () => {
    const { ask, hear } = await talkingTo(spanishKitchen());
    await hear('cómo caliento el arroz');
    const refused = await ask('no, gracias');
    expect(refused.changes).toEqual([]);
    expect(await hear('¿dónde está el arroz?')).toMatch(/^El arroz blanco está en la primera repisa/);
  });

  it('knows raw food by its Spanish name, with its shorter time', async () => {
    const { hear } = await talkingTo(spanishKitchen());
    expect(await hear('¿cuánto dura el pescado crudo en el refrigerador?')).toMatch(
      /^Pescado crudo, en el refrigerador: uno a tres días, según la guía\./,
    );
    expect(await hear('¿cuánto dura el caldo de pollo en el refrigerador?')).toMatch(/tres a cuatro días/i);
  });

  it('speaks in sentences marked as Spanish', async () => {
    const { ask } = await talkingTo(spanishKitchen());
    expect((await ask('¿hay leche?')).speech.ssml).toContain('xml:lang="es-MX"');
  });
});

describe('what could hurt somebody, in Spanish', () => {
  it('gives room temperature its own figure, and none of the fridge where no place is said', async () => {
    const { hear, faults } = await talkingTo(spanishKitchen());
    for (const where of ['en la mesa', 'fuera del refrigerador', 'a temperatura ambiente'])
      expect(await hear(`¿cuánto tiempo puedo dejar el pollo ${where}?`)).toBe(
        'Pollo fuera del refrigerador: dos horas, según la guía; una hora a más de noventa grados Fahrenheit.',
      );
    expect(await hear('¿cuánto dura el pollo?')).toMatch(
      /^Pollo, según la guía: uno a dos días en el refrigerador, .* en el congelador y dos horas fuera del frío\./,
    );
    expect(await hear('¿cuánto dura el pollo cocido en la nevera?')).toMatch(/tres a cuatro días/);
    expect(await hear('dejé el pollo en la ventana tres horas, ¿está bueno?')).toMatch(/^No puedo decirlo/);
    expect(faults).toEqual([]);
  });

  it('records what stood out too long, and it stays too long', async () => {
    const { ask, hear } = await talkingTo(spanishKitchen());
    const out = await ask('el guiso de lentejas lleva cuatro horas fuera del refrigerador, ¿lo puedo comer?');
    expect(out.speech.text).toMatch(/hay que tirarlo\. Estuvo fuera cuatro horas; la guía permite dos horas/);
    expect(out.changes).toHaveLength(1);
    expect(await hear('no')).not.toMatch(/tirado/);
    expect(await hear('¿todavía está bueno el guiso de lentejas?')).toMatch(/hay que tirarlo/);
  });

  it.each([
    ['la lata de frijoles está hinchada', /^No lo pruebes: tíralo/],
    ['¿puedo comer esto? el frasco gotea', /^No lo pruebes: tíralo/],
    ['la lata está abombada y la abrí', /^No lo pruebes: tíralo/],
    ['hay moho en los frijoles negros', /^No lo pruebes/],
    ['la leche huele raro', /^No lo pruebes/],
    ['se me está hinchando la lengua', /^Llama ahora a emergencias, nueve uno uno/],
    ['a mi hija le cuesta respirar', /^Llama ahora a emergencias/],
    ['le falta el aire después de comer el guiso', /^Llama ahora a emergencias/],
    ['me siento mal después de comer el guiso', /^Pregunta ahora a un médico/],
    ['vomité toda la noche', /^Pregunta ahora a un médico/],
  ])('%s', async (said, first) => {
    const { ask } = await talkingTo(spanishKitchen());
    const told = await ask(said);
    expect(told.speech.text).toMatch(first);
    expect(told.changes).toEqual([]);
  });

  it('takes an allergy that is told, with both kinds of nut until one is said', async () => {
    const { ask, hear, households } = await talkingTo(spanishKitchen());
    const watching = async (name: string) =>
      [...(await households.look('ines')).kitchen.people.values()].find((one) => one.name === name)
        ?.allergens;
    await ask('Inés es alérgica a los camarones');
    expect(await watching('Inés')).toEqual(['crustaceans']);
    expect(await hear('mi nieto Beto no puede comer nueces')).toMatch(/^Beto ya come aquí\. .*Beto no come/);
    expect(await watching('Beto')).toEqual(['tree nuts', 'peanuts']);
    await hear('ambos');
    expect(await hear('¿el guiso de lentejas contiene leche?')).toMatch(/^No se sabe/);
    expect(await hear('el guiso de lentejas tiene cacahuates')).toMatch(/contiene cacahuates/);
    expect(await hear('¿el guiso de lentejas contiene cacahuates?')).toMatch(/^Sí/);
  });

  it('hears what was said in English within the same talk, and Spanish as Spanish', async () => {
    const { ask, hear } = await talkingTo(spanishKitchen());
    const put = await ask('puse pan en la despensa');
    expect(put.speech.text).toBe('Pan en la despensa.');
    expect(put.changes).toHaveLength(1);
    const english = await ask('put bread in the despensa');
    expect(english.speech.text).toMatch(/^Bread .*despensa/);
    const done = english.changes.length > 0 ? english : await ask('yes');
    expect(done.changes).toHaveLength(1);
    expect(await hear('¿dónde está la leche?')).toMatch(/^La leche está/);
  });
});

describe('an English household asked in Spanish', () => {
  const spanish = { locale: 'es-419' };

  it('answers in Spanish and keeps its names', async () => {
    const { hear, faults } = await talkingTo(kitchenOf('marta'));
    expect(await hear('¿dónde está la lentil stew?', spanish)).toMatch(/lentil stew/);
    expect(await hear('¿dónde está la lentil stew?', spanish)).not.toMatch(/\b(the|in|on|is|are)\b/);
    expect(await hear('ayuda', spanish)).toMatch(/^Pregunta dónde está una comida/);
    expect(faults).toEqual([]);
  });

  it('goes on in English when the next turn is English', async () => {
    const { hear } = await talkingTo(kitchenOf('marta'));
    await hear('hola', spanish);
    expect(await hear('hello')).toBe('Hello. What shall we do?');
  });
});

describe('what has no wording', () => {
  it('is said to be missing, whole, and reported', async () => {
    const { households, faults } = await talkingTo(spanishKitchen());
    const around = await households.look('ines');
    const inner = { kind: 'say', phrase: 'item-name', args: { name: 'arroz' } } as const;
    const spoken = households.say(around, {
      parts: [
        { kind: 'say', phrase: 'all-right' },
        {
          kind: 'say',
          phrase: 'of-no-file',
          args: { label: inner, time: { kind: 'duration', seconds: 60 } },
        },
        { kind: 'say', phrase: 'nor-this', args: { left: 3 } },
      ],
    });
    expect(spoken.text).toMatch(/^Está bien\. \S/);
    expect(spoken.text).not.toMatch(/\b(the|is|of)\b/);
    expect(faults).toHaveLength(2);
  });
});
