/** The ledger of what a food went through: written when an outing or a power cut is over, carried by every part of it. */
import type { Instant } from '../terms/dates.js';
import type { FoodEvent, Item } from './model.js';

const keyOf = (event: FoodEvent): string => JSON.stringify(event);

/** Several ledgers as one, in order, each event once: food put together has been through all of it. */
export const historiesTogether = (items: readonly Pick<Item, 'history'>[]): Pick<Item, 'history'> => {
  const events = new Map(items.flatMap(({ history = [] }) => history).map((one) => [keyOf(one), one]));
  return events.size === 0
    ? {}
    : { history: [...events.values()].sort((a, b) => a.from.localeCompare(b.from)) };
};

/** What is written down of an item with one event more. */
export const withEvent = (item: Item, event: FoodEvent): Pick<Item, 'history'> =>
  historiesTogether([item, { history: [event] }]);

/** It is in the cold again: how long it stood out stays on record. */
export const backInTheCold = (item: Item, now: Instant): Partial<Item> => {
  const { outSince, outHot, outAtLeast } = item;
  if (outSince === null) return { outSince: null };
  const outing: FoodEvent = {
    kind: 'out',
    from: outSince,
    to: now > outSince ? now : outSince,
    ...(outHot ? { hot: true } : {}),
    ...(outAtLeast ? { atLeast: true } : {}),
  };
  return { outSince: null, outHot: false, outAtLeast: false, ...withEvent(item, outing) };
};
