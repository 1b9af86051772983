import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
// An outside reading of number words, independent of the library that writes them.
import { wordsToNumbers } from 'words-to-numbers';
import { numberWords, ordinalWords, yearWords } from '../../src/speech/english/numbers.js';
import { inGb, inUs, say, spoken } from './helpers.js';

describe('numbers in words', () => {
  it('come back as the same number when read by an outside library', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9_999 }),
        fc.constantFrom('us' as const, 'gb' as const),
        (n, region) => {
          const words = numberWords(n, region);
          expect(words).not.toMatch(/\d/);
          expect(Number(wordsToNumbers(words))).toBe(n);
        },
      ),
    );
  });

  it('differ from every other number’s words', () => {
    const all = Array.from({ length: 2_000 }, (_, n) => numberWords(n, 'us'));
    expect(new Set(all).size).toBe(2_000);
    const ordinals = Array.from({ length: 500 }, (_, n) => ordinalWords(n + 1, 'gb'));
    expect(new Set(ordinals).size).toBe(500);
  });

  it('never hold digits, whatever the number', () => {
    fc.assert(
      fc.property(fc.double({ noDefaultInfinity: false }), (n) => {
        expect(numberWords(n, 'us')).toMatch(/^[a-z -]+$/);
      }),
    );
  });

  it.each([
    [0, 'zero'],
    [0.5, 'a half'],
    [1.5, 'one and a half'],
    [2.25, 'two and a quarter'],
    [2.75, 'two and three quarters'],
    [1 / 3, 'a third'],
    [1.2, 'one point two'],
    [2.05, 'two point zero five'],
    [0.999, 'one'],
    [-18, 'minus eighteen'],
    [350, 'three hundred fifty'],
  ])('says %d as "%s"', (n, words) => expect(inUs(n)).toBe(words));

  it('has the British "and" after hundreds', () => {
    expect(inGb(165)).toBe('one hundred and sixty-five');
    expect(ordinalWords(112, 'gb')).toBe('one hundred and twelfth');
    expect(ordinalWords(112, 'us')).toBe('one hundred twelfth');
  });

  it.each([
    [2026, 'twenty twenty-six'],
    [2005, 'two thousand five'],
    [1999, 'nineteen ninety-nine'],
    [2101, 'twenty-one oh one'],
    [2100, 'twenty-one hundred'],
  ])('says the year %d as "%s"', (year, words) => expect(yearWords(year, 'us')).toBe(words));

  it('counts from the end', () => {
    expect(inUs({ kind: 'ordinal', n: -1 })).toBe('last');
    expect(inUs({ kind: 'ordinal', n: -2 })).toBe('last but one');
    expect(inUs({ kind: 'ordinal', n: -3 })).toBe('third from last');
  });

  it('turns digits in our own phrases into words and leaves the household’s alone', () => {
    expect(spoken(say('test-digits'))).toBe('Heat it for three minutes at eight hundred watts.');
    expect(spoken(say('test-where', { state: '2% milk crate 7' }))).toBe('In the 2% milk crate 7.');
  });
});

describe('letters', () => {
  it('are said one by one', () => {
    expect(inUs({ kind: 'letters', text: "Amara's 2" })).toBe('A, M, A, R, A, apostrophe, S, space, two');
    expect(inUs({ kind: 'letters', text: 'crème 🥄' })).toBe('C, R, È, M, E, space, another sign');
  });
});
