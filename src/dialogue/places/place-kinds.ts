/** What kind of place a name speaks of. */
import type { PlaceKind } from '../../kitchen/model.js';
import { placesNamed } from '../../understanding/index.js';

const kinds: readonly PlaceKind[] = [
  ...(['fridge', 'freezer', 'pantry', 'counter', 'cupboard'] as const),
  ...(['shelf', 'drawer', 'basket', 'door', 'side'] as const),
];

/** A kind as the record calls it. */
export const recordKind = (word: string | undefined): PlaceKind | null =>
  kinds.find((kind) => kind === word) ?? null;

/** By a word of the record, or by a name as it was said. */
export const kindNamed = (word: string | undefined, locale: string): PlaceKind | null =>
  recordKind(word) ?? (word ? (placesNamed(word, locale)[0] ?? null) : null);

const whole: ReadonlySet<PlaceKind> = new Set<PlaceKind>([
  'fridge',
  'freezer',
  'pantry',
  'counter',
  'cupboard',
]);

/** A place of its own, not part of another. */
export const isWholeKind = (kind: PlaceKind): boolean => whole.has(kind);
