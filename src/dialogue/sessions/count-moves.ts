/** Moving about in a check: back to the one before, on to one that is named, from the start, how many are left. */
import {
  applyChange,
  changedSince,
  checkItem,
  finishStockTake,
  invertChange,
  isRefused,
  itemsAt,
  joinChanges,
  placeUnder,
  startStockTake,
} from '../../kitchen/index.js';
import type { Change, Item, JournalEntry, StockTake } from '../../kitchen/model.js';
import type { Act } from '../../understanding/intents.js';
import { type Group, grouped } from '../describe/item.js';
import { placeNoun } from '../describe/place.js';
import { refusal } from '../describe/refusals.js';
import { type Reply, type Turn, about, say } from '../handler.js';
import { atOrdinal, findItems } from '../refer/items.js';
import type { Session } from '../state.js';

export type Count = Extract<Session, { kind: 'count' }>;

export const unseenAt = (turn: Turn, take: StockTake): readonly Group[] =>
  grouped(
    turn.kitchen,
    itemsAt(turn.kitchen, take.placeId).filter(
      // What was put down since it began was in her hand.
      ({ id, addedAt }) => !Object.hasOwn(take.seen, id) && addedAt <= take.startedAt,
    ),
  );

/** The lot asked about now: the one gone to, else the next that nothing was said of. */
export const nextGroup = (
  turn: Turn,
  take: StockTake,
  { at = null, within = null }: Pick<Count, 'at' | 'within'> = {},
): Group | null => {
  const to = at
    ? grouped(turn.kitchen, itemsAt(turn.kitchen, take.placeId)).find(({ items }) => has(items, at))
    : null;
  const unseen = unseenAt(turn, take);
  const here = ({ first }: Group): boolean =>
    within !== null && placeUnder(turn.kitchen, first.placeId, within);
  return to ?? unseen.find(here) ?? unseen[0] ?? null;
};

const has = (items: readonly Item[], id: string): boolean => items.some((item) => item.id === id);

type Taken = Extract<JournalEntry['ops'][number], { kind: 'stockTake' }>;
const takeOp = ({ ops }: JournalEntry, take: StockTake): Taken | undefined =>
  ops.find((op): op is Taken => op.kind === 'stockTake' && op.id === take.id);

const sameSeen = (a: StockTake['seen'], b: StockTake['seen']): boolean =>
  Object.keys(a).length === Object.keys(b).length && Object.keys(b).every((id) => a[id] === b[id]);

/** The answer that brought the check to where it stands, as the journal has it. */
const lastAnswer = (turn: Turn, take: StockTake): { entry: JournalEntry; ids: readonly string[] } | null => {
  for (const entry of turn.journal) {
    const op = takeOp(entry, take);
    if (!op?.after || !op.before || !sameSeen(op.after.seen, take.seen)) continue;
    const { before, after } = op;
    const ids = Object.keys(after.seen).filter((id) => !Object.hasOwn(before.seen, id));
    if (ids.length > 0) return { entry, ids };
  }
  return null;
};

/** Takes the last answer back, with what it did; null when there is none, or somebody changed it since. */
export const takeAnswerBack = (
  turn: Turn,
  take: StockTake,
): { readonly change: Change; readonly ids: readonly string[]; readonly was: string } | null => {
  const last = lastAnswer(turn, take);
  if (!last || changedSince(turn.kitchen, last.entry).length > 0) return null;
  const { entry, ids } = last;
  const change: Change = {
    verb: 'undid',
    about: entry.about,
    ops: invertChange(entry),
    undoes: entry.id,
  };
  return { change, ids, was: take.seen[ids[0]!] ?? 'unsure' };
};

const goBack = (turn: Turn, session: Count, take: StockTake): Reply => {
  const back = takeAnswerBack(turn, take);
  if (!back) return { parts: [say('first-already')] };
  const [first] = back.ids;
  const name = turn.kitchen.items.get(first!)?.name ?? '';
  const after = { ...turn, kitchen: applyChange(turn.kitchen, back.change) };
  const items = back.ids.flatMap((id) => after.kitchen.items.get(id) ?? []);
  return {
    parts: back.was === 'gone' ? [say('count-back-gone', { name })] : [],
    changes: [back.change],
    memory: about(after, items),
    session: { ...session, itemIds: [], at: first! },
  };
};

/** "No wait, it is there": the answer before was wrong, and the question now open stays open. */
export const revised = (
  turn: Turn,
  session: Count,
  take: StockTake,
  seen: 'there' | 'gone',
): Reply | null => {
  const back = takeAnswerBack(turn, take);
  if (!back || back.was === seen) return null;
  const changes: Change[] = [back.change];
  let kitchen = applyChange(turn.kitchen, back.change);
  for (const id of back.ids) {
    const result = checkItem({ ...turn, kitchen }, take.id, id, seen);
    if (isRefused(result)) return refusal(turn, result);
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  const [first, ...rest] = changes;
  const name = kitchen.items.get(back.ids[0]!)?.name ?? '';
  const open = nextGroup({ ...turn, kitchen }, { ...take, ...kitchen.stockTakes.get(take.id) }, session);
  return {
    parts: [say('count-revised', { name, seen })],
    // Back and noted anew are one deed: "undo" takes both.
    changes: [{ ...joinChanges(first!, ...rest), verb: 'checked' }],
    session: { ...session, itemIds: back.ids },
    ...(open ? { memory: about(turn, open.items) } : {}),
  };
};

const goTo = (turn: Turn, session: Count, take: StockTake, act: Act): Reply | null => {
  const { item, ordinal, number, words } = act.slots;
  const n = ordinal ?? number ?? item?.ordinal ?? null;
  const all = grouped(turn.kitchen, itemsAt(turn.kitchen, take.placeId));
  const ids = findItems(turn, item).items.map(({ id }) => id);
  const group =
    n !== null ? atOrdinal(all, n) : all.find(({ items }) => items.some(({ id }) => ids.includes(id)));
  if (group)
    return {
      parts: [],
      memory: about(turn, group.items),
      session: { ...session, at: group.items[0]!.id },
    };
  const said = item?.words ?? words;
  const place = placeNoun(turn.kitchen, take.placeId);
  return said ? { parts: [say('count-not-among', { name: said, place })] } : null;
};

/** All answers so far stand in the kitchen; only the check begins anew. */
const fromTheStart = (turn: Turn, session: Count, take: StockTake): Reply => {
  const place = placeNoun(turn.kitchen, take.placeId);
  const items = itemsAt(turn.kitchen, take.placeId);
  const begun = say('count-start', { place, count: grouped(turn.kitchen, items).length });
  const memory = about(turn, grouped(turn.kitchen, items)[0]?.items ?? []);
  if (Object.keys(take.seen).length === 0)
    return { parts: [begun], memory, session: { ...session, itemIds: [], at: null } };
  const ended = finishStockTake(turn, take.id);
  if (isRefused(ended)) return refusal(turn, ended);
  const started = startStockTake({ ...turn, kitchen: applyChange(turn.kitchen, ended) }, take.placeId);
  if (isRefused(started)) return refusal(turn, started);
  const stockTakeId = started.ops[0]!.id;
  return {
    parts: [begun],
    changes: [ended, started],
    memory,
    session: { ...session, stockTakeId, itemIds: [], at: null },
  };
};

/** The reply to what moves in the check; null for anything else. */
export const countMove = (act: Act, turn: Turn, session: Count, take: StockTake): Reply | null => {
  switch (act.intent) {
    case 'back':
      return goBack(turn, session, take);
    case 'start-over':
      return fromTheStart(turn, session, take);
    case 'steps-left': {
      if (act.slots.asked === 'time') return { parts: [say('steps-untimed')] };
      const now = nextGroup(turn, take, session);
      const left = unseenAt(turn, take).filter(({ first }) => first.id !== now?.first.id).length;
      return { parts: [say('steps-left', { left })] };
    }
    case 'skip-to':
      return goTo(turn, session, take, act);
    case 'continue':
      // The question is put again; what was cut off or not yet read goes first.
      return turn.cutAt === null && !turn.state.told?.cut.length && !turn.state.told?.rest.length
        ? { parts: [] }
        : null;
    default:
      return null;
  }
};
