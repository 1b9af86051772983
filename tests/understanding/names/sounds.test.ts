import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alternativesFor, soundsLike as alikeIn } from '../../../src/understanding/names/index.js';
import { lexiconFor } from '../../../src/understanding/words/index.js';

const lexicon = lexiconFor('en');
const soundsLike = (a: string, b: string): number => alikeIn(a, b, lexicon);
const word = fc.constantFrom(
  'thyme',
  'lentil',
  'stew',
  'harissa',
  'zaatar',
  'yoghurt',
  'flour',
  'amara',
  'jollof',
  'egusi',
  'milk',
  'brie',
);

describe('how alike words sound', () => {
  it.each([
    ['leek', 'leak'],
    ['flour', 'flower'],
    ['chili', 'chilly'],
    ['chilli', 'chili'],
    ['beet', 'beat'],
    ['mussels', 'muscles'],
  ])('%s and %s are one', (a, b) => expect(soundsLike(a, b)).toBe(1));

  it.each([
    ['lean till stew', 'lentil stew'],
    ['lentils to', 'lentil stew'],
    ['yoghurt', 'yogurt'],
    ['lasagne', 'lasagna'],
    ['mince', 'mints'],
    ['thyme', 'time'],
    ['her issa', 'harissa'],
  ])('%s and %s are near', (a, b) => expect(soundsLike(a, b)).toBeGreaterThan(0.85));

  it.each([
    ['milk', 'bread'],
    ['lentil stew', 'chicken soup'],
    ['chicken', 'kitchen'],
    ['salt', 'pepper'],
  ])('%s and %s are not', (a, b) => expect(soundsLike(a, b)).toBeLessThan(0.8));

  it('is the same both ways, and whole for a word and itself', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(soundsLike(a, b)).toBeCloseTo(soundsLike(b, a), 6);
        expect(soundsLike(a, a)).toBe(1);
        expect(soundsLike(a, b)).toBeGreaterThanOrEqual(0);
        expect(soundsLike(a, b)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('takes a name that every object has for a word', () => {
    expect(soundsLike('constructor', 'constructor')).toBe(1);
    expect(soundsLike('constructor', 'conductor')).toBeGreaterThan(0.5);
  });

  it('takes any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), fc.string({ maxLength: 80 }), (a, b) => {
        const likeness = soundsLike(a, b);
        expect(likeness >= 0 && likeness <= 1).toBe(true);
      }),
    );
  });
});

describe('words that recognisers mistake', () => {
  it.each([
    ['saw', 'thaw'],
    ['but', 'put'],
    ['repeat', 'reheat'],
    ['received', 'reheat'],
    ['shelf as', 'shelf has'],
    ['lead', 'lid'],
    ['rights', 'rice'],
    ['twelve', 'twelfth'],
  ])('%j may have been %j', (heard, meant) => expect(alternativesFor(heard, lexicon)).toContain(meant));

  it('has nothing for a word that was never mistaken', () => {
    expect(alternativesFor('harissa', lexicon)).toEqual([]);
    expect(alternativesFor('constructor', lexicon)).toEqual([]);
  });
});
