import { expect, test } from 'vitest';
import { createUnderstander } from '../../src/understanding/index.js';
import { guessesFrom } from '../../src/understanding/guesses.js';
import { longestInput } from '../../src/understanding/words/index.js';
import { hearing, martasNames } from './household.js';

const { understand } = createUnderstander('en-US');
const times = (words: string, often: number): string => Array.from({ length: often }, () => words).join(' ');
const heard = (text: string) => understand([{ text }], martasNames(), hearing());

test.each([
  ['more words than are read', `put milk ${times('and eggs', 150)}`],
  ['amounts in amounts', times('half of two and a half of three quarters of', 12)],
  ['one word, endless', 'milk'.repeat(500)],
  ['ten thousand words', Array.from({ length: 10_000 }, (_, n) => `w${n}`).join(' ')],
])('%s: nothing of it is taken for the whole', (_, text) => {
  expect(heard(text)).toEqual({ readings: [], margin: 1, verdict: 'ask-again', tooLong: true });
});

test('what fits is read as ever', () => {
  const text = Array.from({ length: longestInput.words - 2 }, (_, n) => `w${n}`).join(' ');
  expect(heard(`put milk ${text}`).tooLong).toBeUndefined();
  expect(heard(`put milk and ${text}`).tooLong).toBe(true);
  expect(heard('where is the milk').readings[0]?.acts[0]?.intent).toBe('find');
});

test.each([
  ['first', `she can't breathe ${times('and we had the soup for dinner', 30)}`],
  ['last', `${times('and we had the soup for dinner', 30)} and now she can't breathe`],
])('somebody in trouble is heard, said %s', (_, text) => {
  expect(heard(text).readings[0]?.acts[0]?.intent).toBe('urgent');
});

test('of long sentences fewer guesses are read, and the first always', () => {
  const guesses = (words: number) =>
    guessesFrom(
      Array.from({ length: 5 }, (_, n) => ({
        text: Array.from({ length: words }, (_, word) => `w${word + n}`).join(' '),
      })),
      'en-US',
    ).length;
  expect([guesses(10), guesses(20), guesses(40), guesses(78)]).toEqual([5, 5, 3, 1]);
});
