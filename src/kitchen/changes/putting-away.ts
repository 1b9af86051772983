/** Putting food away: one container, or a batch shared out over several; and buying again. */
import type { Amount } from '../../terms/amount.js';
import { today, type PlainDate } from '../../terms/dates.js';
import type { Touch } from '../../terms/touch.js';
import type { Change, DateKind, Id, Item, Kitchen, Op, Preparation } from '../model.js';
import { change, isRefused, op, refuse, type Doing, type Refused, type Result } from '../doing.js';
import { isSome } from '../amounts.js';
import { itemWithMarker } from '../markers.js';
import { storageOf } from '../places.js';

/** One container of what is put away. */
export interface Share {
  readonly amount?: Amount | null;
  readonly placeId?: Id | null;
  readonly spot?: string | null;
  readonly markerId?: Id | null;
  readonly touch?: Touch;
}

/** What was said of a food. Everything but its name may be left out: unknown is kept as unknown. */
export interface Draft extends Share {
  readonly name: string;
  /** Null for a date said to be unknown: opened, it is open all the same. */
  readonly dates?: Readonly<Partial<Record<DateKind, PlainDate | null>>>;
  readonly maker?: string | null;
  readonly ownerId?: Id | null;
  readonly diets?: readonly string[];
  readonly contains?: readonly string[];
  readonly freeFrom?: readonly string[];
  readonly cautions?: readonly string[];
  readonly preparations?: readonly Preparation[];
  readonly notes?: readonly string[];
  readonly timesReheated?: number;
  /** Codes printed on the packet. */
  readonly codes?: readonly string[];
  /** "two on the top shelf, six in the chest freezer": one item each, one description. */
  readonly shares?: readonly Share[];
  /** Lines of the list to buy that this fulfils; they go. */
  readonly purchaseIds?: readonly Id[];
}

/** Dates that are known, with the day it went into a freezer when it goes into one now. */
export const datesIn = (
  doing: Doing,
  placeId: Id | null,
  said: Draft['dates'] = {},
): Readonly<Partial<Record<DateKind, PlainDate>>> => {
  const known = Object.fromEntries(Object.entries(said).filter(([, day]) => day !== null)) as Partial<
    Record<DateKind, PlainDate>
  >;
  // Only food that is new is known to be frozen today: what was found there may be years old, and what was bought
  // on another day may have been frozen since.
  const isNew = known.made !== undefined || known.bought === today(doing.clock);
  if (isNew && said.frozen === undefined && storageOf(doing.kitchen, placeId) === 'freezer') {
    return { ...known, frozen: today(doing.clock) };
  }
  return known;
};

const checkPlace = (kitchen: Kitchen, placeId: Id | null | undefined): Refused | null =>
  placeId && !kitchen.places.has(placeId) ? refuse('unknown-place', { ids: [placeId] }) : null;

/** Why a marker cannot go on something new, or null. `forItem` may already bear it. */
export const checkMarker = (kitchen: Kitchen, markerId: Id, forItem: Id | null = null): Refused | null => {
  if (!kitchen.markers.has(markerId)) return refuse('unknown-marker', { ids: [markerId] });
  const on = itemWithMarker(kitchen, markerId);
  return on && on.id !== forItem ? refuse('marker-in-use', { ids: [on.id], about: [on.name] }) : null;
};

/** A marker that stands on food again no longer remembers what it was on. */
export const takeMarker = (kitchen: Kitchen, markerId: Id): readonly Op[] => {
  const marker = kitchen.markers.get(markerId);
  return marker && marker.lastItemId !== null
    ? [op('marker', marker.id, marker, { ...marker, lastItemId: null })]
    : [];
};

/** A marker that comes off food goes to the spare box and remembers it. */
export const freeMarker = (kitchen: Kitchen, item: Item): readonly Op[] => {
  const marker = item.markerId === null ? undefined : kitchen.markers.get(item.markerId);
  return marker ? [op('marker', marker.id, marker, { ...marker, lastItemId: item.id })] : [];
};

/**
 * Records food as put away: one item, or one for each share with a batch id in common.
 * Refused: no-name, unknown-place, unknown-marker, marker-in-use, not-an-amount, unknown-purchase.
 */
export const putAway = (doing: Doing, draft: Draft): Result => {
  const { kitchen } = doing;
  const name = draft.name.trim();
  if (name === '') return refuse('no-name');
  const shares: readonly Share[] = draft.shares?.length ? draft.shares : [draft];
  const batchId = shares.length > 1 ? doing.newId() : null;
  const ops: Op[] = [];
  const markersUsed = new Set<Id>();
  for (const share of shares) {
    const placeId = share.placeId === undefined ? (draft.placeId ?? null) : share.placeId;
    const markerId = share.markerId ?? null;
    const amount = share.amount ?? null;
    const wrong =
      checkPlace(kitchen, placeId) ??
      (amount && !isSome(amount) ? refuse('not-an-amount') : null) ??
      (markerId === null ? null : checkMarker(kitchen, markerId)) ??
      (markerId !== null && markersUsed.has(markerId) ? refuse('marker-in-use', { about: [name] }) : null);
    if (wrong) return wrong;
    if (markerId !== null) {
      markersUsed.add(markerId);
      ops.push(...takeMarker(kitchen, markerId));
    }
    const item: Item = {
      id: doing.newId(),
      name,
      batchId,
      amount,
      amountAtFirst: amount,
      touch: { ...draft.touch, ...share.touch },
      placeId,
      spot: share.spot ?? null,
      markerId,
      dates: datesIn(doing, placeId, draft.dates),
      ...(draft.dates?.opened === null ? { open: true } : {}),
      outSince: null,
      timesReheated: draft.timesReheated ?? 0,
      maker: draft.maker ?? null,
      ownerId: draft.ownerId ?? null,
      diets: draft.diets ?? [],
      contains: draft.contains ?? [],
      freeFrom: draft.freeFrom ?? [],
      cautions: draft.cautions ?? [],
      preparations: draft.preparations ?? [],
      notes: draft.notes ?? [],
      ...(draft.codes?.length ? { codes: draft.codes } : {}),
      addedAt: doing.clock.now,
      addedBy: doing.speaker.personId,
      gone: null,
    };
    ops.push(op('item', item.id, null, item));
  }
  for (const id of draft.purchaseIds ?? []) {
    const purchase = kitchen.purchases.get(id);
    if (!purchase) return refuse('unknown-purchase', { ids: [id] });
    ops.push(op('purchase', id, purchase, null));
  }
  return change('put away', [name], ops);
};

/**
 * What a new container of the same food takes over from one that is gone: marker (when still
 * spare), place, amount, reheating, diet marks, maker, what it contains. Dates never carry over,
 * and neither does "free from": a new pack may be made otherwise.
 */
export const carriedOver = (kitchen: Kitchen, gone: Item): Draft => {
  const marker = [...kitchen.markers.values()].find(
    ({ id, lastItemId }) => lastItemId === gone.id && !itemWithMarker(kitchen, id),
  );
  const placeKnown = gone.placeId !== null && kitchen.places.has(gone.placeId);
  return {
    name: gone.name,
    amount: gone.amountAtFirst,
    touch: gone.touch,
    placeId: placeKnown ? gone.placeId : null,
    spot: placeKnown ? gone.spot : null,
    markerId: marker?.id ?? null,
    maker: gone.maker,
    ownerId: gone.ownerId,
    diets: gone.diets,
    contains: gone.contains,
    cautions: gone.cautions,
    preparations: gone.preparations,
    ...(gone.codes ? { codes: gone.codes } : {}),
    purchaseIds: [...kitchen.purchases.values()]
      .filter(({ replaces }) => replaces === gone.id)
      .map(({ id }) => id),
  };
};

/**
 * "I bought more sorghum": a new item with what carries over from the gone one; `said` wins over it.
 * Refused: unknown-item, still-here, and what `putAway` refuses.
 */
export const bringBack = (doing: Doing, goneItemId: Id, said: Partial<Draft> = {}): Result => {
  const gone = doing.kitchen.items.get(goneItemId);
  if (!gone) return refuse('unknown-item', { ids: [goneItemId] });
  if (!gone.gone) return refuse('still-here', { ids: [goneItemId], about: [gone.name] });
  const carried = carriedOver(doing.kitchen, gone);
  const chosen = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
  return putAway(doing, { ...carried, ...chosen });
};

/** The new items a change made, as it left them. */
export const itemsMade = (made: Change | Refused): readonly Item[] =>
  isRefused(made)
    ? []
    : made.ops.flatMap((each) => (each.kind === 'item' && !each.before && each.after ? [each.after] : []));
