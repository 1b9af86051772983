/** What goes together in a breath and what does not; and that nothing is said to be put right that stayed as it was. */
import { describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import type { Item } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';

const made = async (line: string): Promise<readonly Item[]> => {
  const { before, kitchen } = await talked(line);
  return livingItems(kitchen).filter(({ id }) => !before.items.has(id));
};

describe('bare foods after "it is"', () => {
  it.each([
    ["I made a walnut loaf this morning, it's flour and eggs and walnuts, it's on the counter", 'walnut'],
    ['put a nut roast on the top shelf, it is cashews and celery', 'nut roast'],
  ])('are what is in it: %s', async (line, name) => {
    const items = await made(line);
    expect(items).toHaveLength(1);
    expect(items[0]!.name).toContain(name);
    expect(items[0]!.contains).toContain('tree nuts');
  });
});

describe('what is only named after a loss', () => {
  it('goes the same way where nothing but a joining word stands between', async () => {
    const { said } = await talked('I threw out the milk, and the hummus');
    expect(said).toMatch(/milk/i);
    expect(said).toMatch(/hummus/i);
  });

  it.each([
    "That's the sour cream finished. Have we any hummus left?",
    'The sour cream is finished, is there any hummus?',
  ])('is not lost where it is asked after: %s', async (line) => {
    const { kitchen } = await talked(line);
    expect(livingItems(kitchen).map(({ name }) => name)).toContain('hummus');
  });
});

describe('put right', () => {
  it('is said where something was', async () => {
    const { said } = await talked('put twelve eggs in the pantry', 'no, the fridge door');
    expect(said).toMatch(/^Put right\./);
  });

  it('is not while it is asked which is meant', async () => {
    const { said } = await talked('carrots in the drawer at the bottom', 'no, the salad drawer I mean');
    expect(said).toMatch(/^Which one/);
  });

  it.each(['no, the pantry', 'get rid of the comin'])(
    'is not where all stayed as it was: %s',
    async (line) => {
      const { said } = await talked('put twelve eggs in the pantry', line);
      expect(said).not.toMatch(/put right/i);
    },
  );
});

describe('a word of praise before a question', () => {
  it.each([
    'fine, what is the oldest thing in the chest freezer',
    'good. what is the oldest in the chest freezer',
  ])('asks nothing itself: %s', async (line) => expect((await talked(line)).said).toMatch(/^The oldest is /));
});

describe('how long it was had, where it is perhaps to be thrown out', () => {
  it.each([
    "I've had raw chicken in the fridge for three days, should I toss it",
    'we have had raw chicken in the fridge for three days, does it have to go',
  ])('is no day it is to keep till: %s', async (line) => {
    expect((await talked(line)).said).toMatch(/throw it out/);
  });
});

describe('how long there is on something', () => {
  it('is of the timer that runs by its name, and else of the food', async () => {
    const asked = 'how long have i got on the lentil stew';
    expect((await talked('set a timer for the lentil stew, ten minutes', asked)).said).toMatch(
      /ten minutes left/i,
    );
    expect((await talked(asked)).said).toMatch(/saturday/i);
  });
});

describe('two foods and a dish', () => {
  it.each([
    [
      'my neighbour gave me her chicken and rice casserole, it is on the second shelf of the fridge',
      'chicken and rice casserole',
    ],
    ['put the beef and barley stew in the fridge', 'beef and barley stew'],
    ['I put our turkey and leek pie on the fridge door', 'turkey and leek pie'],
  ])('are one, where only the first has an article: %s', async (line, name) => {
    expect((await made(line)).map((item) => item.name)).toEqual([name]);
  });

  it('are two, where the second is here by its own name', async () => {
    const { said } = await talked("where's the milk and carrot soup");
    expect(said).toMatch(/^Two/);
  });
});

describe('what somebody said is in it', () => {
  it.each(['she said it has pecans in it', 'he says it has got walnuts in it'])(
    'is kept: %s',
    async (told) => {
      const [item] = await made(`Amara gave me a fish pie, it's on the top shelf of the fridge, ${told}`);
      expect(item!.contains).toContain('tree nuts');
    },
  );
});
