/** Guided steps: one act at a time, its caution first; forwards, back, from the start, how many left. */
import { hint } from '../lessons/lesson.js';
import { itMention } from '../../understanding/intents.js';
import { changeTimer, openReminders, setTimer } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import { count } from '../find/count.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, say, seconds, assent } from '../handler.js';
import type { Procedure, Step } from '../state.js';
import { restOf } from './rest.js';
import { currentStep, stepWords } from './step-words.js';

export const toStep = (procedure: Procedure, at: number): Reply => {
  const moved = { ...procedure, at, paused: false, held: false, unread: false };
  const last = at === procedure.steps.length - 1;
  const items = procedure.steps[at]?.items;
  return {
    parts: [...(last && at > 0 ? [say('last-step')] : []), ...currentStep(moved)],
    procedure: moved,
    ...(items ? { memory: { items } } : {}),
  };
};

/** The first step of a procedure, with how many there are. */
export const beginSteps = (procedure: Procedure, before: readonly Say[]): Reply => ({
  parts: [
    ...before,
    say('steps-begin', { title: procedure.title, count: procedure.steps.length }),
    ...currentStep(procedure),
  ],
  procedure,
  // Hands are busy from here on: questions left open before are let go.
  dropFrames: true,
  count: procedure.steps.length,
  sources: procedure.source ?? [],
});

const finished = (procedure: Procedure): Reply => ({
  parts: [say(procedure.kind === 'reheat' ? 'reheating-over' : 'steps-over')],
  procedure: null,
});

const noSteps: Reply = { parts: [say('no-steps')], keepTold: true };

const afterStep = (procedure: Procedure): Reply =>
  procedure.at + 1 >= procedure.steps.length ? finished(procedure) : toStep(procedure, procedure.at + 1);

export const next: Handler = (act, turn) => {
  const { told } = turn.state;
  const procedure = upTo(turn.state.procedure, act.slots.number);
  if (!procedure && told && told.rest.length > 0) return restOf(told);
  // "Skip this one", with no steps read: the task of the lesson.
  if (!procedure && turn.state.practice?.lesson) return hint({ ...act, slots: { asked: 'skip' } }, turn);
  if (!procedure) return noSteps;
  return procedure.unread ? toStep(procedure, procedure.at) : afterStep(procedure);
};

export const back: Handler = (act, turn) => {
  const { procedure } = turn.state;
  if (!procedure) return noSteps;
  if (procedure.at <= 0) return { parts: [say('first-already'), ...currentStep(procedure)] };
  return toStep(procedure, Math.max(0, procedure.at - (act.slots.number ?? 1)));
};

/** "Start again from the top": of the steps, else of what was just read out. */
export const startOver: Handler = (_act, turn) => {
  const { procedure } = turn.state;
  if (procedure) return toStep(procedure, 0);
  return turn.lastSentences.length > 0
    ? { parts: turn.lastSentences.map((text) => say('verbatim', { text })), keepTold: true, quiet: true }
    : noSteps;
};

/** Counted from one, or from the last that somebody told: what guidance adds comes after it. */
const placeOf = ({ steps, kind }: Procedure, n: number): number => {
  const lastOwn = kind === 'reheat' ? steps.findLastIndex(({ own }) => own) : -1;
  return n > 0 ? n - 1 : (lastOwn < 0 ? steps.length - 1 : lastOwn) + n + 1;
};

/** "Skip to standing", "go to step three". */
export const skipTo: Handler = (act, turn) => {
  const { procedure } = turn.state;
  if (!procedure) return noSteps;
  const { ordinal, number, words, method } = act.slots;
  const n = ordinal ?? number;
  if (n !== undefined) {
    const at = n < 0 ? procedure.steps.length + n : n - 1;
    return procedure.steps[at]
      ? toStep(procedure, at)
      : { parts: [say('so-many-steps', { count: procedure.steps.length })] };
  }
  // What a step is called was looked for where it was heard.
  const wanted = words ?? method ?? act.slots.item?.words;
  return {
    parts: [
      wanted
        ? say('no-such-step', { words: wanted })
        : say('so-many-steps', { count: procedure.steps.length }),
    ],
  };
};

/** The step with a time nearest to this one; of two as near the earlier, whose timer may be running. */
const nearestTimed = ({ steps, at, unread }: Procedure): number | null => {
  const here = unread ? at - 1 : at;
  const timed = steps.flatMap(({ timer }, index) => (timer ? [index] : []));
  return timed.sort((a, b) => Math.abs(a - here) - Math.abs(b - here) || a - b)[0] ?? null;
};

/** "What was the time again". */
const stepTime = (procedure: Procedure): Reply => {
  const at = nearestTimed(procedure);
  const timer = at === null ? undefined : procedure.steps[at]?.timer;
  if (at === null || !timer) return { parts: [say('steps-untimed')], keepTold: true };
  return {
    parts: [
      say('step-time', {
        time: seconds(timer.seconds),
        ...(at === procedure.at ? {} : { step: { kind: 'ordinal', n: at + 1 } }),
      }),
    ],
    keepTold: true,
    aside: true,
  };
};

/** "How many are left", "what was the third step". */
export const stepsLeft: Handler = (act, turn) => {
  const { procedure } = turn.state;
  if (procedure && act.slots.asked === 'time') return stepTime(procedure);
  // "How many are left" of food, when no steps are being read.
  const food = !procedure || turn.qualifiers.has('amount');
  if (food && turn.memory.items.length > 0)
    return count({ intent: 'count', slots: { item: itMention } }, turn);
  if (!procedure) return noSteps;
  const n = act.slots.ordinal ?? act.slots.number;
  if (n !== undefined) {
    const at = placeOf(procedure, n);
    const step = procedure.steps[at];
    const after = procedure.steps.length - at - 1;
    return step
      ? {
          parts: [
            ...stepWords(step),
            ...(n < 0 && after > 0 ? [say('steps-after-own', { left: after })] : []),
          ],
        }
      : { parts: [say('so-many-steps', { count: procedure.steps.length })] };
  }
  const after = procedure.steps.slice(procedure.at + (procedure.unread ? 0 : 1));
  const own = procedure.kind === 'reheat' ? after.filter((step) => step.own).length : 0;
  // Those that were told, and those that guidance adds: whoever told them counts only the first.
  return {
    parts: [
      own > 0 && own < after.length
        ? say('steps-left-own', { left: after.length, own, other: after.length - own })
        : say('steps-left', { left: after.length }),
    ],
  };
};

/** "It's in the microwave already", before the step that says so: that step, and all before it are done. */
const stepInto = ({ at, unread }: Procedure, into: number | undefined): number | null =>
  into !== undefined && into - 1 > (unread ? at - 1 : at) ? into - 1 : null;

/** Where a later step was told as done, it stands there. */
const upTo = (procedure: Procedure | null, number: number | undefined): Procedure | null =>
  procedure && number !== undefined && procedure.steps[number - 1]
    ? { ...procedure, at: Math.max(procedure.at, number - 1) }
    : procedure;

/** The act is done: its timer starts, if it has one; else the next is read. */
export const done: Handler = (act, turn) => {
  const procedure = upTo(turn.state.procedure, act.slots.number);
  const step = procedure?.steps[procedure.at];
  if (!procedure || !step) return { parts: [assent('good')], keepTold: true };
  const { into: said, reported } = act.slots;
  const named = stepInto(procedure, said);
  // "It's whizzing round", before the step that takes its time was read: that one is under way.
  const following = procedure.unread || step.timer ? undefined : procedure.steps[procedure.at + 1];
  const into = named ?? (reported && following?.timer ? procedure.at + 1 : null);
  const reached = into === null ? undefined : procedure.steps[into];
  // "It's in the microwave and I've started it".
  if (into !== null && reached?.timer && reported)
    return startStepTimer(turn, { ...procedure, at: into }, reached.timer);
  if (into !== null) return toStep(procedure, into);
  // "Done" once more, when its timer has rung.
  if (procedure.unread) return next(act, turn);
  if (!step.timer) return afterStep(procedure);
  return startStepTimer(turn, procedure, step.timer);
};

/** "Another minute": on the timer of the dish where one runs, else one of its own; the step stays as it is. */
export const heatLonger = (turn: Turn, procedure: Procedure, more: number): Reply => {
  const { itemId } = procedure;
  const running = openReminders(turn.kitchen, 'timer').find(
    (one) => itemId !== null && one.itemId === itemId,
  );
  const label = (itemId ? turn.kitchen.items.get(itemId)?.name : undefined) ?? null;
  const change = running
    ? changeTimer(turn, running.id, { addSeconds: more })
    : setTimer(turn, { seconds: more, label, itemId });
  return withChange(turn, change, (made) => ({
    parts: [
      running
        ? say('timer-longer', { time: seconds(more), ...(label ? { label } : {}) })
        : say('timer-set', { time: seconds(more), ...(label ? { label } : {}) }),
    ],
    changes: [made],
    keepTold: true,
    memory: { reminderId: made.ops[0]!.id },
  }));
};

/** The step's timer, and the next step kept for when it rings. */
export const startStepTimer = (turn: Turn, procedure: Procedure, timer: NonNullable<Step['timer']>): Reply =>
  withChange(
    turn,
    setTimer(turn, { seconds: timer.seconds, label: timer.label, itemId: procedure.itemId }),
    (change) => {
      const last = procedure.at + 1 >= procedure.steps.length;
      const moved = last ? null : { ...procedure, at: procedure.at + 1, paused: true, unread: true };
      return {
        parts: [say('timer-started', { time: seconds(timer.seconds), last: last ? 'yes' : 'no' })],
        changes: [change],
        procedure: moved,
        memory: { reminderId: change.ops[0]!.id },
      };
    },
  );
