/** "Go on": what was cut off, the rest of a list, the steps or the session that wait; and answers to nothing asked. */
import { openStockTakes } from '../../kitchen/index.js';
import type { Act } from '../../understanding/intents.js';
import { type Handler, type Reply, type Turn, say, assent } from '../handler.js';
import { resumeCount } from '../sessions/count.js';
import { resumeSetup } from '../sessions/setup.js';
import type { Procedure } from '../state.js';
import { details, littleMore, offerUndo, verbatim } from './controls.js';
import { restOf } from './rest.js';
import { cutIndex } from '../turn/broken-off.js';
import { goOnAnywhere, goOnWith } from './resume.js';
import { next } from './steps.js';

/** A little more of what was just told; who says so is told when that is asked. */
const moreDetail: (...of: Parameters<Handler>) => Reply | null = (act, turn) => {
  const { told } = turn.state;
  if (!told || told.details.length === 0) return null;
  if (turn.qualifiers.has('tell')) return details(act, turn);
  if (!turn.qualifiers.has('more')) return null;
  const [shown, rest] = [told.details.slice(0, littleMore), told.details.slice(littleMore)];
  return { parts: [...shown, ...(rest.length > 0 ? [say('power-more')] : [])], keepTold: true, rest };
};

/** Steps that are read out like a list: "more" and "go on" lead on in them. */
const isRead = (procedure: Procedure | null): boolean =>
  procedure?.kind === 'power-back' && !procedure.paused;

/** What another request broke off, right after that was answered; "more" is of the answer itself first. */
const goOnBefore = (act: Act, turn: Turn): Reply | null => {
  const { told, turns } = turn.state;
  if (!told?.earlier || told.turn !== turns - 1) return null;
  const more = moreDetail(act, turn);
  if (more) return more;
  const { sentences, rest } = told.earlier;
  const lead = say('where-we-were');
  if (sentences.length > 0)
    return { parts: [lead, ...verbatim(sentences)], keepTold: true, quiet: true, rest };
  const next = restOf({ ...told, rest });
  return { ...next, parts: [lead, ...next.parts] };
};

/** What was cut off, else the rest of a list, else the procedure or session that was put aside. */
export const goOn: Handler = (_act, turn) => {
  if (_act.slots.item) return goOnWith(turn, _act.slots.item);
  const { told, procedure, session } = turn.state;
  const at = cutIndex(turn.cutAt);
  const cut = at === null ? (told?.cut ?? []) : turn.lastSentences.slice(at);
  if (cut.length > 0) return { parts: verbatim(cut), keepTold: true, cut: [], quiet: true };
  if (told && told.rest.length > 0) return restOf(told);
  const before = goOnBefore(_act, turn);
  if (before) return before;
  if (isRead(procedure)) return next(_act, turn);
  // Steps that wait are gone on with by "go on"; "more" is of what was just told.
  const waiting = procedure?.paused ? moreDetail(_act, turn) : null;
  if (waiting) return waiting;
  const picked = procedure || !(session && session.kind !== 'shop') ? goOnAnywhere(turn) : null;
  if (picked) return picked;
  if (session && session.kind !== 'shop' && session.paused) {
    return { parts: [say('where-we-were')], session: { ...session, paused: false } };
  }
  return moreDetail(_act, turn) ?? goOnElsewhere(turn) ?? { parts: [say('nothing-more')], keepTold: true };
};

/** "Pick up where we were": a check that was begun, or the set-up, when no steps are open. */
const goOnElsewhere = (turn: Turn): Reply | null => {
  // With nothing said here yet, it is of what was begun somewhere else.
  if (turn.state.told && !turn.qualifiers.has('go-on-elsewhere')) return null;
  const [open] = openStockTakes(turn.kitchen);
  return open ? resumeCount(turn, open) : resumeSetup(turn);
};

/** A bare yes, no, choice or answer with nothing open to take it. */
export const unasked: Handler = (act, turn) => {
  const { procedure, told } = turn.state;
  // "Shall I go on?"
  if (told && told.rest.length > 0) {
    return act.intent === 'yes'
      ? goOn(act, turn)
      : { parts: [assent('all-right')], keepTold: true, rest: [] };
  }
  if (act.intent === 'yes' && isRead(procedure)) return next(act, turn);
  if (act.intent === 'yes' && procedure && !procedure.paused)
    return { parts: [say('say-next')], keepTold: true };
  const back = act.intent === 'no' ? offerUndo(turn) : null;
  if (back) return back;
  if (act.intent === 'no' || act.intent === 'maybe') return { parts: [assent('all-right')], keepTold: true };
  // Nothing more was to come: "yes" to a summary or an answer means it was taken in.
  const summed = told?.answer.parts.some(({ phrase }) => phrase.startsWith('summary-'));
  if (act.intent === 'yes' && summed) return { parts: [say('nothing-more')], keepTold: true };
  return { parts: [assent('nothing-was-asked')], keepTold: true };
};
