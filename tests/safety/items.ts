/** Records to test with: a plain item, a household, and places, all made up. */
import type { Household, Item, Kitchen, Person, Place } from '../../src/kitchen/model.js';

export const clock = { now: '2026-11-25T18:00:00.000Z', timeZone: 'America/Chicago' };

export const item = (name: string, more: Partial<Item> = {}): Item => ({
  id: name,
  name,
  batchId: null,
  amount: null,
  amountAtFirst: null,
  touch: {},
  placeId: 'shelf',
  spot: null,
  markerId: null,
  dates: {},
  outSince: null,
  timesReheated: 0,
  maker: null,
  ownerId: null,
  diets: [],
  contains: [],
  freeFrom: [],
  cautions: [],
  preparations: [],
  notes: [],
  addedAt: '2026-11-24T18:00:00.000Z',
  addedBy: null,
  gone: null,
  ...more,
});

const place = (id: string, kind: Place['kind'], parentId: string | null = null): Place => ({
  id,
  parentId,
  name: id,
  kind,
  position: null,
  aliases: [],
});

const household: Household = {
  id: 'okafor',
  name: "Marta Okafor's kitchen",
  timeZone: clock.timeZone,
  locale: 'en-US',
  region: 'us',
  measures: 'us',
  microwaveWatts: 800,
  summaryAt: null,
  quietHours: null,
  dotMeanings: {},
};

export const person = (name: string, more: Partial<Person> = {}): Person => ({
  id: name,
  name,
  eatsHere: true,
  allergens: [],
  atRisk: false,
  ...more,
});

export const kitchen = (
  items: readonly Item[],
  people: readonly Person[] = [],
): Pick<Kitchen, 'household' | 'people' | 'places' | 'items' | 'powerCuts'> => ({
  powerCuts: new Map(),
  household,
  people: new Map(people.map((each) => [each.id, each])),
  places: new Map(
    [
      place('fridge', 'fridge'),
      place('shelf', 'shelf', 'fridge'),
      place('ice box', 'freezer', 'fridge'),
      place('chest', 'freezer'),
      place('basket', 'basket', 'chest'),
      place('pantry', 'pantry'),
      place('rack', 'shelf'),
      place('worktop', 'counter'),
    ].map((each) => [each.id, each]),
  ),
  items: new Map(items.map((each) => [each.id, each])),
});
