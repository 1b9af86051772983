/** What guidance refuses outright is refused however it is asked, and a freezer in the garage is cold. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

describe('rice from a takeaway, by United Kingdom guidance', () => {
  test.each([
    'I got Chinese takeaway rice yesterday, can I microwave it',
    'we bought takeaway rice this morning, may I heat it up in the pan',
    'I bought takeout rice yesterday, is it all right to reheat it',
  ])('is not to be reheated: %s', async (said) => {
    const { said: answer, changed } = await talked('use United Kingdom guidance', said);
    expect(answer).toContain('not to be reheated');
    expect(changed).toBe(false);
  });
  test('how long it keeps is told all the same', async () => {
    const { said } = await talked('use United Kingdom guidance', 'how long does takeaway rice keep');
    expect(said).toContain('hours');
  });
});

describe('food in a place that is a freezer', () => {
  test.each(['how long can fish stay in the garage freezer', 'what fish is in the garage freezer'])(
    'is not left out: %s',
    async (said) => {
      expect((await talked(said)).said).not.toMatch(/two hours|throw/i);
    },
  );
  test('in the garage it is', async () => {
    expect((await talked('can I leave the stew in the garage overnight')).said).toMatch(/two hours/);
  });
});
