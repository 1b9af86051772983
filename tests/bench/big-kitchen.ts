/** A household as large as one gets, made up from plain words: for measuring only. */
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import { plusDays, today, type Clock } from '../../src/terms/dates.js';

const WAYS = [
  'roast',
  'spiced',
  'creamy',
  'smoked',
  'pickled',
  'stewed',
  'baked',
  'plain',
  'sweet',
  'braised',
];
const FOODS = [
  'lentil',
  'carrot',
  'chicken',
  'pumpkin',
  'tomato',
  'mushroom',
  'barley',
  'cabbage',
  'salmon',
  'spinach',
];
const DISHES = ['soup', 'stew', 'curry', 'pie', 'sauce', 'salad', 'bake', 'pilaf', 'chutney', 'dumplings'];

/** The n-th of a thousand names, each different. */
const nameOf = (n: number): string =>
  `${WAYS[n % 10]} ${FOODS[Math.floor(n / 10) % 10]} ${DISHES[Math.floor(n / 100) % 10]}`;

/** The demo kitchen, filled up to so many living items. */
export const bigKitchen = (householdId: string, items: number, clock: Clock): Kitchen => {
  const demo = demoKitchen(clock);
  const places = [...demo.places.values()];
  const [pattern] = [...demo.items.values()].filter((item) => item.gone === null);
  if (!pattern) throw new Error('the demo kitchen is empty');
  const filled = new Map(demo.items);
  for (let n = 0; filled.size < items; n += 1) {
    const item: Item = {
      ...pattern,
      id: `bench.${n}`,
      name: nameOf((n * 7) % 1000),
      batchId: null,
      markerId: null,
      placeId: places[n % places.length]?.id ?? null,
      dates: { made: plusDays(today(clock), -(n % 30)) },
    };
    filled.set(item.id, item);
  }
  return { ...demo, household: { ...demo.household, id: householdId }, items: filled };
};

/** What a cook asks and says, about things that are there and things that are not. */
export const sentences = (kitchen: Kitchen): string[] => {
  const names = [...kitchen.items.values()].filter((item) => item.gone === null).map((item) => item.name);
  return names
    .slice(0, 200)
    .flatMap((name, n) => [
      `where is the ${name}`,
      [
        'what should I use first',
        'what is on the second shelf of the fridge',
        "what's on the list",
        'what is the glass bead',
      ][n % 4] ?? '',
      `how old is the ${name}`,
      `do I have any ${name}`,
      [
        `move the ${name} to the door of the fridge`,
        `took one ${name} out`,
        'put oats on the list',
        'undo that',
      ][n % 4] ?? '',
    ]);
};
