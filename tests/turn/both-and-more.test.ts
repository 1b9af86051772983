/** "Which nuts" answered with more after it, and who may have a food asked of whoever was spoken of. */
import { describe, expect, it } from 'vitest';
import { talked } from '../support/said.js';

const after = async (...lines: readonly string[]) => {
  const { said, kitchen } = await talked(...lines);
  const watches = (name: string): readonly string[] =>
    [...kitchen.people.values()].find((one) => one.name === name)?.allergens ?? [];
  return { said, watches };
};
const both = ['tree nuts', 'peanuts'];

describe('which nuts, and more', () => {
  it("keeps somebody else's allergy beside the answer", async () => {
    const { watches } = await after("Aoife can't have nuts", 'both, both, and Tom is allergic to nuts');
    expect(watches('Aoife')).toEqual(both);
    expect(watches('Tom')).toEqual(both);
  });

  it('takes the answer and says what it did not get', async () => {
    const { said, watches } = await after(
      "Peter's mate Sol can't have nuts",
      'both, she cannot have any nut so put on the rendang not for her',
    );
    expect(watches('Sol')).toEqual(both);
    expect(said).toContain('Sol watches for tree nuts and peanuts');
    expect(said).toContain('did not get');
    expect(said).not.toContain('Which nuts');
  });

  it('takes it back from one and gives it to the other', async () => {
    const { said, watches } = await after(
      'Ines is allergic to sesame',
      "no not Ines, it's Tom is the one with the allergy, Ines eats anything, sesame it is",
    );
    expect(watches('Ines')).toEqual([]);
    expect(watches('Tom')).toEqual(['sesame']);
    expect(said).toContain('Ines no longer watches for sesame');
  });
});

describe('who may have it', () => {
  it.each([
    'would she be ok with the lentil stew',
    'is he okay with the lentil stew',
    'would he be all right with the lentil stew do you think',
  ])('is answered of them alone: %s', async (line) => {
    const { said } = await after("Tom can't have tree nuts", line);
    expect(said).toContain('tree nuts');
    expect(said).not.toMatch(/peanuts|shellfish|within guidance|shelf/);
  });
});
