/** "No, the top shelf": the last thing done is done again with one part put right, as one change. */
import { applyChange, changedSince, invertChange, joinChanges } from '../../kitchen/index.js';
import type { Change, Id, Op } from '../../kitchen/model.js';
import type { Act, Slots } from '../../understanding/intents.js';
import { say } from '../handler.js';
import { handlers } from '../table.js';
import type { Picked } from '../state.js';
import { type Work, absorb, saying, turnOf } from './work.js';

const minutesOpen = 10;

/** What the correction replaces, in terms of the act that was done. */
const correctedSlots = (
  was: Slots,
  said: Slots,
  other: Id | undefined,
): { slots: Slots; redo: (keyof Slots)[] } => {
  const name = said.spelled ?? null;
  if (name && was.item) {
    return { slots: { ...was, item: { ...was.item, words: name, candidates: [] } }, redo: ['item'] };
  }
  const { item, ...rest } = said;
  const slots: Slots = { ...was, ...rest };
  if (item?.pointer === 'other' && other && was.item) {
    const candidates = [{ id: other, fit: 1 }];
    return { slots: { ...slots, item: { ...was.item, pointer: null, candidates } }, redo: ['item'] };
  }
  if (item) return { slots: { ...slots, item: { ...was.item, ...item } }, redo: ['item'] };
  return { slots, redo: Object.keys(rest) as (keyof Slots)[] };
};

const createdIds = (changes: readonly Change[]): Id[] =>
  changes.flatMap(({ ops }) => ops.filter(({ before }) => before === null).map(({ id }) => id));

/** Runs the correction; null when there is nothing it could be a correction of. */
export const correctLast = (work: Work, act: Act): Work | null => {
  const { done } = work.state;
  if (!done) return null;
  const age = (Date.parse(work.around.clock.now) - Date.parse(done.at)) / 60_000;
  const [first, ...rest] = done.changes;
  if (age > minutesOpen || !first) return null;
  const whole = joinChanges(first, ...rest);
  if (changedSince(work.kitchen, whole).length > 0) {
    return saying(work, say('changed-since'));
  }
  const other = work.state.memory.offered.find((id) => !work.state.memory.items.includes(id));
  const { slots, redo } = correctedSlots(done.act.slots, act.slots, other);
  if (redo.length === 0) return null;
  const picked: Picked = Object.fromEntries(
    Object.entries(done.picked).filter(([slot]) => !redo.includes(slot as keyof Slots)),
  );
  const back: Change = { verb: first.verb, about: first.about, ops: invertChange(whole) };
  const kitchen = applyChange(work.kitchen, back);
  // The same records come back under the same ids, so that markers and batches hold.
  const ids = createdIds(done.changes);
  const newId = (): Id => ids.shift() ?? work.around.newId();
  const was: Work = { ...work, kitchen };
  const settled = { picked, sure: true };
  const redoneAct: Act = { intent: done.act.intent, slots };
  const reply = handlers[redoneAct.intent](redoneAct, { ...turnOf(was, settled), newId });
  const [newFirst, ...newRest] = reply.changes ?? [];
  if (!newFirst) return absorb(work, redoneAct, settled, reply);
  const again = joinChanges(back, newFirst, ...newRest);
  const ops = again.ops.filter((op: Op) => JSON.stringify(op.before) !== JSON.stringify(op.after));
  const change: Change = { verb: newFirst.verb, about: newFirst.about, ops };
  const redone = absorb(work, redoneAct, settled, {
    ...reply,
    parts: [say('put-right'), ...reply.parts],
    changes: ops.length > 0 ? [change] : [],
  });
  return redone;
};
