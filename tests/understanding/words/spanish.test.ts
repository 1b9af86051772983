/** A second language is word lists alone: the same rules read Latin American Spanish. */
import { describe, expect, it } from 'vitest';
import { dateRules } from '../../../src/understanding/dates/index.js';
import { createHouseholdNames } from '../../../src/understanding/names/index.js';
import { numberRules, timeRules } from '../../../src/understanding/numbers/index.js';
import { touchRules } from '../../../src/understanding/touch/index.js';
import { lexiconFor, normalise } from '../../../src/understanding/words/index.js';

const locale = 'es-MX';
const lexicon = lexiconFor(locale);
/** Wednesday 13 May 2026. */
const clock = { now: '2026-05-13T18:00:00.000Z', timeZone: 'America/Mexico_City' };
const names = createHouseholdNames(locale);
names.set('item', { id: 'guiso', name: 'guiso de lentejas' });
names.set('item', { id: 'frijoles', name: 'frijoles negros' });
names.set('place', {
  id: 'refri',
  parentId: null,
  name: 'refrigerador',
  kind: 'fridge',
  position: null,
  aliases: [],
});
for (const [at, name] of ['primera', 'segunda', 'tercera'].entries()) {
  names.set('place', {
    id: name,
    parentId: 'refri',
    name: `${name} repisa`,
    kind: 'shelf',
    position: at + 1,
    aliases: [],
  });
}
const rules = new Map([
  ...numberRules(lexicon),
  ...timeRules(lexicon, '15:00'),
  ...touchRules(lexicon),
  ...dateRules(lexicon, clock, locale),
  ...names.rules,
]);
const read = (rule: string, text: string): unknown => {
  const { tokens } = normalise(text, locale);
  return rules
    .get(rule)!
    .matchesAt(tokens, 0)
    .find(({ length }) => length === tokens.length)?.value;
};

describe('Spanish', () => {
  it.each([
    ['oye, ¿dónde está la leche, por favor?', 'dónde está la leche'],
    ['eh me puedes decir qué hay en la nevera', 'qué hay en la nevera'],
    ['dos, no, tres frascos', 'tres frascos'],
    ['45 gramos', 'cuarenta y cinco gramos'],
  ])('tidies %j', (text, tidied) => expect(normalise(text, locale).tokens.join(' ')).toBe(tidied));

  it.each<[string, string, unknown]>([
    ['builtin:grammar/number', 'doscientos cuarenta y cinco', 245],
    ['builtin:grammar/number', 'dos y media', 2.5],
    ['builtin:grammar/number', 'media docena', 6],
    ['builtin:grammar/ordinal', 'segunda', 2],
    ['builtin:grammar/amount', 'tres frascos', { value: 3, unit: 'jar' }],
    ['builtin:grammar/amount', 'medio kilo', { value: 0.5, unit: 'kilogram' }],
    ['builtin:grammar/duration', 'diez minutos', 600],
    ['builtin:grammar/boolean', 'claro que sí', true],
    ['builtin:grammar/date?lean=past', 'anteayer', { day: '2026-05-11' }],
    ['builtin:grammar/date?lean=past', 'hace dos semanas', { day: '2026-04-29' }],
    ['builtin:grammar/date?lean=past', 'el nueve de junio', { day: '2025-06-09' }],
    ['builtin:grammar/date?lean=window', 'esta semana', { day: '2026-05-11', until: '2026-05-17' }],
    [
      'kitchen:touch',
      'el frasco grande con pinza cuadrada',
      { container: 'jar', size: 'large', fastening: 'clip', shape: 'square' },
    ],
  ])('%s reads %j', (rule, text, value) => expect(read(rule, text)).toEqual(value));

  it('finds names by word and by sound', () => {
    expect(names.find('item', 'guiso de lentejas')[0]).toEqual({ id: 'guiso', fit: 1 });
    expect(names.find('item', 'frijoles')[0]?.id).toBe('frijoles');
    expect(names.find('item', 'guizo de lentejas')[0]?.id).toBe('guiso');
  });

  it('finds places by kind and position', () => {
    expect(read('kitchen:place', 'la segunda repisa del refrigerador')).toMatchObject({
      candidates: [{ id: 'segunda' }],
    });
    expect(read('kitchen:place', 'la repisa de abajo')).toMatchObject({ candidates: [{ id: 'tercera' }] });
    expect(read('kitchen:place', 'la nevera')).toMatchObject({ candidates: [{ id: 'refri' }] });
  });
});
