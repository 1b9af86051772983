/** Checking a place against the record, thing by thing; put aside and taken up again, days later if need be. */
import {
  applyChange,
  changedSince,
  checkItem,
  finishStockTake,
  invertChange,
  isRefused,
  itemsAt,
  livingItems,
  joinChanges,
  move,
  openStockTakes,
  placeUnder,
  setLeft,
  startStockTake,
  tallyOf,
} from '../../kitchen/index.js';
import type { Change, Item, StockTake } from '../../kitchen/model.js';
import type { Amount } from '../../terms/amount.js';
import type { Say } from '../../speech/answer.js';
import type { Share } from '../../terms/amount.js';
import { type Act, type Finding, type PlaceMention, emptyMention } from '../../understanding/intents.js';
import { type Group, groupName, grouped } from '../describe/item.js';
import { placeAt, placeNoun } from '../describe/place.js';
import { refusal } from '../describe/refusals.js';
import { itemFeel } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, list, say } from '../handler.js';
import { findItems } from '../refer/items.js';
import { needPlace } from '../refer/need.js';
import { askMissing, foundBy, toGo } from './count-findings.js';
import { startSurvey } from './survey.js';
import { type Count, countMove, nextGroup, revised } from './count-moves.js';

const takeOf = (turn: Turn, session: Count): StockTake | undefined =>
  turn.kitchen.stockTakes.get(session.stockTakeId);

export const startCount: Handler = (act, turn) => {
  const [running] = openStockTakes(turn.kitchen);
  if (running && !act.slots.place && !turn.picked.place) return resumeCount(turn, running);
  // Nothing is on record that could be checked: what is there is told.
  const nothing = livingItems(turn.kitchen).length === 0;
  if (act.slots.asked === 'survey' || nothing) return startSurvey(act, turn);
  const found = needPlace(turn, act.slots.place, { question: say('ask-count-where') });
  if ('reply' in found) return found.reply;
  const { place } = found.got;
  const open = openStockTakes(turn.kitchen).find(({ placeId }) => placeId === place.id);
  if (open) return resumeCount(turn, open);
  const items = itemsAt(turn.kitchen, place.id);
  if (items.length === 0)
    return { parts: [say('count-place-empty', { place: placeNoun(turn.kitchen, place.id) })] };
  const result = startStockTake(turn, place.id);
  if (isRefused(result)) return refusal(turn, result);
  return {
    parts: [
      say('count-start', {
        place: placeNoun(turn.kitchen, place.id),
        count: grouped(turn.kitchen, items).length,
      }),
    ],
    changes: [result],
    session: { kind: 'count', stockTakeId: result.ops[0]!.id, itemIds: [], paused: false },
    memory: { ...about(turn, grouped(turn.kitchen, items)[0]!.items), placeId: place.id },
  };
};

/** A check that was begun and not ended, taken up wherever it was left. */
export const resumeCount = (turn: Turn, take: StockTake): Reply => ({
  memory: about(turn, nextGroup(turn, take)?.items ?? []),
  parts: [
    say('count-resume', {
      place: placeNoun(turn.kitchen, take.placeId),
      left: tallyOf(turn.kitchen, take).toGo,
    }),
  ],
  session: { kind: 'count', stockTakeId: take.id, itemIds: [], paused: false },
});

export const countPrompt = (turn: Turn, session: Count): Say | null => {
  const take = takeOf(turn, session);
  const group = take ? nextGroup(turn, take, session) : null;
  if (!take || !group) return null;
  const feel = group.items.length === 1 ? itemFeel(turn.kitchen, group.first) : null;
  const at = group.first.placeId !== take.placeId ? { at: placeAt(turn.kitchen, group.first.placeId) } : {};
  const one = group.items.length === 1 && group.first.amount;
  const item = one
    ? say('item-amount', { amount: { kind: 'amount', amount: one }, name: group.first.name })
    : groupName(group);
  return say('count-ask', { item, ...at, ...(feel ? { feel } : {}) });
};

type Seen = StockTake['seen'][string];

/** Notes what was found of each, and ends the check when it was the last. */
const note = (
  turn: Turn,
  session: Count,
  found: readonly (readonly [Item, Seen])[],
  more: readonly Change[],
  told: readonly Say[],
): Reply => {
  const changes: Change[] = [...more];
  let kitchen = more.reduce(applyChange, turn.kitchen);
  for (const [item, seen] of found) {
    const result = checkItem({ ...turn, kitchen }, session.stockTakeId, item.id, seen);
    if (isRefused(result)) return refusal(turn, result);
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  const [first, ...rest] = changes;
  const whole = first ? [joinChanges(first, ...rest)] : [];
  const after = { ...turn, kitchen };
  const take = takeOf(after, session);
  const next = take ? nextGroup(after, take, { ...session, at: null }) : null;
  const itemIds = found.map(([item]) => item.id);
  // "It" is the thing that is asked about now, not the one just answered.
  if (next)
    return {
      parts: told,
      changes: whole,
      memory: about(after, next.items),
      session: { ...session, itemIds, at: null },
    };
  const memory = { items: itemIds };
  const ended = endCount(after, session);
  return {
    ...ended,
    parts: [...told, ...ended.parts],
    changes: [...whole, ...(ended.changes ?? [])],
    memory,
  };
};

export const endCount = (turn: Turn, session: Count): Reply => {
  const take = takeOf(turn, session);
  if (!take) return { parts: [say('count-over')], session: null };
  const tally = tallyOf(turn.kitchen, take);
  const result = finishStockTake(turn, take.id);
  // What there was none of is not told.
  const counts = (['there', 'gone', 'changed'] as const).filter((kind) => tally[kind] > 0);
  const parts = [
    counts.length > 0
      ? say('count-tally', {
          counts: list(counts.map((kind) => say(`count-${kind}`, { count: tally[kind] }))),
          place: placeNoun(turn.kitchen, take.placeId),
        })
      : say('count-tally-none', { place: placeNoun(turn.kitchen, take.placeId) }),
    ...(tally.unsure > 0 ? [say('count-unsure', { count: tally.unsure })] : []),
    ...(tally.toGo > 0 ? [say('count-not-looked', { count: tally.toGo })] : []),
  ];
  return { parts, session: null, count: tally.there, ...(isRefused(result) ? {} : { changes: [result] }) };
};

const namesSeen = (turn: Turn, { seen }: StockTake, as: Seen): readonly string[] => [
  ...new Set(
    Object.entries(seen).flatMap(([id, found]) =>
      found === as ? (turn.kitchen.items.get(id)?.name ?? []) : [],
    ),
  ),
];

/** What was done to things of this place since the check began, by whatever was said: as an answer, or beside one. */
const doneSince = (
  { journal, kitchen }: Turn,
  { placeId, startedAt }: StockTake,
): { readonly gone: readonly string[]; readonly changed: readonly string[] } => {
  const ops = journal
    .filter(({ at }) => at >= startedAt)
    .flatMap((entry) => entry.ops.flatMap((op) => (op.kind === 'item' && op.before ? [op.before] : [])))
    .filter((before) => before.gone === null && placeUnder(kitchen, before.placeId, placeId));
  const names = (is: (before: Item, now: Item) => boolean): readonly string[] => [
    ...new Set(
      ops.flatMap((before) => {
        const now = kitchen.items.get(before.id);
        return now && is(before, now) ? [now.name] : [];
      }),
    ),
  ];
  const differs = (before: Item, now: Item): boolean =>
    now.gone === null &&
    (now.placeId !== before.placeId || JSON.stringify(now.amount) !== JSON.stringify(before.amount));
  return { gone: names((_, now) => now.gone !== null), changed: names(differs) };
};

/** "Just stop asking": what was changed so far is said, and what was not looked at. */
const stopCount = (turn: Turn, session: Count, take: StockTake): Reply => {
  const since = doneSince(turn, take);
  const gone = [...new Set([...namesSeen(turn, take, 'gone'), ...since.gone])];
  const changed = [...new Set([...namesSeen(turn, take, 'changed'), ...since.changed])];
  const { toGo: left } = tallyOf(turn.kitchen, take);
  const none = gone.length + changed.length === 0;
  const parts = [
    ...(gone.length > 0 ? [say('count-stopped-gone', { items: list(gone) })] : []),
    ...(changed.length > 0 ? [say('count-stopped-changed', { items: list(changed) })] : []),
    ...(none || left === 0 ? [say('count-stopped-rest', { none: none ? 'yes' : 'no' })] : []),
    ...(left > 0 ? [say('count-not-looked', { count: left })] : []),
  ];
  return {
    ...endCount(turn, session),
    parts: [say('count-stopped'), ...parts],
    dropFrames: true,
    memory: {
      items: Object.entries(take.seen).flatMap(([id, found]) => (found === 'there' ? [] : [id])),
    },
  };
};

/** What was told of things in one breath. */
const told = (turn: Turn, session: Count, take: StockTake, findings: readonly Finding[]): Reply => {
  const { found, more, said, missing, offer } = foundBy(turn, session, take, findings);
  const noted = note(turn, session, found, more, said);
  // Not found, and nobody said why: it is not used up before she says so.
  const asked = missing.length > 0 ? askMissing(turn, missing) : offer;
  // Asked even where nothing else is to be checked: what was found besides is not lost with the end.
  return asked ? { ...noted, offer: asked } : noted;
};

/** The part of the place checked that was named, where it is one. */
const partOf = (turn: Turn, take: StockTake, place: PlaceMention | undefined): string | null =>
  place?.candidates.find(({ id }) => id !== take.placeId && placeUnder(turn.kitchen, id, take.placeId))?.id ??
  null;

/** "Bottom basket": what is there is gone through first, and what was named stands. */
const standsAt = (turn: Turn, session: Count, take: StockTake, within: string): Reply => {
  const next = { ...session, at: null, within };
  return { parts: [], session: next, memory: about(turn, nextGroup(turn, take, next)?.items ?? []) };
};

/** "Four" of six like tubs: four are there, two are gone. Of one container, it is what is left in it. */
const counted = (turn: Turn, session: Count, group: Group, value: number, unit: string): Reply | null => {
  if (group.items.length > 1 && Number.isInteger(value)) {
    if (value > group.items.length) return { parts: [say('count-more-than', { count: group.items.length })] };
    const found = group.items.map((item, at): [Item, Seen] => [item, at < value ? 'there' : 'gone']);
    return note(
      turn,
      session,
      found,
      [],
      [say('count-noted', { there: value, gone: group.items.length - value })],
    );
  }
  // "Only two", of three portions, are portions.
  const counts = unit === 'piece' ? (group.first.amount?.unit ?? unit) : unit;
  const left = setLeft(turn, group.first.id, { value, unit: counts });
  if (isRefused(left))
    return left.refused === 'nothing-changes'
      ? note(turn, session, [[group.first, 'there']], [], [])
      : refusal(turn, left);
  const gone = left.ops.some((op) => op.kind === 'item' && op.after?.gone);
  return note(
    turn,
    session,
    gone ? [] : [[group.first, 'changed']],
    [left],
    [
      say('left-noted', {
        name: group.first.name,
        left: { kind: 'amount', amount: { value, unit: counts } },
      }),
    ],
  );
};

/** "That's in the middle bin": it is there and not here. */
const elsewhere = (turn: Turn, session: Count, { items }: Group, place: PlaceMention): Reply | null => {
  const [to] = place.candidates;
  if (!to || !turn.kitchen.places.has(to.id)) return null;
  const moved: Change[] = [];
  let kitchen = turn.kitchen;
  for (const item of items) {
    const result = move({ ...turn, kitchen }, item.id, { placeId: to.id, spot: place.spot });
    if (isRefused(result)) continue;
    moved.push(result);
    kitchen = applyChange(kitchen, result);
  }
  const seen: Seen = moved.length > 0 ? 'changed' : 'there';
  const told = moved.length > 0 ? [say('count-elsewhere', { at: placeAt(turn.kitchen, to.id) })] : [];
  return note(
    turn,
    session,
    items.map((item) => [item, seen] as const),
    moved,
    told,
  );
};

/**
 * "No, not the fridge, the chest freezer": a whole cupboard, named by itself, is what she would rather go
 * through; whether it is, or the thing stands there now, is asked where she did not put it right.
 */
const otherWhole = (turn: Turn, take: StockTake, act: Act, { candidates }: PlaceMention): Reply | null => {
  const to = turn.kitchen.places.get(candidates[0]?.id ?? '');
  if (!to || to.parentId !== null || placeUnder(turn.kitchen, take.placeId, to.id)) return null;
  const place = { words: to.name, candidates: [{ id: to.id, fit: 1 }], pointer: null, spot: null };
  const start: Act = { intent: 'start-count', slots: { place } };
  if (act.intent === 'correct') return { parts: [], next: start };
  return {
    parts: [],
    offer: { question: say('count-instead', { place: placeNoun(turn.kitchen, to.id) }), act: start },
  };
};

/** "It's half full." */
const partLeft = (turn: Turn, session: Count, { first }: Group, share: Share): Reply => {
  const left = setLeft(turn, first.id, share);
  if (isRefused(left))
    return left.refused === 'nothing-changes'
      ? note(turn, session, [[first, 'there']], [], [])
      : refusal(turn, left);
  const said = say('left-noted', { name: first.name, left: { kind: 'amount', amount: share } });
  return note(turn, session, [[first, 'changed']], [left], [said]);
};

/** "No, the oat milk": what was just answered was of another thing; the one before is asked again. */
const checkedOther = (turn: Turn, session: Count, take: StockTake, act: Act): Reply | null => {
  const { item } = act.slots;
  const meant = item
    ? findItems(turn, item).items.filter(({ placeId }) => placeUnder(turn.kitchen, placeId, take.placeId))
    : [];
  const [other] = meant;
  if (!other || meant.length > 1) return null;
  const [first, ...rest] = turn.state.done?.changes ?? [];
  const answered = first ? joinChanges(first, ...rest) : null;
  const seen = session.itemIds.map((id) => take.seen[id]).find((one) => one !== undefined);
  const told = [say('count-other', { name: other.name })];
  // Nothing was answered yet, or something else was done since: only what was named is noted.
  const last = answered?.ops.some((op) => op.kind === 'stockTake' && op.id === take.id);
  if (
    !answered ||
    !seen ||
    !last ||
    session.itemIds.includes(other.id) ||
    changedSince(turn.kitchen, answered).length > 0
  )
    return note(turn, session, [[other, 'there']], [], told);
  const back: Change = { verb: 'checked', about: [other.name], ops: invertChange(answered) };
  const { left, share } = turn.state.done?.act.slots ?? {};
  const part = left ?? share;
  // "Half full" was of the other, too.
  const kitchen = applyChange(turn.kitchen, back);
  const set = part ? setLeft({ ...turn, kitchen }, other.id, part) : null;
  const changes = set && !isRefused(set) ? [back, set] : [back];
  return note(turn, session, [[other, seen]], changes, told);
};

const saysGone = (act: Act, { qualifiers }: Turn): boolean =>
  act.intent === 'no' ||
  (act.intent === 'finish' && !named(act)) ||
  (act.slots.words !== undefined && qualifiers.has('gone'));
const named = (act: Act): boolean => (act.slots.item?.candidates.length ?? 0) > 0 && !act.slots.item?.pointer;

/** How much of it there is, as said: by amount, by share or by a bare number. */
const found = (act: Act, turn: Turn, session: Count, group: Group): Reply | null => {
  const { amount, left, share, item } = act.slots;
  const number = act.slots.number ?? (act.intent === 'choose' ? item?.ordinal : null) ?? undefined;
  if (named(act)) return null;
  const part = left ?? share;
  const said =
    amount ??
    (left && 'value' in left ? left : number === undefined ? null : { value: number, unit: 'piece' });
  const { asked } = act.slots;
  const compared = asked === 'fewer' || asked === 'more' ? asked : null;
  if (said) {
    const value = compared ? comparedWith(group, said, compared) : said.value;
    return value === null ? howMany(group) : counted(turn, session, group, value, said.unit);
  }
  if (!part || !('fraction' in part)) return null;
  // "Less half" is half either way; "less a quarter" may be three.
  return compared && part.fraction !== 0.5 ? howMany(group) : partLeft(turn, session, group, part);
};

/**
 * "It's less three": three are left, or three are gone. Which, the record tells where only one of them is
 * possible; null where both are or none is.
 */
const comparedWith = (
  { items, first }: Group,
  { value, unit }: { readonly value: number; readonly unit: string },
  than: 'fewer' | 'more',
): number | null => {
  const several = items.length > 1;
  const before = several ? items.length : first.amount?.value;
  if (before === undefined || (unit !== 'piece' && (several || unit !== first.amount?.unit))) return null;
  const [one, ...others] = new Set(
    than === 'fewer'
      ? [value, before - value].filter((left) => left > 0 && left < before)
      : [value, before + value].filter((here) => here > before),
  );
  return one === undefined || others.length > 0 ? null : one;
};

const howMany = ({ first }: Group): Reply => ({
  parts: [say('count-how-many', { name: first.name })],
});

/** "I counted wrong, it's three": of what was counted last. */
const recounted = (turn: Turn, session: Count, take: StockTake, amount: Amount): Reply | null => {
  const last = Object.keys(take.seen).at(-1);
  const item = last === undefined ? undefined : turn.kitchen.items.get(last);
  if (!item || item.gone) return null;
  const thing = { ...emptyMention, words: item.name, candidates: [{ id: item.id, fit: 1 }] };
  return told(turn, session, take, [{ thing, seen: null, amount }]);
};

/** Told of what is asked about, whatever it was read as: an answer, or a correction of what is on record. */
const answers: ReadonlySet<Act['intent']> = new Set<Act['intent']>([
  'answer',
  'choose',
  'take',
  'amend',
  'correct',
]);

export const countAnswer = (act: Act, turn: Turn, session: Count): Reply | null => {
  const take = takeOf(turn, session);
  if (!take) return null;
  // However it was heard: silence would leave her wondering whether it goes on.
  if (act.intent === 'stop') return stopCount(turn, session, take);
  if (act.intent === 'end-session')
    return act.slots.asked === 'stopped' ? stopCount(turn, session, take) : endCount(turn, session);
  const group = nextGroup(turn, take, session);
  if (!group) return endCount(turn, session);
  const all = (seen: Seen): (readonly [Item, Seen])[] => group.items.map((item) => [item, seen] as const);
  const { asked, place, findings } = act.slots;
  const part = place ? partOf(turn, take, place) : null;
  if (findings) return told(turn, part ? { ...session, within: part } : session, take, findings);
  if (asked === 'stands-at' && part) return standsAt(turn, session, take, part);
  if (asked === 'to-go') return toGo(turn, take);
  const { amount } = act.slots;
  if (act.slots.negated && act.intent === 'correct' && amount) {
    const again = recounted(turn, session, take, amount);
    if (again) return again;
  }
  const moved = countMove(act, turn, session, take);
  if (moved) return moved;
  if (act.slots.negated && (asked === 'there' || asked === 'gone')) {
    const changed = revised(turn, session, take, asked);
    if (changed) return changed;
  }
  if (act.intent === 'yes' || act.intent === 'done' || asked === 'there')
    return note(turn, session, all('there'), [], []);
  // "Never mind" is of this one thing: only "stop the check" ends the check.
  if (act.intent === 'maybe' || act.intent === 'next' || act.intent === 'cancel' || asked === 'unsure')
    return note(turn, session, all('unsure'), [], act.intent === 'cancel' ? [say('count-passed-over')] : []);
  if (act.intent === 'wait')
    return { parts: [say('count-paused')], session: { ...session, paused: true }, quiet: true };
  const amounts = answers.has(act.intent) ? found(act, turn, session, group) : null;
  if (amounts) return amounts;
  const instead = place && !named(act) && answers.has(act.intent) ? otherWhole(turn, take, act, place) : null;
  if (instead) return instead;
  // A place by itself, and no part of this one, moves nothing.
  if (asked === 'stands-at') return { parts: [] };
  const pointed =
    act.intent === 'answer' || act.intent === 'correct' || (act.intent === 'move' && !named(act));
  const there = pointed && place && !named(act) ? elsewhere(turn, session, group, place) : null;
  if (there) return there;
  // What is no answer puts the question again: nothing said before is put right by it.
  if (act.intent === 'correct') return checkedOther(turn, session, take, act) ?? { parts: [] };
  if (asked === 'changed' || asked === 'fewer' || asked === 'more')
    return note(turn, session, all('changed'), [], [say('noted-changed')]);
  if (asked === 'gone' || saysGone(act, turn))
    return note(turn, session, all('gone'), [], [say('noted-gone')]);
  if (answers.has(act.intent)) {
    if (turn.qualifiers.has('changed'))
      return note(turn, session, all('changed'), [], [say('noted-changed')]);
    if (act.slots.words !== undefined && turn.qualifiers.has('there'))
      return note(turn, session, all('there'), [], []);
  }
  return null;
};
