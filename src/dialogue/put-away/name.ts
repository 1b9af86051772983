/** What the food put away is called. */
import { foodKey, likeNames } from '../../kitchen/index.js';
import type { Mention } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';

/** What to call it: as this household calls it when it knows it, else as said. */
export const nameOf = (turn: Turn, mention: Mention | undefined): string | null => {
  if (!mention) return touchedName(turn);
  const { words, candidates, pointer } = mention;
  const known = candidates.flatMap(({ id, fit }) =>
    fit >= 0.99 ? (turn.kitchen.items.get(id) ?? []) : [],
  )[0];
  if (words && known && foodKey(known.name) === foodKey(words)) return known.name;
  const moreOf = turn.qualifiers.has('more') || turn.qualifiers.has('another');
  const again = words && moreOf ? likeNames(turn.kitchen, words, 'all') : [];
  if (again[0] && again.every(({ item }) => foodKey(item.name) === foodKey(again[0]!.item.name)))
    return again[0].item.name;
  if (words) return words;
  if (known) return known.name;
  const ids = pointer === 'this' ? [turn.memory.touched?.itemId ?? null] : [...turn.memory.items];
  const pointed = pointer
    ? ids.flatMap((id) => (id ? (turn.kitchen.items.get(id) ?? []) : []))[0]
    : undefined;
  return pointed?.name ?? touchedName(turn);
};

/** A marker that is in the hand and was on something before says what comes back. */
const touchedName = (turn: Turn): string | null => {
  const { touched } = turn.memory;
  const marker = touched?.markerId ? turn.kitchen.markers.get(touched.markerId) : undefined;
  const last = marker?.lastItemId ? turn.kitchen.items.get(marker.lastItemId) : undefined;
  return last?.name ?? null;
};
