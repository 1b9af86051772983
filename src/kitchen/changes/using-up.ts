/** Taking some, saying what is left, and being finished with it. */
import type { Amount, Share } from '../../terms/amount.js';
import type { Change, Id, Item, Verb } from '../model.js';
import { change, itemOp, livingItem, refuse, type Doing, type Result } from '../doing.js';
import { countedAs, isAmount, isShare, lessAmount, shareOf } from '../amounts.js';
import { freeMarker } from './putting-away.js';

export type GoneHow = NonNullable<Item['gone']>['how'];

const VERB: Readonly<Record<GoneHow, Verb>> = {
  used: 'finished',
  'thrown out': 'threw out',
  'given away': 'gave away',
};

/**
 * Nothing left: the record stays, the marker goes to the spare box and remembers the food.
 * Refused: unknown-item, already-gone.
 */
export const finish = (doing: Doing, itemId: Id, how: GoneHow = 'used'): Result => {
  const item = livingItem(doing.kitchen, itemId);
  return 'refused' in item ? item : finished(doing, item, how);
};

const finished = (doing: Doing, item: Item, how: GoneHow): Change =>
  change(
    VERB[how],
    [item.name],
    [
      ...freeMarker(doing.kitchen, item),
      itemOp(item, { markerId: null, outSince: null, gone: { at: doing.clock.now, how } }),
    ],
  );

/**
 * Takes an amount, or a share of what is left. Taking all of it finishes it.
 * Refused: unknown-item, already-gone, not-an-amount, amount-unknown, unit-differs, more-than-there-is.
 */
export const take = (doing: Doing, itemId: Id, taken: Amount | Share, how: GoneHow = 'used'): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (isShare(taken)) {
    if (!(taken.fraction > 0 && taken.fraction <= 1)) return refuse('not-an-amount');
    if (taken.fraction === 1) return finished(doing, item, how);
    return leave(
      doing,
      item,
      shareOf(item.amount ?? oneOf(item), { ...taken, fraction: 1 - taken.fraction }),
      how,
    );
  }
  if (!isAmount(taken) || taken.value === 0) return refuse('not-an-amount');
  if (!item.amount) return refuse('amount-unknown', { ids: [itemId], about: [item.name] });
  const left = lessAmount(item.amount, taken, doing.kitchen.household.region);
  if (typeof left === 'string') return refuse(left, { ids: [itemId], about: [item.name], have: item.amount });
  return leave(doing, item, left, how);
};

/** One of the container it is in, for "half of it" when nobody said how much there was. */
const oneOf = (item: Item): Amount => ({ value: 1, unit: item.touch.container ?? 'container' });

const leave = (doing: Doing, item: Item, left: Amount, how: GoneHow): Change =>
  left.value === 0
    ? finished(doing, item, how)
    : change(
        'took',
        [item.name],
        [itemOp(item, { amount: left, amountAtFirst: item.amountAtFirst ?? item.amount ?? oneOf(item) })],
      );

/**
 * "About half left", "two left". A share is of what it started with. None left finishes it.
 * Refused: unknown-item, already-gone, not-an-amount, nothing-changes.
 */
export const setLeft = (doing: Doing, itemId: Id, left: Amount | Share): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (isShare(left)) {
    if (!(left.fraction >= 0 && left.fraction <= 1)) return refuse('not-an-amount');
    return leave(doing, item, shareOf(item.amountAtFirst ?? item.amount ?? oneOf(item), left), 'used');
  }
  // A bare count means what the item is counted in: "two left" of five tubs.
  const unit = item.amount ?? item.amountAtFirst;
  const amount = unit ? countedAs(left, unit) : left;
  if (!isAmount(amount)) return refuse('not-an-amount');
  if (amount.value === 0) return finished(doing, item, 'used');
  return change('took', [item.name], [itemOp(item, { amount, amountAtFirst: item.amountAtFirst ?? amount })]);
};
