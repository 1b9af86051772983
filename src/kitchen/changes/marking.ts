/** Markers: putting them on and off, new ones, what their dots mean, how they are looked after. */
import { isDeepStrictEqual } from 'node:util';
import type { Touch } from '../../terms/touch.js';
import type { Id, Marker, Op } from '../model.js';
import { change, itemOp, livingItem, op, refuse, together, type Doing, type Result } from '../doing.js';
import { itemWithMarker, spareMarkers } from '../markers.js';
import { feelsAlike } from '../touch.js';
import { freeMarker, takeMarker } from './putting-away.js';

/**
 * Puts a marker on an item. The marker it had goes to the spare box. A marker on another living
 * item is refused (marker-in-use) unless `takeIt`; that item is then left without one.
 * Refused: unknown-item, already-gone, unknown-marker, marker-in-use, nothing-changes.
 */
export const mark = (
  doing: Doing,
  itemId: Id,
  markerId: Id,
  how: { readonly takeIt?: boolean } = {},
): Result => {
  const { kitchen } = doing;
  const item = livingItem(kitchen, itemId);
  if ('refused' in item) return item;
  if (!kitchen.markers.has(markerId)) return refuse('unknown-marker', { ids: [markerId] });
  const on = itemWithMarker(kitchen, markerId);
  if (on?.id === itemId) return refuse('nothing-changes', { ids: [itemId], about: [item.name] });
  if (on && !how.takeIt) return refuse('marker-in-use', { ids: [on.id], about: [on.name] });
  return change(
    'marked',
    [item.name],
    [
      ...(on ? [itemOp(on, { markerId: null })] : takeMarker(kitchen, markerId)),
      ...freeMarker(kitchen, item),
      itemOp(item, { markerId }),
    ],
  );
};

/**
 * Puts a marker on the first of several containers, and on each of the others one that feels just like it: from the
 * spare box, or a new one. Those that have its like already keep theirs. Refused: as `mark`.
 */
export const markLot = (doing: Doing, itemIds: readonly Id[], markerId: Id): Result => {
  const like = doing.kitchen.markers.get(markerId);
  if (!like) return refuse('unknown-marker', { ids: [markerId] });
  const bare = itemIds.filter((id) => {
    const item = doing.kitchen.items.get(id);
    const its = item?.markerId ? doing.kitchen.markers.get(item.markerId) : undefined;
    return !its || !feelsSame(its, like);
  });
  const steps = bare.map((itemId, at) => (now: Doing): Result => {
    if (at === 0 && !itemWithMarker(now.kitchen, markerId)) return mark(now, itemId, markerId);
    const twin = twinOf(now, like);
    return together(now, [
      ...(twin.ops.length > 0 ? [() => change('marked', [], twin.ops)] : []),
      (then) => mark(then, itemId, twin.id),
    ]);
  });
  return steps.length > 0 ? together(doing, steps) : refuse('nothing-changes', { ids: itemIds });
};

const feelsSame = (one: Marker, other: Marker): boolean => isDeepStrictEqual(one.touch, other.touch);

/** A spare marker that feels just like it, or a new one. */
const twinOf = (
  { kitchen, newId }: Doing,
  like: Marker,
): { readonly id: Id; readonly ops: readonly Op[] } => {
  const spare = spareMarkers(kitchen).find((other) => other.codes.length === 0 && feelsSame(other, like));
  if (spare) return { id: spare.id, ops: [] };
  const made: Marker = { id: newId(), touch: like.touch, codes: [], care: null, lastItemId: null };
  return { id: made.id, ops: [op('marker', made.id, null, made)] };
};

/**
 * Two foods change markers; one that has none gives none. Refused: unknown-item, already-gone, no-marker (neither
 * has one), nothing-changes (it is one food).
 */
export const swapMarkers = (doing: Doing, oneId: Id, otherId: Id): Result => {
  const one = livingItem(doing.kitchen, oneId);
  if ('refused' in one) return one;
  const other = livingItem(doing.kitchen, otherId);
  if ('refused' in other) return other;
  if (oneId === otherId) return refuse('nothing-changes', { ids: [oneId], about: [one.name] });
  if (one.markerId === null && other.markerId === null)
    return refuse('no-marker', { ids: [oneId], about: [one.name] });
  return change(
    'marked',
    [one.name, other.name],
    [itemOp(one, { markerId: other.markerId }), itemOp(other, { markerId: one.markerId })],
  );
};

/** Takes the marker off an item, to the spare box. Refused: unknown-item, already-gone, no-marker. */
export const unmark = (doing: Doing, itemId: Id): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (item.markerId === null) return refuse('no-marker', { ids: [itemId], about: [item.name] });
  return change(
    'unmarked',
    [item.name],
    [...freeMarker(doing.kitchen, item), itemOp(item, { markerId: null })],
  );
};

/**
 * A marker that was lost or broke: it is on nothing any more, and not spare either. Refused: unknown-marker.
 */
export const loseMarker = (doing: Doing, markerId: Id): Result => {
  const marker = doing.kitchen.markers.get(markerId);
  if (!marker) return refuse('unknown-marker', { ids: [markerId] });
  const on = itemWithMarker(doing.kitchen, markerId);
  return change('unmarked', on ? [on.name] : [], [
    ...(on ? [itemOp(on, { markerId: null })] : []),
    op('marker', markerId, marker, null),
  ]);
};

/** One that was lost turned up: in the spare box, as it was. Refused: nothing-changes (it was never gone). */
export const bringMarkerBack = (doing: Doing, lost: Marker): Result =>
  doing.kitchen.markers.has(lost.id)
    ? refuse('nothing-changes', { ids: [lost.id] })
    : change('added a marker', [], [op('marker', lost.id, null, lost)]);

const ON_THE_MARKER: readonly (keyof Touch)[] = [
  'texture',
  'shape',
  'fastening',
  'fastenings',
  'dots',
  'counted',
  'spot',
];

/** Other markers that a hand would take for one that feels so. */
const alikeTo = ({ kitchen }: Doing, touch: Touch, but: Id | null = null): Id[] =>
  [...kitchen.markers.values()]
    .filter((other) => other.id !== but && feelsAlike(touch, other.touch, ON_THE_MARKER))
    .map(({ id }) => id);

/**
 * A new marker, in the spare box. One that feels like another is refused (looks-alike, `ids` the
 * others; `proposeDifference` says what would tell them apart) unless `anyway`.
 * Refused: no-touch, looks-alike.
 */
export const addMarker = (
  doing: Doing,
  marker: { readonly touch: Touch; readonly codes?: readonly string[]; readonly care?: string | null },
  how: { readonly anyway?: boolean } = {},
): Result => {
  if (Object.keys(marker.touch).length === 0) return refuse('no-touch');
  const alike = alikeTo(doing, marker.touch);
  if (alike.length > 0 && !how.anyway) return refuse('looks-alike', { ids: alike });
  const made: Marker = {
    id: doing.newId(),
    touch: marker.touch,
    codes: marker.codes ?? [],
    care: marker.care ?? null,
    lastItemId: null,
  };
  return change('added a marker', [], [op('marker', made.id, null, made)]);
};

/** What may be told of a marker later. Null takes it away. */
export interface MarkerFacts {
  readonly care?: string | null;
  /** What was found on it besides. */
  readonly touch?: Touch;
  /** All that a hand finds on it: what stands nowhere here is taken away. */
  readonly feel?: Touch;
  readonly addCode?: string;
}

/**
 * Records how a marker is looked after, how it feels, or a code on it.
 * Refused: unknown-marker, marker-in-use (the code is on another marker: `ids`), nothing-changes; and of `feel`
 * no-touch, looks-alike (it would feel like another, `ids`) unless `anyway`.
 */
export const markerNote = (
  doing: Doing,
  markerId: Id,
  facts: MarkerFacts,
  how: { readonly anyway?: boolean } = {},
): Result => {
  const marker = doing.kitchen.markers.get(markerId);
  if (!marker) return refuse('unknown-marker', { ids: [markerId] });
  if (facts.feel !== undefined) {
    if (Object.keys(facts.feel).length === 0) return refuse('no-touch');
    const alike = isDeepStrictEqual(facts.feel, marker.touch) ? [] : alikeTo(doing, facts.feel, markerId);
    if (alike.length > 0 && !how.anyway) return refuse('looks-alike', { ids: alike });
  }
  const { addCode: code } = facts;
  const other =
    code === undefined
      ? undefined
      : [...doing.kitchen.markers.values()].find(({ id, codes }) => id !== markerId && codes.includes(code));
  if (other) return refuse('marker-in-use', { ids: [other.id] });
  const after: Marker = {
    ...marker,
    care: facts.care === undefined ? marker.care : facts.care,
    touch: { ...(facts.feel ?? marker.touch), ...facts.touch },
    codes: code === undefined || marker.codes.includes(code) ? marker.codes : [...marker.codes, code],
  };
  if (JSON.stringify(after) === JSON.stringify(marker)) return refuse('nothing-changes', { ids: [markerId] });
  return change('noted', [], [op('marker', markerId, marker, after)]);
};

/** Most dots or knots on one marker that a finger still counts. Common practice. */
const MOST_DOTS = 12;

/**
 * "One knot means for Auntie": the number means it, whatever is counted. Null takes the meaning away.
 * Refused: bad-setting (not 1 to 12 dots), no-name, nothing-changes.
 */
export const defineDots = (doing: Doing, dots: number, meaning: string | null): Result => {
  const { household } = doing.kitchen;
  if (!Number.isInteger(dots) || dots < 1 || dots > MOST_DOTS) return refuse('bad-setting');
  if (meaning !== null && meaning.trim() === '') return refuse('no-name');
  const meanings = Object.fromEntries(
    Object.entries(household.dotMeanings).filter(([n]) => n !== String(dots)),
  );
  const dotMeanings = meaning === null ? meanings : { ...meanings, [dots]: meaning.trim() };
  if ((household.dotMeanings[dots] ?? null) === (meaning?.trim() ?? null)) return refuse('nothing-changes');
  return change('gave dots a meaning', meaning === null ? [] : [meaning.trim()], [
    op('household', household.id, household, { ...household, dotMeanings }),
  ]);
};
