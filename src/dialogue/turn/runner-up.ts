/** When what was thought to be heard is denied twice, the next likely reading is offered, once. */
import type { Say } from '../../speech/answer.js';
import { CHANGING_INTENTS, type Act, type Intent, type Understood } from '../../understanding/intents.js';
import { say, assent } from '../handler.js';
import type { Frame } from '../state.js';
import { type Work, pushFrame, saying, tryAct, withState } from './work.js';

const changes = new Set<Intent>(CHANGING_INTENTS);

/** Turns within which the same thing denied again counts as the second time. */
const TURNS_NEAR = 4;

/** The likeliest reading that would do something else than the best one. */
export const runnerUpOf = ({ readings }: Understood, [best]: readonly Act[]): Act | null => {
  const other = readings.find(
    ({ acts }) => acts.length === 1 && acts[0]!.intent !== best?.intent && changes.has(acts[0]!.intent),
  );
  return other?.acts[0] ?? null;
};

const questionFor = (work: Work, act: Act): Say | null => {
  const reply = tryAct(work, act);
  return reply.confirm ?? ((reply.changes ?? []).length > 0 ? (reply.doubt ?? null) : null);
};

/**
 * After a "no" to "did you mean this?"; null when the matter is simply dropped. `without` is the work
 * with the question taken away.
 */
export const afterDenial = (without: Work, frame: Frame): Work | null => {
  if (frame.doubted === undefined) return null;
  if (frame.doubted === 'last') return saying(without, assent('say-it-otherwise'));
  const { denied, turns } = without.state;
  const again = denied !== null && denied.intent === frame.act.intent && turns - denied.turn <= TURNS_NEAR;
  if (!again) {
    const noted = withState(without, { denied: { intent: frame.act.intent, turn: turns } });
    return saying(noted, assent('left-as-it-is'));
  }
  const cleared = withState(without, { denied: null });
  const { runnerUp } = frame;
  const question = runnerUp ? questionFor(cleared, runnerUp) : null;
  if (!runnerUp || !question) return saying(cleared, assent('say-it-otherwise'));
  return pushFrame(cleared, {
    kind: 'sure',
    slot: 'sure',
    question: say('then-this', { question }),
    expecting: 'yes-no',
    act: runnerUp,
    picked: {},
    asked: 1,
    doubted: 'last',
  });
};
