/** Talk of the list to buy: two things in a breath, what was bought of it, and what is asked of its lines. */
import { describe, expect, test } from 'vitest';
import { brandtTalk } from '../support/brandt-talk.js';

const talk = brandtTalk('list-talk');
/** What is said of the list after these, four lemons, green salsa and paper towels standing on it. */
const listAfter = async (...said: readonly string[]): Promise<string> => (await talk(said)).speech.text;
const list = "what's on the list";

describe('the list', () => {
  test.each([
    [['cross off the salsa, and add sponges to the list', list], /sponges/u, /salsa/u],
    [['drop the lemons and get oranges instead', list], /oranges/u, /lemons/u],
    [[list, 'they had no lemons so keep that on, but I got the others', list], /lemons/u, /towels/u],
    [[list, 'Bea came home with everything, so it can all come off', list], /empty/u, /lemons/u],
    [['take the paper towels off the list', 'put those back on, we do need them', list], /towels/u, /empty/u],
    [['which fruit do we need to buy'], /lemons/u, /towels/u],
    [
      ['add pecans to the list', "is there anything on the list Junie shouldn't eat"],
      /Pecans.*tree nuts/u,
      /towels/u,
    ],
  ])('%j', async (said, has, lacks) => {
    const text = await listAfter(...said);
    expect(text).toMatch(has);
    expect(text).not.toMatch(lacks);
  });

  test('what has stood there longest', async () => {
    const text = await listAfter(list, "what's been on there the longest");
    expect(text).toMatch(/went on the list/u);
  });
});
