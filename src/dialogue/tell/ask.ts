/** What was told with words that nobody understood: said back before it is done. */
import { foodKey } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import type { Act } from '../../understanding/intents.js';
import { list, say } from '../handler.js';
import type { Frame } from '../state.js';
import { type Work, changesSoFar, pushFrame, runAct } from '../turn/work.js';

/** One sentence after the other, as one value of a phrase. */
const inTurn = ([first, ...rest]: readonly [Say, ...Say[]]): Say =>
  rest.length === 0 ? first : say('one-then-other', { first, next: inTurn(rest as [Say, ...Say[]]) });

/** Both tell of the same thing: the later of them is what she means. */
const sharesThing = (one: Act, other: Act): boolean => {
  const named = ({ slots: { statements = [] } }: Act): readonly string[] =>
    statements.flatMap(({ thing }) => [
      ...(thing?.words ? [foodKey(thing.words)] : []),
      ...(thing?.candidates.slice(0, 1).map(({ id }) => id) ?? []),
    ]);
  const said = new Set(named(one));
  return named(other).some((name) => said.has(name));
};

/** What was told before of the same things, and waits for a yes, is told anew: it waits no longer. */
export const withoutOlder = (frames: readonly Frame[], act: Act): readonly Frame[] =>
  frames.filter(
    (frame) =>
      !(frame.kind === 'sure' && frame.act.intent === 'tell' && sharesThing(frame.act, act)) &&
      !isPutAwayIn(frame, act),
  );

/** "Where does the stew go?" — "the lamb stew is on the top shelf": told whole, it is asked no longer. */
const isPutAwayIn = (
  { kind, act: { intent, slots } }: Frame,
  { slots: { statements = [] } }: Act,
): boolean => {
  const waiting = slots.item?.words ? foodKey(slots.item.words).split(' ') : [];
  return (
    kind === 'slot' &&
    intent === 'put-away' &&
    waiting.length > 0 &&
    statements.some(({ thing, place, parts }) => {
      const told = thing?.words ? foodKey(thing.words).split(' ') : [];
      return (place ?? parts) !== undefined && waiting.every((word) => told.includes(word));
    })
  );
};

/** What was told of with no place: asked after the yes, and not left out of what is said back. */
const placeless = (before: Work, after: Work): readonly string[] =>
  after.state.frames
    .filter((frame) => !before.state.frames.includes(frame))
    .flatMap(({ kind, act: { intent, slots } }) =>
      kind === 'slot' && intent === 'put-away' && slots.item?.words && !slots.place ? [slots.item.words] : [],
    );

/**
 * What would be noted, and the words that were not understood, for a yes or no: nothing is done before. What
 * changes nothing, or asks by itself, is said as it is.
 */
export const askTold = (work: Work, act: Act): Work => {
  const done = runAct({ ...work, parts: [] }, act);
  const [first, ...rest] = done.parts;
  if (changesSoFar(done) === changesSoFar(work) || !first) return runAct(work, act);
  const { unused = [], ...slots } = act.slots;
  const told = inTurn([first, ...rest]);
  const open = placeless(work, done);
  const frame: Frame = {
    kind: 'sure',
    slot: 'sure',
    question: say('sure-told', {
      told,
      ...(open.length > 0 ? { open: list(open) } : {}),
      ...(unused.length > 0 ? { unused: unused.join(' ') } : {}),
    }),
    brief: say('sure-told-brief', { told }),
    expecting: 'yes-no',
    act: { intent: 'tell', slots },
    picked: {},
    asked: 1,
  };
  const frames = withoutOlder(work.state.frames, act);
  return pushFrame({ ...work, state: { ...work.state, frames, memory: done.state.memory } }, frame);
};
