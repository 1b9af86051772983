/** What the turn before changed, for whoever hears the next: it may be put right, taken back or added to. */
import type { Change, Kitchen } from '../../kitchen/model.js';
import type { LastDone } from '../../understanding/intents.js';
import type { Conversation } from '../api.js';
import { stateOf } from '../state.js';

const namesIn = (changes: readonly Change[]): readonly string[] => [
  ...new Set(
    changes.flatMap(({ ops }) =>
      ops.flatMap((op) => {
        if (op.kind === 'item' || op.kind === 'purchase') return (op.after ?? op.before)?.name ?? [];
        return op.kind === 'reminder' ? ((op.after ?? op.before)?.label ?? []) : [];
      }),
    ),
  ),
];

/** The place it was put, where that is part of another: its name says what kind of part it is. */
const partOf = (kitchen: Kitchen, changes: readonly Change[]): string | null => {
  const put = changes
    .flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' && op.after ? [op.after.placeId] : [])))
    .at(-1);
  const place = put ? kitchen.places.get(put) : undefined;
  return place?.parentId ? place.name : null;
};

/** Null where the turn before changed nothing. */
export const justDone = (conversation: Conversation, kitchen: Kitchen): LastDone | null => {
  const { done, turns } = stateOf(conversation);
  if (!done || done.turn !== turns - 1) return null;
  const { intent, slots } = done.act;
  return {
    intent,
    how: slots.how ?? null,
    names: namesIn(done.changes),
    part: partOf(kitchen, done.changes),
  };
};

/** The turn before told of food here: what is said now may be asked of that. */
export const toldJustNow = (conversation: Conversation): boolean => {
  const { asked, turns } = stateOf(conversation);
  return asked !== null && asked.turn === turns - 1;
};
