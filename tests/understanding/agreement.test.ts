/** What a recogniser's guesses say together. */
import { describe, expect, it } from 'vitest';
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
