/** What a sentence says beside its request and its things. */
import { describe, expect, it } from 'vitest';
import { qualifiersIn } from '../../src/understanding/qualifiers.js';
import type { Qualifier } from '../../src/protocol/qualifiers.js';

const has = (text: string, name: Qualifier, locale = 'en-US'): boolean =>
  qualifiersIn(text, locale).includes(name);

describe('what qualifies a sentence', () => {
  it.each<[string, Qualifier, boolean]>([
    ['The old tub of chilli, please', 'older', true],
    ['the coldest tub', 'older', false],
    ['And just in the freezer', 'just', true],
    ['in the freezer, just there', 'just', false],
    ['has it been opened?', 'has-been', true],
    ['so has it been opened?', 'has-been', true],
    ['tell me if it has been opened', 'has-been', false],
    ["what's the temperature again, then?", 'heat-alone', true],
    ["what's the temperature for chicken", 'heat-alone', false],
    ['how long does chicken keep in the fridge', 'hers', false],
    ['how long does the chicken keep in the fridge', 'hers', true],
    ['from 17:00', 'half-of-day', true],
    ['from five', 'half-of-day', false],
    ['I was practising', 'practise', true],
    ['where we were', 'few-words', true],
    ['where we were with the check', 'few-words', false],
  ])('%s: %s is %s', (text, name, there) => expect(has(text, name)).toBe(there));

  it.each<[string, Qualifier, boolean]>([
    ['¿Y solo en el congelador?', 'just', true],
    ['y solo en el congelador', 'just', true],
    ['a las cinco de la tarde', 'half-of-day', true],
    ['a las cinco', 'half-of-day', false],
    ['¿todavía hay leche?', 'whether', true],
  ])('%s: %s is %s', (text, name, there) => expect(has(text, name, 'es-MX')).toBe(there));

  it('is nothing in silence', () => expect(qualifiersIn('  ', 'en-US')).toEqual([]));
});
