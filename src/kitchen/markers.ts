/** Markers, looked at: where each stands, which are spare, what a count on them means. */
import type { Id, Item, Kitchen, Marker } from './model.js';
import { reckoned } from './index-of.js';
import { livingItems } from './items.js';

const standingIn = reckoned(
  (items: Kitchen['items']): ReadonlyMap<Id, Item> =>
    new Map(
      [...items.values()].flatMap((item) =>
        item.gone === null && item.markerId !== null ? [[item.markerId, item]] : [],
      ),
    ),
);
const standing = (kitchen: Kitchen): ReadonlyMap<Id, Item> => standingIn(kitchen.items);

/** The marker on an item, or null. */
export const markerOf = (kitchen: Kitchen, item: Item): Marker | null =>
  item.markerId === null ? null : (kitchen.markers.get(item.markerId) ?? null);

/** The living item a marker stands on, or null when it is spare. */
export const itemWithMarker = (kitchen: Kitchen, markerId: Id): Item | null =>
  standing(kitchen).get(markerId) ?? null;

/** The item a spare marker was on last, or null. */
export const lastItemOf = (kitchen: Kitchen, marker: Marker): Item | null =>
  marker.lastItemId === null ? null : (kitchen.items.get(marker.lastItemId) ?? null);

/** Markers on no living item. */
export const spareMarkers = (kitchen: Kitchen): readonly Marker[] =>
  [...kitchen.markers.values()].filter((marker) => !standing(kitchen).has(marker.id));

/** What is counted on most markers that have any: "dot" where nothing else is recorded. */
export const countedHere = (kitchen: Kitchen): string => {
  const many = new Map<string, number>();
  for (const { touch } of kitchen.markers.values())
    if ((touch.dots ?? 0) > 0) many.set(touch.counted ?? 'dot', (many.get(touch.counted ?? 'dot') ?? 0) + 1);
  return [...many].reduce<readonly [string, number]>((a, b) => (b[1] > a[1] ? b : a), ['dot', 0])[0];
};

/** What an item is said to be, by its own record and by the dots of its marker. */
export interface Marks {
  readonly diets: readonly string[];
  readonly contains: readonly string[];
  readonly freeFrom: readonly string[];
  /** What the count on the marker means here, or null. */
  readonly dots: string | null;
}

const unique = (all: readonly string[]): readonly string[] => [...new Set(all)];

/** "contains nuts" by dots counts as containing nuts; any other meaning counts as a diet mark. */
export const marksOf = (kitchen: Kitchen, item: Item): Marks => {
  const dots = markerOf(kitchen, item)?.touch.dots;
  const meaning = dots === undefined ? null : (kitchen.household.dotMeanings[dots] ?? null);
  const holds = meaning?.match(/^(?:contains|has|with)\s+(.+)$/i)?.[1]?.toLowerCase();
  return {
    diets: unique([...item.diets, ...(meaning !== null && holds === undefined ? [meaning] : [])]),
    contains: unique([...item.contains, ...(holds === undefined ? [] : [holds])]),
    freeFrom: item.freeFrom,
    dots: meaning,
  };
};

/** The longest of the household's meanings of marks that is among the words. */
export const meaningIn = ({ household: { dotMeanings } }: Kitchen, words: string): string | null =>
  Object.values(dotMeanings)
    .map((meaning) => meaning.toLowerCase())
    .filter((meaning) => ` ${words} `.includes(` ${meaning} `))
    .sort((a, b) => b.length - a.length)[0] ?? null;

/** What marks mean here: diets that food is marked with, and what dots, knots and the like stand for. */
export const meaningsHere = reckoned((kitchen: Kitchen): readonly string[] => [
  ...new Set([
    ...livingItems(kitchen).flatMap((item) => marksOf(kitchen, item).diets),
    ...Object.values(kitchen.household.dotMeanings),
  ]),
]);
