/** Short plain sentences, as a considerate cook would say them: what is asked is answered, what is told is kept. */
import { describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import { daysBetween } from '../../src/terms/dates.js';
import { talked } from '../support/said.js';

const amountOf = async (name: string, ...lines: readonly string[]): Promise<number | undefined> => {
  const { kitchen } = await talked(...lines);
  const items = livingItems(kitchen).filter((item) => item.name === name);
  return items.length === 0 ? undefined : items.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0);
};

describe('told plainly', () => {
  it('takes how much is left for what is left, and adds nothing', async () => {
    expect(await amountOf('eggs', 'There are two eggs left.')).toBe(2);
    expect(await amountOf('apples', 'There is one apple left.')).toBe(1);
  });

  it('takes the last one, and all of them, for the end of it', async () => {
    expect(await amountOf('eggs', 'There are two eggs left.', 'We ate them all.')).toBeUndefined();
    expect(
      await amountOf('apples', 'There are two apples left.', 'I ate one apple.', 'I ate the last one too.'),
    ).toBeUndefined();
  });

  it('takes "another" and "another two" for as many more of the same', async () => {
    const before = (await amountOf('eggs'))!;
    expect(await amountOf('eggs', 'I used one egg.', 'I used another one.')).toBe(before - 2);
    expect(await amountOf('eggs', 'I used one egg.', 'And another two.')).toBe(before - 3);
  });

  it('moves part of what is here, and leaves as many as there were in all', async () => {
    const before = (await amountOf('eggs'))!;
    const after = await amountOf('eggs', 'I put two of the eggs on the counter.');
    expect(after).toBe(before);
  });

  it('does two things with the same food that were told in one breath', async () => {
    const { kitchen } = await talked('I opened the milk yesterday and used half of it.');
    const milk = livingItems(kitchen).find(({ name }) => name === 'milk');
    expect(milk?.dates.opened).toBe('2026-05-13');
  });

  it('keeps what is in it and the warning that came with where it goes', async () => {
    const { kitchen, said } = await talked(
      'Peter made pancakes. They are on the counter, contain milk and eggs, and are not for Dele.',
    );
    const pancakes = livingItems(kitchen).find(({ name }) => name === 'pancakes');
    expect(pancakes?.contains).toEqual(expect.arrayContaining(['milk', 'eggs']));
    expect(said).toMatch(/milk and eggs/u);
    expect([...(pancakes?.cautions ?? []), ...(pancakes?.notes ?? [])].join(' ')).toMatch(/dele/iu);
  });

  it('takes back what was done and does what is told after it', async () => {
    const before = (await amountOf('eggs'))!;
    const lines = ['I used three eggs.', 'Undo that. I used two eggs.'];
    expect(await amountOf('eggs', ...lines)).toBe(before - 2);
  });

  it('puts on the list what was used in the same breath, and takes neither for the other', async () => {
    const { kitchen } = await talked('I used two eggs. Add eggs to the shopping list, please.');
    expect([...kitchen.purchases.values()].some(({ name }) => name === 'eggs')).toBe(true);
  });

  it('gives a food another name', async () => {
    const { kitchen, said } = await talked('Rename the carrot soup to pumpkin soup.');
    expect(livingItems(kitchen).some(({ name }) => name === 'pumpkin soup')).toBe(true);
    expect(said).toMatch(/Carrot soup: now called pumpkin soup/u);
  });

  it('moves everything from one place to another', async () => {
    const { kitchen, before } = await talked('Move everything from the fruit drawer to the counter.');
    const drawer = [...before.places.values()].find(({ name }) => name === 'fruit drawer')!.id;
    expect(livingItems(before).some(({ placeId }) => placeId === drawer)).toBe(true);
    expect(livingItems(kitchen).some(({ placeId }) => placeId === drawer)).toBe(false);
  });
});

describe('asked plainly', () => {
  it('narrows by how old, both sides of the day', async () => {
    const { kitchen } = await talked('Hello.');
    const soup = livingItems(kitchen).find(({ name }) => name === 'carrot soup')!;
    const days = daysBetween(soup.dates.made!, '2026-05-14');
    const ask = `What is more than ${days} days old in the fridge?`;
    expect((await talked(ask)).said).not.toMatch(/carrot soup/iu);
    const less = `Is any carrot soup more than ${days - 1} days old?`;
    expect((await talked(less)).said).toMatch(/carrot soup/iu);
    const { said } = await talked('What have we frozen for longer than ten years?');
    expect(said).not.toMatch(/only look after/u);
  });

  it('asks what it contains, and what else somebody made, of what was just told', async () => {
    const { said } = await talked('Who made the carrot soup?', 'What does it contain?');
    expect(said).toMatch(/celery and milk/u);
  });

  it('narrows what was told part by part', async () => {
    const { answers } = await talked('What is in the fridge?', 'Which of those are vegan?');
    expect(answers[1]).not.toMatch(/freezer|pantry/u);
  });

  it('asks which food wears a marker, and which markers are free, as two questions', async () => {
    const { answers } = await talked('Which food has the wooden bead on it?', 'Which markers are free?');
    expect(answers[0]).not.toMatch(/spare/u);
    expect(answers[1]).toMatch(/spare/u);
  });
});

describe('what became of food, and what goes on with it', () => {
  const listed = async (...lines: readonly string[]): Promise<readonly string[]> =>
    [...(await talked(...lines)).kitchen.purchases.values()].map(({ name }) => name);

  it('is gone and to be bought, said in one breath', async () => {
    expect(await amountOf('cheddar', 'I used up the cheddar and put it on the list.')).toBeUndefined();
    expect(await listed('I used up the cheddar and put it on the list.')).toContain('cheddar');
  });

  it('takes what came in besides what went', async () => {
    const before = (await amountOf('eggs'))!;
    expect(await amountOf('eggs', 'I used two of the eggs and bought six more.')).toBe(before + 4);
  });

  it('knows whom it went to, before or after it', async () => {
    const before = (await amountOf('eggs'))!;
    expect(await amountOf('eggs', 'I gave Dele three of the eggs.')).toBe(before - 3);
    expect(await amountOf('eggs', 'How many eggs are there?', 'I sent Dele home with two of those.')).toBe(
      before - 2,
    );
  });

  it('moves some of those just frozen, and leaves as many in all', async () => {
    const { kitchen } = await talked(
      'I froze six portions of pumpkin curry in the chest freezer.',
      'Actually two of those are in the upright freezer.',
    );
    const curry = livingItems(kitchen).filter(({ name }) => name === 'pumpkin curry');
    expect(curry.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0)).toBe(6);
    expect(new Set(curry.map(({ placeId }) => placeId)).size).toBe(2);
    expect(curry.every(({ dates }) => dates.frozen !== undefined)).toBe(true);
  });

  it('takes as many again for the same again', async () => {
    const { kitchen } = await talked(
      'I put three portions of pumpkin curry in the chest freezer.',
      'And the same again in the upright freezer.',
    );
    const curry = livingItems(kitchen).filter(({ name }) => name === 'pumpkin curry');
    expect(curry.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0)).toBe(6);
  });

  it('goes on with the amount of something else, and takes both back', async () => {
    const before = { eggs: (await amountOf('eggs'))!, apples: (await amountOf('apples'))! };
    const lines = ['I used two eggs.', 'And one of the apples.'] as const;
    expect(await amountOf('apples', ...lines)).toBe(before.apples - 1);
    expect(await amountOf('eggs', ...lines, 'Take both of those back.')).toBe(before.eggs);
    expect(await amountOf('apples', ...lines, 'Take both of those back.')).toBe(before.apples);
  });

  it.each(['Call it barley pot.', 'It turned out to be barley pot.', 'Call it barley pot from now on.'])(
    'gives another name: %s',
    async (said) => {
      const { kitchen } = await talked('I put a tub of mystery stew in the chest freezer.', said);
      const names = livingItems(kitchen).map(({ name }) => name);
      expect(names).toContain('barley pot');
      expect(names).not.toContain('mystery stew');
    },
  );
});

describe('asked of what is here, besides what was told', () => {
  const answers = async (...lines: readonly string[]): Promise<string> =>
    (await talked(...lines)).answers.at(-1)!;

  it('leaves out what was just told of where any other is asked for', async () => {
    const lines = ['I put a tub of pumpkin soup on the top shelf of the fridge.', 'Is there any other soup?'];
    const told = await answers(...lines);
    expect(told).not.toMatch(/pumpkin/i);
    expect(await answers('Where is the yogurt?', 'Is there any other yogurt?')).toMatch(/^No, only/);
  });

  it('tells what has no date of one place, and nothing else', async () => {
    const told = await answers(
      'I put a jar of quince paste in the pantry.',
      'What in the pantry has no date on it?',
    );
    expect(told).toMatch(/quince/i);
    expect(told).not.toMatch(/guidance|within/i);
  });

  it('says which are past their date, rather than what the words on a label mean', async () => {
    expect(await answers('Is anything past its use-by date?')).not.toMatch(/infant formula/);
    expect(await answers('What does use by mean?')).toMatch(/infant formula/);
  });

  it('says how many there are where it is asked whether there are any', async () => {
    const counted = await answers('Have we got any eggs?');
    expect(counted).toMatch(/^Yes, eight eggs/);
  });
});

describe('who did it, and what it was not done to', () => {
  it('keeps who ate it, whoever tells it', async () => {
    expect((await talked('Dele ate two of the eggs.', 'Who ate the eggs?')).said).toMatch(/^Dele took/);
    expect((await talked('I ate two of the eggs.', 'Who ate the eggs?')).said).toMatch(/^You took/);
    // And of what is gone by it.
    expect((await talked('Dele binned the cheddar, it was mouldy.', 'Is there any cheddar?')).said).toContain(
      'Dele',
    );
  });

  it('takes as many times as many for each of several', async () => {
    const before = (await amountOf('eggs'))!;
    expect(await amountOf('eggs', 'Dele and I had two eggs each.')).toBe(before - 4);
    expect(await amountOf('eggs', 'Dele and I ate two eggs.')).toBe(before - 2);
  });

  it('leaves what was excepted, of everything in a place', async () => {
    const told = await talked('Everything on the fridge door is finished except the milk.', 'yes');
    const door = livingItems(told.before).find(({ name }) => name === 'soy sauce')!.placeId;
    const there = (kitchen: typeof told.kitchen): readonly string[] =>
      livingItems(kitchen)
        .filter(({ placeId }) => placeId === door)
        .map(({ name }) => name);
    expect(there(told.before).length).toBeGreaterThan(2);
    expect(there(told.kitchen)).toEqual(['milk']);
  });
});

describe('a dish and what went into it', () => {
  it('takes from what is here, and puts the dish where "it" is', async () => {
    const before = (await amountOf('eggs'))!;
    const { kitchen } = await talked('I made a frittata with three of the eggs, it is on the counter.');
    const dish = livingItems(kitchen).find(({ name }) => name === 'frittata')!;
    expect(kitchen.places.get(dish.placeId!)?.kind).toBe('counter');
    const eggs = livingItems(kitchen).filter(({ name }) => name === 'eggs');
    expect(eggs.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0)).toBe(before - 3);
    expect(eggs.every(({ placeId }) => placeId !== dish.placeId)).toBe(true);
  });
});

describe('an answer and what is put right in the same breath', () => {
  it('keeps all that was agreed to, with the one part put right', async () => {
    const lines = [
      "I've got a carton of cream and a half gallon of milk, and that was stunted",
      'yes, only the cream goes on the counter',
    ] as const;
    expect((await talked(lines[0])).said).toMatch(/Yes or no\.$/);
    const { kitchen } = await talked(...lines);
    const here = livingItems(kitchen);
    expect(here.some(({ amount }) => amount?.unit === 'gallon')).toBe(true);
    const cream = here.filter(({ name }) => name === 'cream');
    expect(cream.map(({ placeId }) => kitchen.places.get(placeId!)?.kind)).toContain('counter');
  });

  it('finds what is called by a way of eating, and no other', async () => {
    const { kitchen } = await talked(
      'I put a carton of lactose free milk on the fridge door.',
      'I finished the lactose free milk.',
    );
    const names = livingItems(kitchen).map(({ name }) => name);
    expect(names).not.toContain('lactose free milk');
    expect(names).toContain('milk');
  });
});
