/** Words left for whoever speaks, read to her after what she asked, and then heard. */
import { heardNotes, isRefused, notesFor } from '../../kitchen/index.js';
import type { Intent } from '../../understanding/intents.js';
import { noteWords } from '../people/people.js';
import { topFrame } from '../turn/frames.js';
import { type Work, absorb, turnOf, unsettled, withState } from '../turn/work.js';
import { isQuietNow } from './quiet.js';

const NOT_NOW: ReadonlySet<Intent> = new Set<Intent>(['notes', 'leave-note', 'stop', 'wait', 'undo', 'redo']);
/** More wait for the next time. */
const AT_ONCE = 2;

/** Hands or head are busy: steps are being read, a place checked, a question is open. */
const isBusy = ({ state, quiet, asking }: Work): boolean =>
  quiet ||
  asking ||
  state.practice !== null ||
  (state.procedure !== null && !state.procedure.paused) ||
  (state.session !== null && !(state.session.kind !== 'shop' && state.session.paused));

export const withMessages = (work: Work): Work => {
  const { personId } = work.around.speaker;
  const { act } = work;
  if (personId === null || act === null || NOT_NOW.has(act.intent)) return work;
  if (isBusy(work) || topFrame(work) || isQuietNow(work)) return work;
  const mine = notesFor(work.kitchen, personId)
    .filter(({ forPersonId }) => forPersonId === personId)
    .slice(0, AT_ONCE);
  if (mine.length === 0) return work;
  const turn = turnOf(work);
  const heard = heardNotes(
    turn,
    mine.map(({ id }) => id),
  );
  if (isRefused(heard)) return work;
  const { done, asked } = work.state;
  const read = absorb(work, act, unsettled, {
    parts: mine.map((note) => noteWords(turn, note)),
    changes: [heard],
    aside: work.aside,
  });
  // That they were heard is nothing the cook did or asked: "no, the other one" still means her own deed, and
  // "who made it" what she asked about.
  return withState(read, { done, asked });
};
