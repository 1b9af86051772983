/** What is known of a food already: it is here, it was just put away, or it was here before. */
import { foodKey, lastGone, likeNames, livingItems } from '../../kitchen/index.js';
import type { Id, Item } from '../../kitchen/model.js';
import type { Mention, Slots } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';

/** "More", "another", "new". */
const saysMore = ({ qualifiers }: Turn): boolean =>
  qualifiers.has('more') || qualifiers.has('another') || qualifiers.has('new');

export const boughtAgain = ({ item, dates }: Slots): boolean =>
  item?.pointer === 'another' || dates?.bought !== undefined;

/** "I bought more sorghum": what carries over from the last one that is gone. */
export const earlierOf = (turn: Turn, name: string, slots: Slots): Item | null => {
  if (!boughtAgain(slots) && livingItems(turn.kitchen).some((item) => foodKey(item.name) === foodKey(name)))
    return null;
  return lastGone(turn.kitchen, name);
};

/** "I made the soup yesterday", of the soup put away a moment ago: a date of it, not another soup. */
export const justAdded = (
  turn: Turn,
  { item, dates, amount, place, shares, maker }: Slots,
  name: string,
): Mention | null => {
  if (!item || !(dates ?? maker) || amount || place || shares || item.at || turn.memory.touched) return null;
  if (item.pointer === 'another' || saysMore(turn)) return null;
  const ids = turn.memory.lastAdded.filter((id) => {
    const one = turn.kitchen.items.get(id);
    return one?.gone === null && foodKey(one.name) === foodKey(name);
  });
  return ids.length > 0 ? { ...item, candidates: ids.map((id) => ({ id, fit: 1 })) } : null;
};

/** What is said again so soon is likelier the same food than more of it. */
const minutesSaidAgain = 10;

/** "A dozen eggs on the bottom shelf", told a moment ago in the same words: the same ones, or as many again? */
export const sameJustNow = (
  turn: Turn,
  { item, amount, shares }: Slots,
  name: string,
  placeId: Id,
): Item | null => {
  if (turn.sure || shares || item?.pointer === 'another' || turn.memory.touched) return null;
  const since = Date.parse(turn.clock.now) - minutesSaidAgain * 60_000;
  return (
    livingItems(turn.kitchen).find(
      (one) =>
        Date.parse(one.addedAt) >= since &&
        foodKey(one.name) === foodKey(name) &&
        one.placeId === placeId &&
        one.amount?.value === amount?.value &&
        (amount === undefined || one.amount?.unit === amount.unit),
    ) ?? null
  );
};

/** Where things are told one after the other as they stand, each is what it is. */
const takesStock: ReadonlySet<string> = new Set(['shop', 'count', 'first-day', 'survey', 'setup']);

/**
 * One of that name is on record, and this was only said to be somewhere: it may be that one. Null where it was put
 * there, where more was got or made, where it was told in lots, or with facts that only something new has.
 */
export const secondOf = (turn: Turn, slots: Slots, name: string): Item | null => {
  const { dates, maker, shares, marker, container } = slots;
  const { session, memory } = turn.state;
  const isNew = dates?.made ?? dates?.bought ?? maker ?? shares ?? marker ?? container;
  if (!slots.stands || turn.sure || isNew || boughtAgain(slots) || memory.touched) return null;
  if (session && takesStock.has(session.kind)) return null;
  if (turn.qualifiers.has('come-new')) return null;
  const same = livingItems(turn.kitchen).filter((one) => foodKey(one.name) === foodKey(name));
  const before = same.filter(({ id }) => !memory.lastAdded.includes(id));
  return before.length === same.length ? (before[0] ?? null) : null;
};

/** "Put the milk on the third shelf", of the milk there is: it is moved, not recorded a second time. */
export const alreadyHere = (turn: Turn, slots: Slots, name: string): Mention | null => {
  const { item, place, dates, amount, maker, shares, container, marker } = slots;
  const fresh = dates ?? amount ?? maker ?? shares ?? container ?? marker;
  if (!item || !place || fresh || turn.state.session?.kind === 'shop' || turn.memory.touched) return null;
  if (item.pointer === 'another') return null;
  const definite = item.pointer !== null || item.definite === true;
  const same = livingItems(turn.kitchen).filter((one) => foodKey(one.name) === foodKey(name));
  // "… and a gallon of milk. The milk's going in the door": the one that was told of just before.
  const brought = new Set(
    [...(turn.state.done?.changes ?? []), ...turn.journal.slice(0, 1)].flatMap(({ ops }) =>
      ops.flatMap((op) => (op.kind === 'item' && op.before === null ? [op.id] : [])),
    ),
  );
  const told = same.filter(({ id }) => brought.has(id) || turn.memory.lastAdded.includes(id));
  if (!definite && told.length === 0) return null;
  if (told.length > 0) return { ...item, words: null, candidates: told.map(({ id }) => ({ id, fit: 1 })) };
  // "The yogurt" is the plain yogurt, when there is no other.
  const called = same.length > 0 ? same : calledThatAndMore(turn, name);
  // Of several stews, the one just spoken of; else which one is asked.
  const spokenOf = called.filter(({ id }) => turn.memory.items.includes(id));
  const like = spokenOf.length > 0 ? spokenOf : called;
  if (like.length === 0) return null;
  return { ...item, candidates: like.map(({ id }) => ({ id, fit: 1 })) };
};

/** Living foods whose names hold every word of it: a plain yogurt for "yogurt", no apples for "apple sauce". */
const calledThatAndMore = (turn: Turn, name: string): Item[] =>
  likeNames(turn.kitchen, name).flatMap(({ item }) =>
    foodKey(name)
      .split(' ')
      .every((word) => foodKey(item.name).split(' ').includes(word))
      ? [item]
      : [],
  );
