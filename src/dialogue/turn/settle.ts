/**
 * A yes or no with more after it: "no, only the meatballs", "yes, and the eggs are next to it". The question is
 * settled first; the rest narrows or completes what was asked, or is a move of its own in the same turn.
 */
import type {
  Act,
  Intent,
  Reading,
  Mention,
  Slots,
  Statement,
  Understood,
} from '../../understanding/intents.js';
import { ASKING_INTENTS, DESTRUCTIVE_INTENTS } from '../../understanding/intents.js';
import { foodKey } from '../../kitchen/index.js';
import { say } from '../handler.js';
import { findItems } from '../refer/items.js';
import type { Frame } from '../state.js';
import { correctedSlots } from './correct.js';
import { answerFrame, topFrame } from './frames.js';
import { ofAnother } from './fill.js';
import { type Work, runAct, saying, turnOf, withState } from './work.js';

type Settles = NonNullable<Understood['settles']>;
/** How the rest of it is taken, once the question is settled. */
type Hear = (work: Work, understanding: Understood) => Work;

/** What is read beside the acts from here on is only that of the rest. */
const ofTheRest = (work: Work, { beside }: Understood): Work => ({ ...work, beside: beside ?? null });

/** The whole as one answer to what was asked. */
const wholeAnswers: ReadonlySet<Intent> = new Set<Intent>([
  'yes',
  'no',
  'maybe',
  'cancel',
  'choose',
  'answer',
]);

const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);

/** Yes or no says something to this question. */
const takesYesOrNo = ({ kind, guess, no, passing }: Frame): boolean =>
  kind !== 'slot' || guess !== undefined || no !== undefined || passing === true;

/** A reading of the whole, every word of it used, that answers by itself. */
const answersWhole = (
  work: Work,
  { settles, verdict }: Understood,
  best: Reading | undefined,
  /** Yes and no say nothing to the question. */
  ofSlot = false,
): boolean => {
  const [act, ...more] = best?.acts ?? [];
  if (ofSlot && (act?.intent === 'no' || act?.intent === 'cancel')) return false;
  if (!act || more.length > 0 || verdict !== 'act') return false;
  const byCues = best?.evidence === undefined && best?.framed !== true;
  // What is asked besides is nothing that a correction could hold.
  const asks = settles?.rest.readings[0]?.acts.some((one) => asking.has(one.intent)) === true;
  if (act.intent === 'correct')
    return settles?.intent === 'no' && topFrame(work)?.kind !== 'offer' && !(asks && settles.parted);
  if (!wholeAnswers.has(act.intent)) return settles?.parted !== true;
  return !byCues;
};

/** The same thing, by record where there is one, else by name. */
const isOf = (work: Work, one: Mention | null | undefined, said: Mention): boolean => {
  if (!one) return false;
  const turn = turnOf(work);
  const asked =
    one.candidates.length > 0
      ? one.candidates.map(({ id }) => id)
      : findItems(turn, one).items.map(({ id }) => id);
  const named = [...said.candidates.map(({ id }) => id), ...findItems(turn, said).items.map(({ id }) => id)];
  if (asked.some((id) => named.includes(id))) return true;
  return one.words !== null && said.words !== null && foodKey(one.words) === foodKey(said.words);
};

const parted = <T>(all: readonly T[], fits: (one: T) => boolean): readonly [T[], T[]] => [
  all.filter(fits),
  all.filter((one) => !fits(one)),
];

/** Of several things that were asked about, the deed for those named and for the others; null where it is not so. */
const shareOut = (work: Work, { act }: Frame, named: readonly Mention[]): readonly [Act, Act] | null => {
  const { statements, items, item } = act.slots;
  const fits = (one: Mention | null | undefined): boolean => named.some((said) => isOf(work, one, said));
  const as = (slots: Partial<Slots>): Act => ({ ...act, slots: { ...act.slots, ...slots } });
  if (statements && statements.length > 1) {
    const [those, others] = parted(statements, ({ thing }) => fits(thing));
    if (those.length > 0 && others.length > 0) return [as({ statements: those }), as({ statements: others })];
  }
  if (items && items.length > 1) {
    const [those, others] = parted(items, fits);
    const { items: _all, ...rest } = act.slots;
    // One of them alone is no list.
    const only = (some: readonly Mention[]): Act =>
      some.length === 1 ? { ...act, slots: { ...rest, item: some[0]! } } : as({ items: some });
    if (those.length > 0 && others.length > 0) return [only(those), only(others)];
  }
  if (item && item.candidates.length > 1) {
    const [those, others] = parted(item.candidates, (one) =>
      fits({ ...item, words: null, pointer: null, candidates: [one] }),
    );
    const only = (candidates: typeof those): Act => as({ item: { ...item, candidates } });
    if (those.length > 0 && others.length > 0) return [only(those), only(others)];
  }
  return null;
};

/** "Yeah, in the door": what was asked about, with that part told in the same breath. */
const completedBy = (work: Work, { act }: Frame, said: Slots): Act | null => {
  const {
    item,
    items: _items,
    not: _not,
    asked: _asked,
    about: _about,
    ...rest
  } = said as Slots & { about?: unknown };
  const place = rest.place ?? item?.at ?? undefined;
  const { statements } = act.slots;
  if (statements) {
    const { amount, dates, when } = rest;
    const more: Partial<Statement> = {
      ...(place ? { place } : {}),
      ...(amount ? { amount } : {}),
      ...(dates ? { dates } : {}),
      ...(when && when !== 'unknown' ? { when } : {}),
    };
    if (Object.keys(more).length === 0) return null;
    const at = item?.words
      ? statements.findIndex(({ thing }) => isOf(work, thing, item))
      : statements.length - 1;
    const whole = statements[at];
    return whole
      ? { ...act, slots: { ...act.slots, statements: statements.with(at, { ...whole, ...more }) } }
      : null;
  }
  // What it is for, of a timer: its name.
  if (act.intent === 'set-timer' && act.slots.words === undefined) {
    const words = rest.words ?? item?.words;
    if (words) return { ...act, slots: { ...act.slots, words } };
  }
  if (item?.words && !isOf(work, act.slots.item, item)) return null;
  const { slots, redo } = correctedSlots(
    work.kitchen,
    act.slots,
    { ...rest, ...(place ? { place } : {}) },
    undefined,
  );
  return redo.length > 0 ? { ...act, slots } : null;
};

/** What was asked about, narrowed or completed by a few words; null where they do neither. */
const narrowedBy = (
  work: Work,
  frame: Frame,
  intent: 'yes' | 'no',
  { not, things, slots }: NonNullable<Settles['narrows']>,
): Work | null => {
  const popped = withState(work, { frames: work.state.frames.slice(0, -1) });
  // "Yes, only the eggs go on the middle shelf": all of it, with that put right; "yes, only the eggs" leaves the rest.
  const [thing, ...more] = things;
  const mends =
    intent === 'yes' && !not && thing && more.length === 0 && Object.keys(slots).length > 0
      ? completedBy(work, frame, { ...slots, item: thing })
      : null;
  if (mends) return runAct(popped, mends, { picked: frame.picked, sure: true });
  const shares = things.length > 0 ? shareOut(work, frame, things) : null;
  // "No, not the rice" says of the others only what may be guessed.
  if (shares)
    return runAct(popped, not ? shares[1] : shares[0], { picked: {}, sure: !not || intent === 'yes' });
  if (not || intent === 'no' || things.length > 1) return null;
  const whole = completedBy(work, frame, { ...slots, ...(things[0] ? { item: things[0] } : {}) });
  return whole ? runAct(popped, whole, { picked: frame.picked, sure: true }) : null;
};

/** "No. Where's the cinnamon?", to which of two was meant: neither, and something else is wanted. */
const letGo = (
  work: Work,
  frame: Frame,
  understanding: Understood,
  best: Reading | undefined,
  hear: Hear,
): Work | null => {
  const { settles } = understanding;
  if (!settles?.parted || settles.narrows) return null;
  const { rest } = settles;
  const [act] = rest.readings[0]?.acts ?? [];
  const other =
    rest.verdict === 'act' && act && !ofTheQuestion.has(act.intent) && act.intent !== frame.act.intent;
  if (!other || answersWhole(work, understanding, best, true)) return null;
  return hear(ofTheRest(withState(work, { frames: work.state.frames.slice(0, -1) }), rest), rest);
};
const ofTheQuestion: ReadonlySet<Intent> = new Set<Intent>(['choose', 'answer', 'correct', 'follow-up']);

/** "Yes, we ate it": the deed that was asked about, of what it was asked about. */
const saysAgain = (frame: Frame, act: Act): boolean => {
  const { intent, slots } = frame.act;
  const { item } = act.slots;
  const pointed = !item || (item.words === null && item.candidates.length === 0 && item.pointer !== 'other');
  const deed = slots.findings ? DESTRUCTIVE_INTENTS.has(act.intent) : act.intent === intent;
  if (ofAnother(frame, act)) return false;
  // What is told has facts of its own.
  return deed && pointed && !act.slots.amount && !act.slots.place && !act.slots.statements;
};

/** The turn, where it begins with a yes or no to the open question and goes on; null where it does not. */
export const settleFirst = (
  work: Work,
  understanding: Understood,
  best: Reading | undefined,
  hear: Hear,
): Work | null => {
  const { settles } = understanding;
  const frame = topFrame(work);
  if (!settles || !frame) return null;
  const { intent, rest } = settles;
  const clear = withState(work, { misses: 0 });
  if (!takesYesOrNo(frame)) return intent === 'no' ? letGo(clear, frame, understanding, best, hear) : null;
  const narrowed =
    settles.narrows && frame.kind !== 'slot'
      ? narrowedBy(ofTheRest(clear, rest), frame, intent, settles.narrows)
      : null;
  if (narrowed) return narrowed;
  if (answersWhole(work, understanding, best)) return null;
  const unheard = rest.verdict === 'ask-again' || rest.verdict === 'out-of-scope';
  const lost =
    unheard && !(rest.question && !rest.question.fragment && (rest.question.outright || rest.question.hers));
  const [again, ...others] = rest.readings[0]?.acts ?? [];
  if (again && others.length === 0 && intent === 'yes' && saysAgain(frame, again))
    return answerFrame(clear, { intent, slots: {} });
  // A yes is not acted on past words that may take it back.
  // Which allergens they are is kept as the widest answer: nothing after it takes that back unsaid.
  const widest = frame.kind === 'slot' && frame.expecting === 'allergen';
  if ((lost || settles.narrows?.not) && intent === 'yes' && !widest) return null;
  const settled = answerFrame(clear, { intent, slots: {} });
  if (!settled) return null;
  // Why it was refused need not be understood, where it names nothing.
  if (lost && intent === 'no' && !rest.caught && !rest.question?.hers) return settled;
  if (lost) return saying(settled, say('rest-not-heard', { said: rest.beside?.quote ?? '' }));
  // What was refused is said to be so only where nothing else is.
  const quiet =
    intent === 'no' && settled.changes.length === work.changes.length
      ? { ...settled, parts: work.parts }
      : settled;
  return hear(ofTheRest(quiet, rest), rest);
};
