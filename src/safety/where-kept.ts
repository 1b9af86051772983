/** What an item's place and its record say of how it is kept. */
import type { Item, Kitchen, Place } from '../kitchen/model.js';
import type { Where } from './api.js';

const WHERE: Readonly<Partial<Record<Place['kind'], Where>>> = {
  fridge: 'fridge',
  freezer: 'freezer',
  pantry: 'pantry',
  cupboard: 'pantry',
  counter: 'counter',
};

const findWhere = (places: Kitchen['places'], placeId: string): Where | null => {
  let place = places.get(placeId);
  if (place === undefined) return null;
  for (let steps = 0; steps < 20 && place !== undefined; steps++) {
    const where = WHERE[place.kind];
    // A freezer box inside a fridge freezes: the nearest one counts. A door or shelf says nothing by itself.
    if (where !== undefined) return where;
    place = place.parentId === null ? undefined : places.get(place.parentId);
  }
  return 'pantry';
};

const keptAt = new WeakMap<ReadonlyMap<string, Place>, Map<string, Where | null>>();

/**
 * What an item's place amounts to for its keeping: the nearest fridge, freezer, pantry or counter it is
 * in. A shelf that stands in none of them is a pantry shelf. Null when the item has no place.
 */
export const whereKept = (places: Kitchen['places'], item: Pick<Item, 'placeId'>): Where | null =>
  whereKeptIn(places)(item);

/** `whereKept` for many items of one kitchen. */
export const whereKeptIn = (places: Kitchen['places']): ((item: Pick<Item, 'placeId'>) => Where | null) => {
  const known = keptAt.get(places) ?? new Map<string, Where | null>();
  keptAt.set(places, known);
  return ({ placeId }) => {
    if (placeId === null) return null;
    const before = known.get(placeId);
    if (before !== undefined) return before;
    const where = findWhere(places, placeId);
    known.set(placeId, where);
    return where;
  };
};

/**
 * Signs that a dish was cooked and not bought raw. Heating instructions are none: raw sausages have
 * them too; nor is a batch, for a pack of mince can be split.
 */
export const isHomeMade = (item: Item): boolean =>
  item.dates.made !== undefined ||
  item.timesReheated > 0 ||
  (item.dates.bought === undefined && item.maker !== null);
