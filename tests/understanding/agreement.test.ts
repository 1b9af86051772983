/** What a recogniser's guesses say together. */
import { describe, expect, it } from 'vitest';
import { consensusOf } from '../../src/understanding/agreement.js';
import { guessesFrom } from '../../src/understanding/guesses.js';
import { createUnderstander, type Understanding } from '../../src/understanding/index.js';
import { hearing, martasNames } from './household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const hear = (...guesses: string[]): Understanding =>
  understander.understand(
    guesses.map((text) => ({ text })),
    names,
    hearing(),
  );

describe('a loss', () => {
  it('is asked about where most guesses heard another thing', () => {
    const one = hear(
      'throw out the rye',
      'throw out rice now',
      'throw out the hummus',
      'throw out the rides',
    );
    expect(one).toMatchObject({ verdict: 'confirm', disputed: true });
  });

  it('is asked about where the guesses that make sense mean something else', () => {
    const some = hear(
      'i finished the hummus',
      'i opened the hummus',
      'i opened the hummus today',
      'i opened hummus',
    );
    expect(some).toMatchObject({ verdict: 'confirm', disputed: true });
  });

  it('is carried out where they agree, whatever else was misheard', () => {
    const agreed = hear('throughout the spinach', 'throw at the spinach', 'throw out the spinach');
    expect(agreed.readings[0]!.acts).toMatchObject([{ intent: 'finish' }]);
    expect(agreed.disputed).toBeUndefined();
    expect(hear('i finished the hummus', 'i finished the hamas', 'i finished the hummus')).toMatchObject({
      verdict: 'act',
    });
  });
});

describe('the consensus', () => {
  const consensus = (...texts: string[]): string | undefined =>
    consensusOf(
      guessesFrom(
        texts.map((text) => ({ text })),
        'en-US',
      ),
    )?.join(' ');

  it('is said by none of them where each has another word wrong', () => {
    const guesses = [
      'how told is the tomato salsa',
      'how old if the tomato salsa',
      'how old does the tomato salsa',
      'how old is the man source',
    ];
    expect(consensus(...guesses)).toBe('how old is the tomato salsa');
    expect(hear(...guesses).readings[0]!.acts).toMatchObject([
      { intent: 'how-old', slots: { item: { words: 'tomato salsa' } } },
    ]);
  });

  it('leaves out a word that one put in, and puts in one that one left out', () => {
    expect(
      consensus('where the is my rice', 'where is my rice now', 'where is my rice and', 'where is my rise'),
    ).toBe('where is my rice');
    expect(consensus('find rice', 'find the rice', 'fine the rice', 'find the rise')).toBe('find the rice');
  });

  it('is the first guess where the others do not agree against it, and nothing for two', () => {
    expect(consensus('open the oats', 'open the boats', 'open the notes', 'open the goats')).toBe(
      'open the oats',
    );
    expect(consensus('open the oats', 'open the boats')).toBeUndefined();
  });
});

describe('a word too many', () => {
  it('is overlooked where the rest is about a thing of this household', () => {
    expect(hear('tell me about is lentil stew').readings[0]!.acts).toMatchObject([
      { intent: 'tell-about', slots: { item: { words: 'lentil stew' } } },
    ]);
  });

  it('is no reason to change anything unasked', () => {
    const { verdict, readings } = hear('i finished what the hummus');
    expect(readings[0]!.acts).toMatchObject([{ intent: 'finish' }]);
    expect(verdict).toBe('confirm');
  });
});
