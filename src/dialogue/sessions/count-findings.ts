/** What was told of several things while a place is checked, as notes of the check and changes of the record. */
import { applyChange, isMeasured, isRefused, move, placeUnder, setLeft } from '../../kitchen/index.js';
import type { Change, Item, StockTake } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Amount } from '../../terms/amount.js';
import { emptyMention, type Finding } from '../../understanding/intents.js';
import { type Group, groupName, grouped } from '../describe/item.js';
import { inGroups } from '../describe/lists.js';
import { placeAt, placeNoun } from '../describe/place.js';
import { type Reply, type Turn, list, say } from '../handler.js';
import { findItems } from '../refer/items.js';
import { type Count, nextGroup, unseenAt } from './count-moves.js';

type Seen = StockTake['seen'][string];
type Offer = NonNullable<Reply['offer']>;

export interface Found {
  readonly found: readonly (readonly [Item, Seen])[];
  /** What is done to the record besides the notes of the check, in order. */
  readonly more: readonly Change[];
  readonly said: readonly Say[];
  /** Not found, and nobody said why. */
  readonly missing: readonly Item[];
  /** What is to be asked of something that is on record elsewhere. */
  readonly offer: Offer | null;
}

interface Building {
  kitchen: Turn['kitchen'];
  found: (readonly [Item, Seen])[];
  readonly more: Change[];
  readonly said: Say[];
  readonly missing: Item[];
  readonly told: Map<Seen, Item[]>;
  offer: Offer | null;
}

const isThere = ({ found, told }: Building, item: Item): void => {
  found.push([item, 'there']);
  told.set('there', [...(told.get('there') ?? []), item]);
};

/** "Four" of six like tubs leaves two that are gone; of one container, it is what is left in it. */
const count = (turn: Turn, at: Building, { items, first }: Group, { value, unit }: Amount): void => {
  const name = first.name;
  if (items.length > 1 && Number.isInteger(value)) {
    const there = Math.min(value, items.length);
    if (value > items.length) at.said.push(say('count-only-so-many', { name, count: items.length }));
    items.forEach((item, index) => at.found.push([item, index < there ? 'there' : 'gone']));
    if (value <= items.length)
      at.said.push(say('count-noted-of', { name, there, gone: items.length - there }));
    return;
  }
  const own = first.amount?.unit ?? unit;
  // "One whole turkey" of twelve pounds, "a bag of prawns" of two: it is there.
  if (isMeasured(own) && !isMeasured(unit)) {
    isThere(at, first);
    return;
  }
  const left = { value, unit: unit === 'piece' ? own : unit };
  const change = setLeft({ ...turn, kitchen: at.kitchen }, first.id, left);
  if (isRefused(change)) {
    isThere(at, first);
    return;
  }
  at.more.push(change);
  at.kitchen = applyChange(at.kitchen, change);
  const gone = at.kitchen.items.get(first.id)?.gone ?? null;
  if (gone === null) at.found.push([first, 'changed']);
  at.said.push(say('left-noted', { name, left: { kind: 'amount', amount: left } }));
};

const moveAll = (
  turn: Turn,
  at: Building,
  items: readonly Item[],
  placeId: string,
  spot: string | null,
): void => {
  let moved = false;
  for (const item of items) {
    const change = move({ ...turn, kitchen: at.kitchen }, item.id, { placeId, spot });
    if (!isRefused(change)) {
      moved = true;
      at.more.push(change);
      at.kitchen = applyChange(at.kitchen, change);
    }
    at.found.push([item, isRefused(change) ? 'there' : 'changed']);
  }
  if (moved) at.said.push(say('count-moved', { name: items[0]!.name, at: placeAt(turn.kitchen, placeId) }));
};

/** Of several lots of that name here: the one asked about, else the one that can hold so many. */
const lotFor = (groups: readonly Group[], asked: Group | null, value: number): Group =>
  groups.find(({ first }) => first.id === asked?.first.id) ??
  groups.find(({ items }) => items.length > 1 && items.length >= value) ??
  groups[0]!;

/** The record has it somewhere else, or not at all. */
const notHere = (
  turn: Turn,
  at: Building,
  placeId: string,
  thing: NonNullable<Finding['thing']>,
  { seen, amount }: Finding,
): void => {
  const elsewhere = findItems(turn, thing).items;
  const [one, ...others] = elsewhere;
  const place = placeNoun(turn.kitchen, placeId);
  const words = turn.kitchen.places.get(placeId)?.name ?? null;
  const there = { words, candidates: [{ id: placeId, fit: 1 }], pointer: null, spot: null };
  // In her hand, and nowhere on record: is it to be put down? Only the first of several is asked about.
  if (!one && seen === 'there' && thing.words && !at.offer) {
    const item = { ...emptyMention, words: thing.words };
    at.offer = {
      question: say('count-add-here', { name: thing.words, place }),
      act: { intent: 'put-away', slots: { item, place: there, ...(amount ? { amount } : {}) } },
    };
    return;
  }
  if (!one || seen !== 'there') {
    at.said.push(say('count-not-among', { name: one?.name ?? thing.words ?? '', place }));
    return;
  }
  at.said.push(say('count-recorded-at', { name: one.name, at: placeAt(turn.kitchen, one.placeId) }));
  if (others.length > 0 || at.offer) return;
  const item = { ...emptyMention, candidates: [{ id: one.id, fit: 1 }] };
  at.offer = {
    question: say('count-move-here', { name: one.name, place }),
    act: { intent: 'move', slots: { item, place: there } },
  };
};

const isTold = ({ found }: Building, item: Item): boolean =>
  found.some(([one, seen]) => one.id === item.id && seen === 'there');

const oneFound = (turn: Turn, at: Building, session: Count, take: StockTake, finding: Finding): void => {
  const { thing, amount, place } = finding;
  const asked = nextGroup({ ...turn, kitchen: at.kitchen }, take, session);
  const done = new Set([...at.found.map(([item]) => item.id), ...at.missing.map(({ id }) => id)]);
  const under = (item: Item): boolean => placeUnder(turn.kitchen, item.placeId, take.placeId);
  const before = thing === null && amount ? askedBefore(turn, take) : [];
  const all = thing ? findItems(turn, thing).items.filter(under) : [];
  // Of several lots in the freezer, those in the basket she stands at.
  const { within } = session;
  const near = within ? all.filter(({ placeId }) => placeUnder(turn.kitchen, placeId, within)) : [];
  const named = thing ? (near.length > 0 ? near : all) : before.length > 0 ? before : (asked?.items ?? []);
  if (named.length === 0) {
    if (thing) notHere(turn, at, session.within ?? take.placeId, thing, finding);
    return;
  }
  const to = place?.candidates.find(({ id }) => turn.kitchen.places.has(id))?.id ?? null;
  const inside = to !== null && placeUnder(turn.kitchen, to, take.placeId);
  const there = named.filter(
    ({ id, placeId }) => !done.has(id) && (!inside || placeUnder(turn.kitchen, placeId, to)),
  );
  // Nothing of it stands in the basket that was named: it does now.
  if (to !== null && (!inside || there.length === 0)) {
    moveAll(
      turn,
      at,
      named.filter(({ id }) => !done.has(id)),
      to,
      place?.spot ?? null,
    );
    return;
  }
  // "The rolls are here, but there's only eight": how many, of what was just said to be there.
  const again = amount !== undefined && there.length === 0 ? named.filter((item) => isTold(at, item)) : [];
  if (again.length > 0) {
    at.found = at.found.filter(([item]) => !again.includes(item));
    for (const [seen, items] of at.told)
      at.told.set(
        seen,
        items.filter((item) => !again.includes(item)),
      );
  }
  const groups = grouped(turn.kitchen, there.length > 0 ? there : again);
  if (groups.length === 0) return;
  if (amount && finding.seen !== 'gone' && finding.seen !== 'missing') {
    count(turn, at, lotFor(groups, asked, amount.value), amount);
    return;
  }
  if (finding.seen === 'missing') at.missing.push(...there);
  else {
    const seen = finding.seen ?? 'there';
    for (const item of there) at.found.push([item, seen]);
    at.told.set(seen, [...(at.told.get(seen) ?? []), ...there]);
  }
};

/** Each name once: lots of one food in two baskets are told together. */
const names = (items: readonly Item[]) => {
  const byName = new Map<string, Item[]>();
  for (const item of items) byName.set(item.name, [...(byName.get(item.name) ?? []), item]);
  return list([...byName.values()].map((of) => groupName({ items: of, first: of[0]! })));
};

/** "So make it five", right after it was asked how many there are of something here. */
const askedBefore = ({ kitchen, state: { asked, turns } }: Turn, take: StockTake): readonly Item[] => {
  if (asked?.turn !== turns - 1) return [];
  const items = asked.members.flatMap((id) => kitchen.items.get(id) ?? []);
  const here = items.filter(
    ({ gone, placeId }) => gone === null && placeUnder(kitchen, placeId, take.placeId),
  );
  return new Set(here.map(({ name }) => name)).size === 1 ? here : [];
};

export const foundBy = (turn: Turn, session: Count, take: StockTake, findings: readonly Finding[]): Found => {
  const at: Building = {
    kitchen: turn.kitchen,
    found: [],
    more: [],
    said: [],
    missing: [],
    told: new Map(),
    offer: null,
  };
  for (const finding of findings) oneFound(turn, at, session, take, finding);
  const named = findings.some(({ thing }) => thing !== null);
  const sums = (['there', 'gone', 'unsure'] as const).flatMap((seen) => {
    const items = at.told.get(seen) ?? [];
    return items.length > 0 && named ? [say('count-told', { seen, items: names(items) })] : [];
  });
  return {
    found: at.found,
    more: at.more,
    said: [...sums, ...at.said],
    missing: at.missing,
    offer: at.offer,
  };
};

/** Used up, or only not found? */
export const askMissing = (turn: Turn, missing: readonly Item[]): Offer => {
  const thing = {
    ...emptyMention,
    candidates: missing.map(({ id }) => ({ id, fit: 1 })),
    pointer: missing.length > 1 ? ('them' as const) : null,
  };
  return {
    question: say('count-missing', { items: names(missing), count: missing.length }),
    act: { intent: 'answer', slots: { findings: [{ thing, seen: 'gone' }] } },
    otherwise: { intent: 'answer', slots: { findings: [{ thing, seen: 'unsure' }] } },
  };
};

/** What nothing was said of yet. */
export const toGo = (turn: Turn, take: StockTake): Reply => {
  const left = unseenAt(turn, take);
  const called = [...new Set(left.map(({ first }) => first.name))];
  if (called.length === 0) return { parts: [say('steps-left', { left: 0 })] };
  const { first, left: others } = inGroups(called);
  return {
    parts: [say('count-to-go', { items: list(first), count: called.length, left: others })],
    count: called.length,
    names: called,
  };
};
