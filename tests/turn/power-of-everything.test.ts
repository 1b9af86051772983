/** Of all that stands in the cold, by no name: what the power matter makes of it, and without one what is past. */
import { describe, expect, test } from 'vitest';
import { talked } from '../support/said.js';

describe('all of it in a power cut', () => {
  test.each([
    ['the power has been off since noon', 'nobody opened the fridge', 'is everything in there all right'],
    ['no power since noon', 'is all the food in the fridge safe'],
    ['the electricity went out at noon', 'what food in the fridge have we lost'],
  ])('%s', async (...lines) => {
    const { said } = await talked(...lines);
    expect(said).toContain('four hours');
    expect(said).not.toMatch(/table of mine|Which food|on record/);
  });
  test('how long it stays cold is no food of a table', async () => {
    const { said } = await talked('how long will the food in the freezer stay frozen if the power fails');
    expect(said).toContain('full freezer two days');
  });
  test('while it is out nothing is taken for its end', async () => {
    const { kitchen } = await talked('no electricity since three, what have we lost');
    expect([...kitchen.powerCuts.values()].map(({ backAt }) => backAt)).toEqual([null]);
  });
});

describe('all of it, with the power on', () => {
  test.each(['is everything in the fridge all right', 'is the food in the fridge still okay'])(
    'what is past comes first: %s',
    async (said) => {
      expect((await talked(said)).said).toMatch(/^(One|Two|Three|Four) past guidance/);
    },
  );
});
