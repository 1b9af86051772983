/** A food that is on nobody's record is what "it" means, with all that was told of it, until a thing of the kitchen is. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

describe('a food that is not on record, spoken of', () => {
  test('thawed in the fridge it may be frozen again', async () => {
    const { said } = await talked(
      'I thawed some lamb chops in the fridge yesterday, are they still good',
      'can I put them back in the freezer',
    );
    expect(said).toBe('Yes, guidance says lamb chops thawed in the fridge may be frozen again.');
  });
  test('what was told of it counts on', async () => {
    const { said } = await talked(
      'how long do duck legs keep in the fridge',
      'are they still good after five days',
    );
    expect(said).toContain('past guidance');
  });
  test('a thing of the kitchen that is told takes its place', async () => {
    const { said } = await talked(
      'how long does lobster keep',
      'where is the lentil stew',
      'is it still good',
    );
    expect(said).toContain('entil stew');
  });
});

describe('of the one thing told, for somebody', () => {
  test.each([
    ['where is the peanut stew', 'could Dele have a bit', 'No. The peanut stew is said to contain peanuts.'],
    ['where is the peanut stew', 'may Dele have some', 'No. The peanut stew is said to contain peanuts.'],
  ])('%s, %s', async (first, then, answer) => {
    expect((await talked(first, then)).said).toBe(answer);
  });
});
