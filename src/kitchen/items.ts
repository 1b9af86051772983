/** Items, looked at: which live, which belong together, what was learned from earlier ones. */
import type { Amount } from '../terms/amount.js';
import type { Id, Item, Kitchen } from './model.js';
import { groupedBy, reckoned } from './index-of.js';
import { foodKey, foodWords, likenessOf } from './names.js';
import { sumAmounts } from './amounts.js';

// Not the map's order: that depends on whether the kitchen was changed here or read from a store.
const byAge = (a: Item, b: Item): number =>
  a.addedAt < b.addedAt ? -1 : a.addedAt > b.addedAt ? 1 : a.id < b.id ? -1 : 1;

export const livingIn = reckoned((items: Kitchen['items']) =>
  [...items.values()].filter((item) => item.gone === null).sort(byAge),
);

/** Where an item stands, or would stand, among items in order of age. */
const positionOf = (sorted: readonly Item[], item: Item): number => {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (byAge(sorted[middle]!, item) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** More changed than this, sorting anew costs no more. */
const CARRIED_AT_MOST = 64;

/** Tells what lives after a change from what lived before, so that a change costs alike in any kitchen. */
export const carryLiving = (from: Kitchen['items'], to: Kitchen['items'], changed: ReadonlySet<Id>): void => {
  if (changed.size > CARRIED_AT_MOST) return;
  livingIn.carry(from, to, (before) => {
    const living = [...before];
    for (const id of changed) {
      const [old, now] = [from.get(id), to.get(id)];
      if (old?.gone === null) living.splice(positionOf(living, old), 1);
      if (now?.gone === null) living.splice(positionOf(living, now), 0, now);
    }
    return living;
  });
};

/** Items not used up, thrown out or given away; oldest record first. */
export const livingItems = (kitchen: Kitchen): readonly Item[] => livingIn(kitchen.items);

const batchesIn = reckoned((items: Kitchen['items']) => groupedBy(livingIn(items), ({ batchId }) => batchId));

/** Living containers filled from the same pot, the item itself included. */
export const batchOf = (kitchen: Kitchen, item: Item): readonly Item[] =>
  item.batchId === null ? [item] : (batchesIn(kitchen.items).get(item.batchId) ?? [item]);

// Kept by the item, not in an index of the kitchen: an item that did not change keeps its words through
// every version, and reading two thousand kept ones costs less than indexing them anew after each change.
const nameOf = reckoned((item: Item) => {
  const words = foodWords(item.name);
  return { words, key: words.join(' ') };
});

/** Items whose name fits, best first; newest first among equals. Only living ones unless told otherwise. */
export const likeNames = (
  kitchen: Kitchen,
  name: string,
  which: 'living' | 'gone' | 'all' = 'living',
): readonly { readonly item: Item; readonly fit: number }[] => {
  const words = foodWords(name);
  const among = which === 'living' ? livingItems(kitchen) : [...kitchen.items.values()];
  return among
    .filter((item) => which !== 'gone' || item.gone !== null)
    .map((item) => ({ item, fit: likenessOf(nameOf(item).words, words) }))
    .filter(({ fit }) => fit > 0)
    .sort((a, b) => b.fit - a.fit || byAge(b.item, a.item));
};

const sameFood = (kitchen: Kitchen, name: string): readonly Item[] => {
  const key = foodKey(name);
  return [...kitchen.items.values()].filter((item) => nameOf(item).key === key);
};

/** The gone item of that food that went last, whose marker and details a new one may take over. */
export const lastGone = (kitchen: Kitchen, name: string): Item | null =>
  sameFood(kitchen, name)
    .filter((item) => item.gone !== null)
    .sort((a, b) => (b.gone?.at ?? '').localeCompare(a.gone?.at ?? ''))[0] ?? null;

/** What the last item of the same food was like, for filling in what nobody says again. */
export interface Learned {
  readonly itemId: Id;
  readonly placeId: Id | null;
  readonly spot: string | null;
  readonly amount: Amount | null;
  readonly container: string | null;
}
export const learnedDefaults = (kitchen: Kitchen, name: string): Learned | null => {
  const last = [...sameFood(kitchen, name)].sort((a, b) => b.addedAt.localeCompare(a.addedAt))[0];
  if (!last) return null;
  const known = last.placeId !== null && kitchen.places.has(last.placeId);
  return {
    itemId: last.id,
    placeId: known ? last.placeId : null,
    spot: known ? last.spot : null,
    amount: last.amountAtFirst,
    container: last.touch.container ?? null,
  };
};

/** Amounts added up where they can be, one per unit that cannot; `unknown` items have none said. */
export const totalOf = (
  kitchen: Kitchen,
  items: readonly Item[],
): { readonly amounts: readonly Amount[]; readonly unknown: number } => {
  const amounts: Amount[] = [];
  let unknown = 0;
  for (const { amount } of items) {
    if (!amount) {
      unknown += 1;
      continue;
    }
    const at = amounts.findIndex((sum) => sumAmounts(sum, amount, kitchen.household.region) !== null);
    const sum = at < 0 ? undefined : amounts[at];
    if (!sum) amounts.push(amount);
    else amounts[at] = sumAmounts(sum, amount, kitchen.household.region) ?? sum;
  }
  return { amounts, unknown };
};
