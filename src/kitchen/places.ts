/** Where things are: the place tree, looked at. Unknown ids give empty answers. */
import type { Id, Item, Kitchen, Place, PlaceKind } from './model.js';
import { groupedBy, reckoned } from './index-of.js';
import { livingIn } from './items.js';

/** From the appliance down to the place itself: fridge, second shelf, left side. */
export const pathOf = (kitchen: Pick<Kitchen, 'places'>, placeId: Id | null): readonly Place[] => {
  const path: Place[] = [];
  let at = placeId === null ? undefined : kitchen.places.get(placeId);
  // The tree is kept free of rings; the count guards against a damaged import all the same.
  while (at && path.length <= kitchen.places.size) {
    path.unshift(at);
    at = at.parentId === null ? undefined : kitchen.places.get(at.parentId);
  }
  return path;
};

/** True when `placeId` is `aboveId` or somewhere within it. */
export const placeUnder = (kitchen: Pick<Kitchen, 'places'>, placeId: Id | null, aboveId: Id): boolean =>
  pathOf(kitchen, placeId).some((place) => place.id === aboveId);

/** The order places are told in. */
const KIND_ORDER: readonly PlaceKind[] = [
  'fridge',
  'freezer',
  'pantry',
  'cupboard',
  'counter',
  'shelf',
  'drawer',
  'basket',
  'door',
  'side',
];

const byPosition = (a: Place, b: Place): number =>
  (a.position ?? Number.MAX_SAFE_INTEGER) - (b.position ?? Number.MAX_SAFE_INTEGER) ||
  a.name.localeCompare(b.name, 'en');

const childrenIn = reckoned((places: Kitchen['places']) => {
  const sorted = [...places.values()].sort(
    (a, b) => KIND_ORDER.indexOf(a.kind) - KIND_ORDER.indexOf(b.kind) || byPosition(a, b),
  );
  return {
    whole: sorted.filter(({ parentId }) => parentId === null),
    within: groupedBy(sorted, ({ parentId }) => parentId),
  };
});

/** Places directly within one, or the whole appliances for null: by kind, each counted from the top. */
export const placesIn = (kitchen: Kitchen, parentId: Id | null): readonly Place[] => {
  const { whole, within } = childrenIn(kitchen.places);
  return parentId === null ? whole : (within.get(parentId) ?? []);
};

/** The place and everything within it, top first. */
export const placesBelow = (kitchen: Kitchen, placeId: Id): readonly Place[] => {
  const place = kitchen.places.get(placeId);
  return place
    ? [place, ...placesIn(kitchen, placeId).flatMap((child) => placesBelow(kitchen, child.id))]
    : [];
};

const itemsByPlace = reckoned((items: Kitchen['items']) =>
  groupedBy(livingIn(items), ({ placeId }) => placeId),
);

/** Living items lying right in a place, not in one within it; oldest record first. */
export const itemsRightAt = (kitchen: Kitchen, placeId: Id): readonly Item[] =>
  itemsByPlace(kitchen.items).get(placeId) ?? [];

/** Living items in a place or anywhere within it, in the places' order. */
export const itemsAt = (kitchen: Kitchen, placeId: Id): readonly Item[] =>
  placesBelow(kitchen, placeId).flatMap(({ id }) => itemsRightAt(kitchen, id));

/** How cold a place is: the nearest appliance or cupboard at or above it. */
export type Storage = 'fridge' | 'freezer' | 'pantry' | 'counter' | 'cupboard';
const STORAGE: ReadonlySet<PlaceKind> = new Set<PlaceKind>([
  'fridge',
  'freezer',
  'pantry',
  'counter',
  'cupboard',
]);
export const storageOf = (kitchen: Kitchen, placeId: Id | null): Storage | null =>
  (pathOf(kitchen, placeId).findLast((place) => STORAGE.has(place.kind))?.kind as Storage | undefined) ??
  null;

/** The whole freezers, fridges… of the household. */
export const storagesOf = (kitchen: Kitchen, kind: Storage): readonly Place[] =>
  [...kitchen.places.values()].filter((place) => place.kind === kind);

/** How full each place without places within it is, fullest first. "Empty" is none, "crowded" is the caller's to judge. */
export const placeCounts = (
  kitchen: Kitchen,
  withinId: Id | null = null,
): readonly { readonly place: Place; readonly items: number }[] => {
  const all = withinId === null ? [...kitchen.places.values()] : placesBelow(kitchen, withinId);
  const parents = new Set([...kitchen.places.values()].map((place) => place.parentId));
  const countOf = ({ id }: Place): number => itemsRightAt(kitchen, id).length;
  return all
    .filter((place) => !parents.has(place.id) || countOf(place) > 0)
    .map((place) => ({ place, items: countOf(place) }))
    .sort((a, b) => b.items - a.items);
};
