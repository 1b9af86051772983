/** What kind of place a name speaks of. */
import type { PlaceKind } from '../../kitchen/model.js';

const kinds: readonly (readonly [RegExp, PlaceKind])[] = [
  [/freezer|ice ?box/, 'freezer'],
  [
    /^(bread|flour|potato|veg|vegetable|fruit|egg|biscuit|cookie|cake|spice|wine) (bin|box|rack|bowl|basket|tin|jar)$/,
    'cupboard',
  ],
  [/door/, 'door'],
  [/fridge|refrigerator/, 'fridge'],
  [/pantry|larder|cellar|basement/, 'pantry'],
  [/counter|worktop|table|sideboard|window ?sill|bench|island/, 'counter'],
  [/cupboard|cabinet|garage|utility room|shed|hall|porch/, 'cupboard'],
  [/shel(f|ves)|rack/, 'shelf'],
  [/drawer|crisper/, 'drawer'],
  [/basket|bin/, 'basket'],
  [/side/, 'side'],
];

export const kindNamed = (word: string | undefined): PlaceKind | null =>
  word ? (kinds.find(([pattern]) => pattern.test(word.toLowerCase()))?.[1] ?? null) : null;

const whole: ReadonlySet<PlaceKind> = new Set<PlaceKind>([
  'fridge',
  'freezer',
  'pantry',
  'counter',
  'cupboard',
]);

/** A place of its own, not part of another. */
export const isWholeKind = (kind: PlaceKind): boolean => whole.has(kind);
