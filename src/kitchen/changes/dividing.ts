/** One container into several, several into one. */
import type { Amount } from '../../terms/amount.js';
import { daysBetween, today, type PlainDate } from '../../terms/dates.js';
import type { DateKind, Id, Item, Op } from '../model.js';
import { change, itemOp, livingItem, op, refuse, type Doing, type Result } from '../doing.js';
import { isSome, lessAmount, partsOf, sumAmounts } from '../amounts.js';
import { historiesTogether } from '../history.js';
import { foodKey } from '../names.js';
import { storageOf } from '../places.js';
import { DATE_KINDS } from '../shapes.js';
import { checkMarker, freeMarker, takeMarker, type Share } from './putting-away.js';

/** More parts than this out of one container is a mishearing. */
const MOST_PARTS = 50;

/**
 * Divides an item: into `n` equal parts, or into the parts named (what they do not take stays in
 * the first container). The first container keeps its record and marker; all share a batch id.
 * Refused: unknown-item, already-gone, too-few, too-many, unknown-place, marker refusals, and amounts
 * as in `take`. With an unknown amount, equal parts are of unknown amount too.
 */
export const split = (doing: Doing, itemId: Id, into: number | readonly Share[]): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  const { region } = doing.kitchen.household;
  const equal = typeof into === 'number';
  const count = equal ? into : into.length;
  if (!Number.isInteger(count) || count < (equal ? 2 : 1)) return refuse('too-few');
  if (count > MOST_PARTS) return refuse('too-many');
  const batchId = item.batchId ?? doing.newId();
  let left = item.amount;
  const shares: readonly Share[] = equal
    ? (item.amount ? partsOf(item.amount, into) : Array.from({ length: into }, () => null))
        .slice(1)
        .map((amount) => ({ amount }))
    : into;
  const ops: Op[] = [];
  const used = new Set<Id>();
  for (const share of shares) {
    const amount: Amount | null = share.amount ?? null;
    if (amount) {
      if (!isSome(amount)) return refuse('not-an-amount');
      if (!left) return refuse('amount-unknown', { ids: [itemId], about: [item.name] });
      const less = lessAmount(left, amount, region);
      if (typeof less === 'string') return refuse(less, { ids: [itemId], about: [item.name], have: left });
      left = less;
    }
    if (share.placeId && !doing.kitchen.places.has(share.placeId)) {
      return refuse('unknown-place', { ids: [share.placeId] });
    }
    const markerId = share.markerId ?? null;
    if (markerId !== null) {
      const wrong = used.has(markerId) ? refuse('marker-in-use') : checkMarker(doing.kitchen, markerId);
      if (wrong) return wrong;
      used.add(markerId);
      ops.push(...takeMarker(doing.kitchen, markerId));
    }
    const part: Item = {
      ...item,
      id: doing.newId(),
      batchId,
      amount,
      amountAtFirst: amount,
      touch: share.touch ?? item.touch,
      placeId: share.placeId === undefined ? item.placeId : share.placeId,
      spot: share.spot ?? (share.placeId === undefined ? item.spot : null),
      markerId,
      addedAt: doing.clock.now,
      addedBy: doing.speaker.personId,
    };
    ops.push(op('item', part.id, null, part));
  }
  if (left && left.value === 0)
    return refuse('more-than-there-is', {
      ids: [itemId],
      about: [item.name],
      ...(item.amount ? { have: item.amount } : {}),
    });
  return change(
    'split',
    [item.name],
    [itemOp(item, { batchId, amount: left, amountAtFirst: left ?? item.amountAtFirst }), ...ops],
  );
};

/** The earliest of each kind: mixed food is as old as the oldest in it. */
const earliestDates = (items: readonly Item[]): Item['dates'] => {
  const dates: Partial<Record<DateKind, PlainDate>> = {};
  for (const kind of DATE_KINDS) {
    const days = items.flatMap((item) => item.dates[kind] ?? []).sort();
    if (days[0] !== undefined) dates[kind] = days[0];
  }
  return dates;
};

/** Days it was kept and not frozen, as far as its dates tell; null where nothing says since when. */
const daysKept = ({ dates, frozenBefore = [], thawedBefore = [] }: Item, now: PlainDate): number | null => {
  const [since] = [dates.made, dates.bought, dates.opened].flatMap((day) => day ?? []).sort();
  if (since === undefined) return null;
  const thaws = [...thawedBefore, ...(dates.thawed === undefined ? [] : [dates.thawed])];
  const froze = [...frozenBefore, ...(dates.frozen === undefined ? [] : [dates.frozen])];
  const stopped = froze.map((from, at) => Math.max(0, daysBetween(from, thaws[at] ?? now)));
  return daysBetween(since, now) - stopped.reduce((sum, one) => sum + one, 0);
};

/**
 * Where a part was frozen, the earliest of each date would give the others a stop they never had: the part that was
 * kept longest without one gives its dates. That some of it was thawed is kept, as of that day and without a stop.
 */
const datesTogether = (doing: Doing, items: readonly Item[]): Partial<Item> => {
  const dates = earliestDates(items);
  if (items.every((item) => item.dates.frozen === undefined)) return { dates };
  const inFreezer = storageOf(doing.kitchen, items[0]!.placeId) === 'freezer';
  // In the freezer: begun with the first of it, and frozen with the last.
  if (inFreezer) {
    const last = items
      .flatMap((one) => one.dates.frozen ?? [])
      .sort()
      .at(-1)!;
    return { dates: { ...dates, frozen: last } };
  }
  const now = today(doing.clock);
  const kept = items.map((item) => ({ item, days: daysKept(item, now) ?? Number.POSITIVE_INFINITY }));
  const { item: oldest } = kept.reduce((one, other) => (other.days > one.days ? other : one));
  const { made: anyMade, bought: _bought, frozen: _frozen, thawed, ...printed } = dates;
  const { bought, thawed: ownThaw } = oldest.dates;
  // Some of it was cooked here: so is the whole, from the day the oldest of it is from.
  const made = oldest.dates.made ?? (anyMade === undefined ? undefined : (bought ?? anyMade));
  // Frozen, and out of the freezer since a day nobody told: that stays unknown of the whole.
  const unknown = items.find((one) => one.dates.frozen !== undefined && one.dates.thawed === undefined);
  // The use-by of a packet that was not frozen by then is put off by no other's freezing.
  const owesUseBy = items.some(
    ({ dates: { useBy, frozen: froze } }) => useBy !== undefined && (froze === undefined || froze > useBy),
  );
  const since = ownThaw ?? thawed;
  const noStop = since !== undefined && (owesUseBy || oldest.dates.frozen === undefined);
  const frozen = unknown?.dates.frozen ?? (noStop ? since : oldest.dates.frozen);
  return {
    dates: {
      ...printed,
      ...(made === undefined ? {} : { made }),
      ...(bought === undefined ? {} : { bought }),
      ...(frozen === undefined ? {} : { frozen }),
      ...(since === undefined || unknown ? {} : { thawed: since }),
    },
    ...(oldest.frozenBefore ? { frozenBefore: oldest.frozenBefore } : {}),
    ...(oldest.thawedBefore ? { thawedBefore: oldest.thawedBefore } : {}),
  };
};

const inAll = (lists: readonly (readonly string[])[]): readonly string[] =>
  (lists[0] ?? []).filter((entry) => lists.every((list) => list.includes(entry)));
const inAny = (lists: readonly (readonly string[])[]): readonly string[] => [...new Set(lists.flat())];

/**
 * Puts items together into the first. It takes the earliest dates, every allergen and caution, and
 * only those diet and free-from marks that all had; the others are gone and their markers freed.
 * Refused: too-few, unknown-item, already-gone, unit-differs, different-foods unless `anyway`.
 */
export const merge = (
  doing: Doing,
  itemIds: readonly Id[],
  how: { readonly anyway?: boolean } = {},
): Result => {
  const ids = [...new Set(itemIds)];
  if (ids.length < 2) return refuse('too-few');
  const items: Item[] = [];
  for (const id of ids) {
    const item = livingItem(doing.kitchen, id);
    if ('refused' in item) return item;
    items.push(item);
  }
  const [first, ...rest] = items as [Item, ...Item[]];
  const differ = rest.filter(({ name }) => foodKey(name) !== foodKey(first.name));
  if (differ.length > 0 && !how.anyway) {
    return refuse('different-foods', {
      ids: differ.map(({ id }) => id),
      about: differ.map(({ name }) => name),
    });
  }
  let amount = first.amount;
  for (const item of rest) {
    if (!amount || !item.amount) {
      amount = null;
      break;
    }
    const sum = sumAmounts(amount, item.amount, doing.kitchen.household.region);
    if (!sum) return refuse('unit-differs', { ids: [item.id], about: [item.name], have: item.amount });
    amount = sum;
  }
  const outs = items.flatMap(({ outSince }) => outSince ?? []).sort();
  const whole = itemOp(first, {
    amount,
    amountAtFirst: amount,
    ...datesTogether(doing, items),
    outSince: outs[0] ?? null,
    ...(items.some(({ open }) => open) ? { open: true } : {}),
    ...(items.some(({ outHot }) => outHot) ? { outHot: true } : {}),
    ...historiesTogether(items),
    timesReheated: Math.max(...items.map(({ timesReheated }) => timesReheated)),
    diets: inAll(items.map(({ diets }) => diets)),
    freeFrom: inAll(items.map(({ freeFrom }) => freeFrom)),
    contains: inAny(items.map(({ contains }) => contains)),
    cautions: inAny(items.map(({ cautions }) => cautions)),
    notes: inAny(items.map(({ notes }) => notes)),
  });
  const others = rest.flatMap((item) => [
    ...freeMarker(doing.kitchen, item),
    itemOp(item, { markerId: null, outSince: null, gone: { at: doing.clock.now, how: 'used' } }),
  ]);
  return change('merged', inAny(items.map(({ name }) => [name])), [whole, ...others]);
};
