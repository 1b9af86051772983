/** Checking a place against the record, item by item, over days if need be. */
import type { Id, Item, Kitchen, StockTake } from '../model.js';
import { change, isRefused, livingItem, op, refuse, type Doing, type Result } from '../doing.js';
import { applyChange, joinChanges } from '../apply.js';
import { itemsAt } from '../places.js';
import { finish } from './using-up.js';

/** Checks that were begun and not ended, newest first. */
export const openStockTakes = (kitchen: Kitchen): readonly StockTake[] =>
  [...kitchen.stockTakes.values()]
    .filter(({ finishedAt }) => finishedAt === null)
    .sort((a, b) => b.startedAt.localeCompare(a.startedAt));

/** Starts checking a place. Refused: unknown-place, check-open (`ids` the one to resume). */
export const startStockTake = (doing: Doing, placeId: Id): Result => {
  const place = doing.kitchen.places.get(placeId);
  if (!place) return refuse('unknown-place', { ids: [placeId] });
  const running = openStockTakes(doing.kitchen).find((take) => take.placeId === placeId);
  if (running) return refuse('check-open', { ids: [running.id], about: [place.name] });
  const made: StockTake = {
    id: doing.newId(),
    placeId,
    startedAt: doing.clock.now,
    finishedAt: null,
    seen: {},
  };
  return change('checked', [place.name], [op('stockTake', made.id, null, made)]);
};

/** The next item of the check that nothing was said of yet, or null when all were. */
export const nextToCheck = (kitchen: Kitchen, take: StockTake): Item | null =>
  itemsAt(kitchen, take.placeId).find((item) => !Object.hasOwn(take.seen, item.id)) ?? null;

/** How a check stands. */
export interface Tally {
  readonly there: number;
  readonly gone: number;
  readonly changed: number;
  readonly unsure: number;
  readonly toGo: number;
}
export const tallyOf = (kitchen: Kitchen, take: StockTake): Tally => {
  const count = (what: StockTake['seen'][Id]): number =>
    Object.values(take.seen).filter((seen) => seen === what).length;
  return {
    there: count('there'),
    gone: count('gone'),
    changed: count('changed'),
    unsure: count('unsure'),
    toGo: itemsAt(kitchen, take.placeId).filter(({ id }) => !Object.hasOwn(take.seen, id)).length,
  };
};

/**
 * What was found of one item. "Gone" also finishes it (used up unless `how` says otherwise).
 * Refused: unknown-stock-take, check-closed, unknown-item, already-gone.
 */
export const checkItem = (
  doing: Doing,
  stockTakeId: Id,
  itemId: Id,
  found: StockTake['seen'][Id],
  how: 'used' | 'thrown out' | 'given away' = 'used',
): Result => {
  const take = doing.kitchen.stockTakes.get(stockTakeId);
  if (!take) return refuse('unknown-stock-take', { ids: [stockTakeId] });
  if (take.finishedAt !== null) return refuse('check-closed', { ids: [stockTakeId] });
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  const seen = change(
    'checked',
    [item.name],
    [op('stockTake', take.id, take, { ...take, seen: { ...take.seen, [itemId]: found } })],
  );
  if (found !== 'gone') return seen;
  const gone = finish({ ...doing, kitchen: applyChange(doing.kitchen, seen) }, itemId, how);
  return isRefused(gone) ? gone : joinChanges(seen, gone);
};

/** Ends a check, whether or not all was looked at. Refused: unknown-stock-take, check-closed. */
export const finishStockTake = (doing: Doing, stockTakeId: Id): Result => {
  const take = doing.kitchen.stockTakes.get(stockTakeId);
  if (!take) return refuse('unknown-stock-take', { ids: [stockTakeId] });
  if (take.finishedAt !== null) return refuse('check-closed', { ids: [stockTakeId] });
  const place = doing.kitchen.places.get(take.placeId);
  return change('checked', place ? [place.name] : [], [
    op('stockTake', take.id, take, { ...take, finishedAt: doing.clock.now }),
  ]);
};
