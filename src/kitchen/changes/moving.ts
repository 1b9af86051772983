/** Where food is and what state it is in: moving, freezing, thawing, standing out, reheating, opening. */
import type { Amount } from '../../terms/amount.js';
import { isPlainDate, today, type Instant, type PlainDate } from '../../terms/dates.js';
import type { Change, Id, Item, Op, Verb } from '../model.js';
import { change, itemOp, livingItem, op, refuse, type Doing, type Refused, type Result } from '../doing.js';
import { countedAs, isSome, lessAmount } from '../amounts.js';
import { backInTheCold } from '../history.js';
import { storageOf, storagesOf } from '../places.js';

/** True for food that lies in a freezer. */
export const isFrozen = (doing: Pick<Doing, 'kitchen'>, item: Item): boolean =>
  storageOf(doing.kitchen, item.placeId) === 'freezer';

/** True when freezing it now would be freezing it again after it thawed; the cook is cautioned. */
export const isRefreeze = (doing: Pick<Doing, 'kitchen'>, item: Item): boolean =>
  !isFrozen(doing, item) && item.dates.thawed !== undefined;

/** A second freezing does not make the first forgotten. */
const frozenAgain = (item: Item, day: PlainDate): Pick<Item, 'frozenBefore'> => {
  const { frozen, thawed } = item.dates;
  return frozen !== undefined && thawed !== undefined && frozen !== day
    ? { frozenBefore: [...(item.frozenBefore ?? []), frozen] }
    : {};
};

/** Thawed a second time, it was thawed before: how long it lay frozen between is reckoned from both. */
const thawedAgain = (item: Item, day: PlainDate): Pick<Item, 'thawedBefore'> => {
  const { frozen, thawed } = item.dates;
  const again = thawed !== undefined && frozen !== undefined && frozen >= thawed && thawed !== day;
  return again && (item.frozenBefore?.length ?? 0) > (item.thawedBefore?.length ?? 0)
    ? { thawedBefore: [...(item.thawedBefore ?? []), thawed] }
    : {};
};

/** What a place does to an item that comes to it on a day. */
const arriving = (doing: Doing, item: Item, placeId: Id, day: PlainDate): Partial<Item> => {
  const from = storageOf(doing.kitchen, item.placeId);
  const to = storageOf(doing.kitchen, placeId);
  const dates =
    to === 'freezer' && from !== 'freezer'
      ? { ...item.dates, frozen: day }
      : from === 'freezer' && to !== 'freezer'
        ? { ...item.dates, thawed: day }
        : item.dates;
  const cold = (storage: typeof from): boolean => storage === 'fridge' || storage === 'freezer';
  // Chilled food set down on a counter stands out from now; bread moved there from a pantry does not.
  const setDown = cold(from) && to !== null ? doing.clock.now : null;
  const again =
    to === 'freezer' && from !== 'freezer'
      ? frozenAgain(item, day)
      : from === 'freezer' && to !== 'freezer'
        ? thawedAgain(item, day)
        : {};
  const out = cold(to) ? backInTheCold(item, doing.clock.now) : { outSince: item.outSince ?? setDown };
  return { placeId, dates, ...again, ...out };
};

/**
 * Changes an item, or only a part of it: then the part becomes an item of its own
 * beside the rest, with a batch id in common. Without an amount, all of it.
 */
const changePart = (
  doing: Doing,
  item: Item,
  amount: Amount | undefined,
  fields: Partial<Item>,
): readonly Op[] | Refused => {
  if (!amount) return [itemOp(item, fields)];
  if (!isSome(amount)) return refuse('not-an-amount');
  if (!item.amount) return refuse('amount-unknown', { ids: [item.id], about: [item.name] });
  const left = lessAmount(item.amount, amount, doing.kitchen.household.region);
  if (typeof left === 'string')
    return refuse(left, { ids: [item.id], about: [item.name], have: item.amount });
  if (left.value === 0) return [itemOp(item, fields)];
  const part = countedAs(amount, item.amount);
  const batchId = item.batchId ?? doing.newId();
  const made: Item = {
    ...item,
    ...fields,
    id: doing.newId(),
    batchId,
    amount: part,
    amountAtFirst: part,
    markerId: null,
  };
  return [itemOp(item, { amount: left, batchId }), op('item', made.id, null, made)];
};

const made = (verb: Verb, item: Item, ops: readonly Op[] | Refused): Result =>
  'refused' in ops ? ops : change(verb, [item.name], ops);

export interface MoveTo {
  readonly placeId: Id;
  readonly spot?: string | null;
  /** Only this much of it moves. */
  readonly amount?: Amount;
}

/**
 * Moves an item, or part of it. Into a freezer notes the day it was frozen, out of one the day it
 * was thawed; from the cold onto a counter notes since when it stands out.
 * Refused: unknown-item, already-gone, unknown-place, nothing-changes, and amounts as in `take`.
 */
export const move = (doing: Doing, itemId: Id, to: MoveTo): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (!doing.kitchen.places.has(to.placeId)) return refuse('unknown-place', { ids: [to.placeId] });
  const spot = to.spot ?? null;
  if (item.placeId === to.placeId && item.spot === spot && item.outSince === null) {
    return refuse('nothing-changes', { ids: [itemId], about: [item.name] });
  }
  const fields = { ...arriving(doing, item, to.placeId, today(doing.clock)), spot };
  return made('moved', item, changePart(doing, item, to.amount, fields));
};

/**
 * Opened on a day (today unless said). Refused: unknown-item, already-gone, not-a-date, nothing-changes.
 */
export const open = (doing: Doing, itemId: Id, day: PlainDate = today(doing.clock)): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (!isPlainDate(day)) return refuse('not-a-date');
  if (item.dates.opened === day) return refuse('nothing-changes', { ids: [itemId], about: [item.name] });
  const { open: _open, ...rest } = item;
  return change(
    'opened',
    [item.name],
    [op('item', itemId, item, { ...rest, dates: { ...item.dates, opened: day } })],
  );
};

/**
 * Frozen on a day (today unless said), in the freezer or part of one that was named; in the only
 * freezer when none was. An item in a freezer already gets its date only.
 * Refused: unknown-item, already-gone, unknown-place, not-a-freezer, which-freezer, not-a-date,
 * already-frozen, and amounts as in `take`.
 */
export const freeze = (
  doing: Doing,
  itemId: Id,
  how: {
    readonly day?: PlainDate;
    readonly placeId?: Id;
    readonly spot?: string | null;
    readonly amount?: Amount;
  } = {},
): Result => {
  const { kitchen } = doing;
  const item = livingItem(kitchen, itemId);
  if ('refused' in item) return item;
  const day = how.day ?? today(doing.clock);
  if (!isPlainDate(day)) return refuse('not-a-date');
  if (how.placeId !== undefined && !kitchen.places.has(how.placeId)) {
    return refuse('unknown-place', { ids: [how.placeId] });
  }
  const frozen = isFrozen(doing, item);
  const freezers = storagesOf(kitchen, 'freezer');
  const placeId =
    how.placeId ?? (frozen ? item.placeId : freezers.length === 1 ? freezers[0]?.id : undefined);
  if (!placeId) return refuse('which-freezer', { ids: freezers.map(({ id }) => id) });
  if (storageOf(kitchen, placeId) !== 'freezer') return refuse('not-a-freezer', { ids: [placeId] });
  const dates = { ...item.dates, frozen: frozen && how.day === undefined ? (item.dates.frozen ?? day) : day };
  if (frozen && item.placeId === placeId && item.dates.frozen === dates.frozen) {
    return refuse('already-frozen', { ids: [itemId], about: [item.name] });
  }
  const spot = how.spot ?? (item.placeId === placeId ? item.spot : null);
  const again = frozen ? {} : frozenAgain(item, day);
  const fields = { placeId, spot, dates, ...again, ...backInTheCold(item, doing.clock.now) };
  return made('froze', item, changePart(doing, item, how.amount, fields));
};

/**
 * Set to thaw from a day (today unless said), where it was put for that; it stays where it is
 * recorded when nobody said. Refused: unknown-item, already-gone, unknown-place, not-frozen, not-a-date.
 */
export const thaw = (
  doing: Doing,
  itemId: Id,
  how: {
    readonly day?: PlainDate;
    readonly placeId?: Id;
    readonly spot?: string | null;
    readonly amount?: Amount;
  } = {},
): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  const day = how.day ?? today(doing.clock);
  if (!isPlainDate(day)) return refuse('not-a-date');
  if (how.placeId !== undefined && !doing.kitchen.places.has(how.placeId)) {
    return refuse('unknown-place', { ids: [how.placeId] });
  }
  if (!isFrozen(doing, item) && item.dates.frozen === undefined) {
    return refuse('not-frozen', { ids: [itemId], about: [item.name] });
  }
  const there = how.placeId === undefined ? {} : arriving(doing, item, how.placeId, day);
  const fields = {
    ...thawedAgain(item, day),
    ...there,
    dates: { ...item.dates, thawed: day },
    spot: how.placeId ? (how.spot ?? null) : item.spot,
  };
  return made('thawed', item, changePart(doing, item, how.amount, fields));
};

/**
 * Standing at room temperature since an instant (now unless said). `hot`: the air is hotter than the limit
 * in `time-rules.json`; `atLeast`: the hour is a guess. Refused: unknown-item, already-gone.
 */
export const takeOut = (
  doing: Doing,
  itemId: Id,
  since: Instant = doing.clock.now,
  how: { readonly hot?: boolean; readonly atLeast?: boolean } = {},
): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  // The earlier time stands: being taken out twice does not make it fresher.
  const outSince = item.outSince !== null && item.outSince < since ? item.outSince : since;
  const hot = how.hot || item.outHot ? { outHot: true } : {};
  const atLeast = how.atLeast ? { outAtLeast: true } : {};
  return change('took out', [item.name], [itemOp(item, { outSince, ...hot, ...atLeast })]);
};

/** Back where it was, or at another place. Refused: unknown-item, already-gone, unknown-place, not-out. */
export const putBack = (
  doing: Doing,
  itemId: Id,
  to: { readonly placeId?: Id; readonly spot?: string | null } = {},
): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (to.placeId !== undefined && to.placeId !== item.placeId) {
    return move(doing, itemId, { placeId: to.placeId, spot: to.spot ?? null });
  }
  if (item.outSince === null) return refuse('not-out', { ids: [itemId], about: [item.name] });
  return change(
    'moved',
    [item.name],
    [itemOp(item, { ...backInTheCold(item, doing.clock.now), spot: to.spot ?? item.spot })],
  );
};

/** Reheated once more. Refused: unknown-item, already-gone. */
export const reheated = (doing: Doing, itemId: Id): Change | Refused => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  return change('reheated', [item.name], [itemOp(item, { timesReheated: item.timesReheated + 1 })]);
};
