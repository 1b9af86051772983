/**
 * What another did just now to the very thing this listener is in the middle of: the item being asked
 * about, the item of the steps being followed, the place being checked. It is worth a word at once; all
 * else waits for the next turn. Pure, as `decide` is.
 */
import { placeUnder } from '../../kitchen/index.js';
import type { Id, JournalEntry, Op } from '../../kitchen/model.js';
import type { Answer } from '../../speech/answer.js';
import type { Conversation, Surroundings } from '../api.js';
import { say } from '../handler.js';
import { entryWords } from '../history/history.js';
import { type Frame, type State, stateOf } from '../state.js';
import { startWork, turnOf } from '../turn/work.js';
import { byOthers, matters } from './deeds.js';
import { withTold } from './news.js';
import { isQuietNow } from './quiet.js';

/** Who has said nothing for so long has gone on with something else. */
const MINUTES_IN_THE_MIDDLE = 30;

const askedAbout = ({ choices, picked, guess, act }: Frame): readonly Id[] => [
  ...(choices?.flatMap(({ ids }) => ids) ?? []),
  ...Object.values(picked).flat(),
  ...(guess ?? []),
  ...(choices ? [] : [act.slots.item, ...(act.slots.items ?? [])]).flatMap((mention) =>
    (mention?.candidates ?? []).slice(0, 1).map(({ id }) => id),
  ),
];

const placesOf = (op: Op): readonly Id[] =>
  op.kind === 'item' ? [op.before, op.after].flatMap((item) => item?.placeId ?? []) : [];

const concerns = (state: State, { kitchen }: Surroundings, entry: JournalEntry): boolean => {
  const { frames, procedure, session, memory } = state;
  const frame = frames.at(-1);
  const items = new Set([
    ...(frame ? askedAbout(frame) : []),
    // "Throw it out? Yes or no": it is the item last spoken of.
    ...(frame && frame.kind !== 'slot' && memory.items.length === 1 ? memory.items : []),
    ...(procedure?.itemId && !procedure.paused ? [procedure.itemId] : []),
  ]);
  if (matters(entry) && entry.ops.some(({ kind, id }) => kind === 'item' && items.has(id))) return true;
  if (session?.kind !== 'count' || session.paused) return false;
  const place = kitchen.stockTakes.get(session.stockTakeId)?.placeId;
  const changesPlace = matters(entry) || entry.verb === 'put away';
  return (
    place !== undefined &&
    changesPlace &&
    entry.ops.flatMap(placesOf).some((id) => placeUnder(kitchen, id, place))
  );
};

export interface Interruption {
  readonly entryId: Id;
  readonly answer: Answer;
}

/** The first of the deeds that cannot wait; null when all can. `around` is after them. */
export const interruption = (
  conversation: Conversation,
  entries: readonly JournalEntry[],
  around: Surroundings,
): Interruption | null => {
  const { lastAt } = conversation;
  const state = stateOf(conversation);
  if (lastAt === null || state.practice) return null;
  if (Date.parse(around.clock.now) - Date.parse(lastAt) > MINUTES_IN_THE_MIDDLE * 60_000) return null;
  const heard = { understanding: { readings: [], margin: 1, verdict: 'nothing-heard' } as const };
  const work = startWork(conversation, { ...heard, touched: null, cutAt: null }, around);
  if (isQuietNow(work)) return null;
  const entry = entries.find(
    (one) =>
      byOthers(around.speaker, one) && !state.toldUnasked.includes(one.id) && concerns(state, around, one),
  );
  if (!entry) return null;
  return { entryId: entry.id, answer: { parts: [say('entry', { entry: entryWords(turnOf(work), entry) })] } };
};

/** The conversation after its listener was told of a deed unasked. */
export const afterTelling = (
  conversation: Conversation,
  told: readonly Id[],
  around: Surroundings,
): Conversation => {
  const heard = { understanding: { readings: [], margin: 1, verdict: 'nothing-heard' } as const };
  const work = startWork(conversation, { ...heard, touched: null, cutAt: null }, around);
  return { ...conversation, state: withTold(work, told).state };
};
