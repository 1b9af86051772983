/**
 * Sentences sampled from the project's own grammars, each through to an answer on the demo kitchen: none
 * throws. What a grammar accepts, the meaning table must be able to read and the dialogue to answer.
 */
import { describe, expect, it } from 'vitest';
import { decide, startConversation } from '../../src/dialogue/index.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { createSampler, openGrammarFile } from '../../src/grammar/tools.js';
import { createUnderstander, given, createHouseholdNames } from '../../src/understanding/index.js';

/** A small repeatable source of numbers from 0 up to 1 (Mulberry32). */
const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
};

/** What is said for a rule that only the household can fill. */
const spoken: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  en: {
    'kitchen:item': ['lentil stew', 'milk', 'bean chilli', 'salmon fillets', 'hummus'],
    'kitchen:food': ['chicken', 'brie', 'cooked rice', 'trout'],
    'kitchen:person': ['dele', 'peter'],
    'kitchen:owner': ["dele's"],
    'kitchen:place': ['the second shelf', 'the chest freezer', 'the pantry', 'the door'],
    'kitchen:marker': ['the wooden bead'],
    'kitchen:touch': ['a large tub', 'a glass jar'],
    'kitchen:words': ['maple grove', 'something blue'],
    'kitchen:message': ['the soup is hers'],
    'kitchen:goods': ['foil'],
    'builtin:grammar/number': ['two', 'seven'],
    'builtin:grammar/whole': ['three', 'twelve'],
    'builtin:grammar/ordinal': ['second', 'last'],
    'builtin:grammar/amount': ['two portions', 'half a pound'],
    'builtin:grammar/share': ['half', 'a third'],
    'builtin:grammar/duration': ['two hours', 'ten minutes'],
    'builtin:grammar/time': ['noon', 'half past six'],
    'builtin:grammar/temperature': ['ninety degrees', 'forty degrees fahrenheit'],
    'builtin:grammar/watts': ['eight hundred watts'],
    'builtin:grammar/digits': ['four one five nine two six five three'],
    'builtin:grammar/letters': ['h a r i s s a'],
    'builtin:grammar/boolean': ['yes'],
    'builtin:grammar/date': ['tuesday', 'may third'],
  },
  es: {
    'kitchen:item': ['guiso de lentejas', 'leche', 'sopa'],
    'kitchen:food': ['pollo', 'arroz', 'queso'],
    'kitchen:person': ['dele', 'peter'],
    'kitchen:owner': ['dele'],
    'kitchen:place': ['el segundo estante', 'la puerta'],
    'kitchen:marker': ['el broche'],
    'kitchen:touch': ['un frasco de vidrio'],
    'kitchen:words': ['algo azul'],
    'kitchen:message': ['la sopa es suya'],
    'kitchen:goods': ['papel'],
    'builtin:grammar/number': ['dos', 'siete'],
    'builtin:grammar/whole': ['tres'],
    'builtin:grammar/ordinal': ['segundo'],
    'builtin:grammar/amount': ['dos porciones'],
    'builtin:grammar/share': ['la mitad'],
    'builtin:grammar/duration': ['dos horas', 'diez minutos'],
    'builtin:grammar/time': ['las seis'],
    'builtin:grammar/temperature': ['noventa grados'],
    'builtin:grammar/watts': ['ochocientos watts'],
    'builtin:grammar/digits': ['cuatro uno cinco'],
    'builtin:grammar/letters': ['a b c'],
    'builtin:grammar/boolean': ['sí'],
    'builtin:grammar/date': ['martes'],
  },
};

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const kitchen = demoKitchen(clock);

/** Sentences of each public rule of `main.gram`; `act` holds every request there is, and gets ten times as many. */
const perRule = Number(process.env['SENTENCES'] ?? 30);

describe.each([
  ['en', 'en-US'],
  ['es', 'es-MX'],
])('every sentence of the grammars, %s', (language, locale) => {
  const names = createHouseholdNames(locale);
  for (const item of kitchen.items.values()) names.set('item', item);
  for (const place of kitchen.places.values()) names.set('place', place);
  for (const person of kitchen.people.values()) names.set('person', person);
  for (const marker of kitchen.markers.values()) names.set('marker', marker);
  const understander = createUnderstander(locale);
  const grammar = openGrammarFile(projectFile('grammars', language, 'main.gram'), {
    roots: [projectFile('grammars', language)],
  });
  const sample = createSampler(grammar);
  const say = (uri: string, random: () => number) => {
    const words = spoken[language]?.[uri] ?? spoken[language]?.[uri.replace(/\?.*$/, '')] ?? [uri];
    return { tokens: (words[Math.floor(random() * words.length)] ?? '').split(' '), value: null };
  };

  /** The public rules of each file, so that rare requests are sampled as often as frequent ones. */
  const files = grammar.publicRules;
  it.each(files)('%s', (rule) => {
    const random = seeded(11);
    const thrown: string[] = [];
    for (let i = 0; i < (rule === 'act' ? 10 : 1) * perRule; i += 1) {
      const { tokens } = safely(() => sample(rule, { random, host: say })) ?? { tokens: [] };
      if (tokens.length === 0 || tokens.length > 30) continue;
      const text = tokens.join(' ');
      try {
        const context = { ...clock, locale, expecting: 'anything' as const };
        const understanding = given(
          understander.understand([{ text }], names, context),
          text,
          names,
          context,
        );
        let next = 0;
        decide(
          startConversation(),
          { understanding, touched: null, cutAt: null, told: [] },
          {
            kitchen,
            journal: [],
            clock,
            speaker: { personId: null, deviceId: null, owner: true },
            newId: () => `id-${(next += 1)}`,
          },
        );
      } catch (error) {
        thrown.push(`${text}: ${(error as Error).message}`);
      }
    }
    expect(thrown).toEqual([]);
  });
});

/** A host value of null makes some tags fail while sampling: the words are what is wanted. */
function safely<T>(make: () => T): T | null {
  try {
    return make();
  } catch {
    return null;
  }
}
