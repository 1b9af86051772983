/** Small kitchens for tests of what is told, and when. */
import { emptyKitchen } from '../../src/kitchen/index.js';
import type { Household, Item, Kitchen, Person, Reminder } from '../../src/kitchen/model.js';
import type { Clock } from '../../src/terms/dates.js';

export const ZONE = 'America/Chicago';
export const at = (now: string, timeZone = ZONE): Clock => ({ now, timeZone });

export const household: Household = {
  id: 'h1',
  name: 'Marta’s kitchen',
  timeZone: ZONE,
  locale: 'en-US',
  region: 'us',
  measures: 'us',
  microwaveWatts: 800,
  summaryAt: '20:00',
  quietHours: null,
  dotMeanings: {},
};

const asMap = <T extends { id: string }>(of: readonly T[]): ReadonlyMap<string, T> =>
  new Map(of.map((one) => [one.id, one]));

export const item = (id: string, facts: Partial<Item> = {}): Item => ({
  id,
  name: id,
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
  addedAt: '2026-05-01T12:00:00.000Z',
  addedBy: null,
  gone: null,
  ...facts,
});

export const reminder = (id: string, due: string, facts: Partial<Reminder> = {}): Reminder => ({
  id,
  kind: 'timer',
  label: null,
  due,
  setAt: '2026-05-14T12:00:00.000Z',
  setBy: null,
  itemId: null,
  deliveredAt: null,
  ...facts,
});

export const person = (name: string, allergens: readonly string[], eatsHere = true): Person => ({
  id: name.toLowerCase(),
  name,
  eatsHere,
  allergens,
  atRisk: false,
});

export const kitchenWith = (
  of: {
    readonly items?: readonly Item[];
    readonly reminders?: readonly Reminder[];
    readonly people?: readonly Person[];
    readonly household?: Partial<Household>;
  } = {},
): Kitchen => ({
  ...emptyKitchen({ ...household, ...of.household }),
  places: asMap([
    { id: 'fridge', parentId: null, name: 'fridge', kind: 'fridge', position: null, aliases: [] },
    { id: 'shelf', parentId: 'fridge', name: 'second shelf', kind: 'shelf', position: 2, aliases: [] },
    { id: 'freezer', parentId: null, name: 'chest freezer', kind: 'freezer', position: null, aliases: [] },
    { id: 'pantry', parentId: null, name: 'pantry', kind: 'pantry', position: null, aliases: [] },
  ]),
  items: asMap(of.items ?? []),
  reminders: asMap(of.reminders ?? []),
  people: asMap(of.people ?? []),
});
