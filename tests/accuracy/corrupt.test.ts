/** The mishearing of sentences is itself no more wrong than it says. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { annotated } from './cases.js';
import { corrupt, corruptGuesses, editDistance, readConfusions, wordErrorRate, wordsOf } from './corrupt.js';
import { misheardCases, rateOf } from './misheard.js';

const table = readConfusions(projectFile('tests', 'data', 'asr', 'word-pairs.tsv'));
const gold = annotated(projectFile('tests', 'data', 'kitchen', 'gold.jsonl'));

/** By the definition: the last of each is the same, or something was put in, left out or put for another. */
const byDefinition = (from: readonly string[], to: readonly string[]): number => {
  if (from.length === 0 || to.length === 0) return from.length + to.length;
  const [a, b] = [from.slice(0, -1), to.slice(0, -1)];
  const last = from.at(-1) === to.at(-1) ? 0 : 1;
  return Math.min(byDefinition(a, to) + 1, byDefinition(from, b) + 1, byDefinition(a, b) + last);
};

const sentence = fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 5 });

describe('word error', () => {
  it('is the edit distance of words, by its definition', () => {
    fc.assert(
      fc.property(sentence, sentence, (from, to) => {
        expect(editDistance(from, to)).toBe(byDefinition(from, to));
      }),
    );
  });

  it('counts errors over words said', () => {
    expect(
      wordErrorRate([
        ['where is the rice', 'where the rise'],
        ['stop', 'stop'],
      ]),
    ).toBe(2 / 5);
  });
});

describe('sentences misheard', () => {
  it.each([0.1, 0.16, 0.25])('have about the word error asked for: %d', (rate) => {
    for (const guesses of [1, 5])
      expect(Math.abs(rateOf(misheardCases(gold, rate, guesses, table)) - rate)).toBeLessThan(0.02);
  });

  it('are the same for the same seed, and others for another', () => {
    const text = 'put the lentil stew on the second shelf of the fridge';
    const heard = (seed: number): string => corrupt(text, 0.25, seed, table);
    expect(heard(7)).toBe(heard(7));
    expect(new Set([1, 2, 3, 4, 5, 6].map(heard)).size).toBeGreaterThan(3);
    expect(new Set(corruptGuesses(text, 0.25, 7, table, 5)).size).toBeGreaterThan(2);
  });

  it('hold a word for another only as the table or the sound of the word has it', () => {
    for (const word of ['what', 'hummus', 'shelf']) {
      const known = (table.instead.get(word) ?? table.nearest(word)).map(([other]) => other);
      for (let seed = 0; seed < 200; seed += 1) {
        const [first, ...rest] = wordsOf(corrupt(word, 1, seed, table));
        expect([word, ...known]).toContain(first);
        expect(rest.length).toBeLessThan(2);
      }
    }
  });

  it('are never empty, and never changed at no error', () => {
    for (const { hypotheses } of gold) {
      const { text } = hypotheses[0]!;
      expect(corrupt(text, 0, 1, table)).toBe(wordsOf(text).join(' '));
      expect(corrupt(text, 1, 1, table)).not.toBe('');
    }
  });
});
