/**
 * A turn of several moves: each is heard and decided on what the one before left, as if it had been a turn of its
 * own, and all are answered together. What says nothing of this kitchen is passed over; what does and was not
 * understood is said to be so.
 */
import type { Answer } from '../speech/answer.js';
import { applyChange } from '../kitchen/index.js';
import type { Kitchen, Op } from '../kitchen/model.js';
import type { Quote } from '../terms/quote.js';
import { ASKING_INTENTS, type Act, type Intent, type Understood } from '../understanding/intents.js';
import type { Conversation, Heard, Outcome, Surroundings } from './api.js';
import { decide } from './decide.js';
import { say } from './handler.js';
import { stateOf } from './state.js';

/** One move, to be heard once it is known what came before it. `H` is what whoever heard it keeps of it. */
export interface SaidMove<H> {
  readonly quote: Quote;
  /** It names something of this kitchen: not understood, that is said. */
  readonly matters: boolean;
  /** @param changed what the moves before it changed. */
  readonly hear: (
    conversation: Conversation,
    around: Surroundings,
    changed: readonly Op[],
  ) => { readonly understood: Understood; readonly kept: H };
}

interface Sequence {
  readonly outcome: Outcome;
  /** What the move before was heard as. */
  readonly last: readonly Act[];
  /** It only named something: so many of its parts were of the moves before it. Null where it said more. */
  readonly names: number | null;
}

/** It says only that something was heard: nothing where another move was answered. */
const onlyAssents = ({ parts, question }: Answer): boolean =>
  question === undefined && parts.every(({ tells }) => tells === 'assent');

const actsOf = ({ readings: [best] }: Understood): readonly Act[] => best?.acts ?? [];

/** "Undo that. Undo the last thing." */
const saysAgain = (last: readonly Act[], acts: readonly Act[]): boolean =>
  acts.length > 0 && JSON.stringify(last) === JSON.stringify(acts);

/** "Okay, pulled pork then.", before what is asked of it: the name is what it is about, and asks nothing by itself. */
const onlyNames = (acts: readonly Act[], before: Conversation, { changes, answer }: Outcome): boolean => {
  const [act, ...more] = acts;
  const named = act?.intent === 'choose' && more.length === 0 && act.slots.item?.words;
  const free = stateOf(before).frames.length === 0 && answer.question === undefined;
  return Boolean(named) && free && changes.length === 0;
};
const asking: ReadonlySet<Intent> = new Set<Intent>([...ASKING_INTENTS, 'guidance', 'reheat']);
const asksOf = (understood: Understood): boolean =>
  actsOf(understood).length > 0 && actsOf(understood).every(({ intent }) => asking.has(intent));
const withoutName = ({ outcome, names }: Sequence): Outcome =>
  names === null
    ? outcome
    : { ...outcome, answer: { ...outcome.answer, parts: outcome.answer.parts.slice(0, names) } };

/** A question that is asked at the end is not said before it, too. */
const joined = (one: Outcome, other: Outcome): Outcome => {
  const [before, after] = [one.answer, other.answer];
  const asked = JSON.stringify(after.question);
  const first = before.parts.filter((part) => JSON.stringify(part) !== asked);
  const answer = onlyAssents(before)
    ? after
    : onlyAssents(after)
      ? { ...before, ...(after.question ? { question: after.question } : {}) }
      : {
          ...after,
          parts: [...first, ...after.parts],
          more: [...(before.more ?? []), ...(after.more ?? [])],
        };
  return {
    ...other,
    by: [...one.by, ...other.by],
    changes: [...one.changes, ...other.changes],
    effects: [...one.effects, ...other.effects],
    answer,
  };
};

const missesOf = (conversation: Conversation): number => stateOf(conversation).misses;
const isUnheard = (outcome: Outcome, before: Conversation): boolean =>
  outcome.changes.length === 0 && missesOf(outcome.conversation) > missesOf(before);

/** One move as it was heard and decided, for whoever asks why. */
export interface DecidedMove<H> {
  readonly heard: H;
  readonly by: Outcome['by'];
  readonly answer: Answer;
  /** Nothing came of it. */
  readonly passedOver: boolean;
}

/** What was decided of all moves, and of each of them; null where none of them was understood. */
export const decideMoves = <H>(
  conversation: Conversation,
  moves: readonly SaidMove<H>[],
  heard: Omit<Heard, 'understanding'>,
  around: Surroundings,
): { readonly outcome: Outcome; readonly each: readonly DecidedMove<H>[] } | null => {
  let sequence = null as Sequence | null;
  const unheard: Quote[] = [];
  const each: DecidedMove<H>[] = [];
  let here = around;
  for (const { quote, matters, hear } of moves) {
    const before = sequence?.outcome.conversation ?? conversation;
    const { understood, kept } = hear(
      before,
      here,
      (sequence?.outcome.changes ?? []).flatMap(({ ops }) => ops),
    );
    const acts = actsOf(understood);
    if (sequence && saysAgain(sequence.last, acts)) continue;
    const first = sequence === null;
    const decided = decide(
      before,
      {
        understanding: understood,
        touched: first ? heard.touched : null,
        cutAt: first ? heard.cutAt : null,
        told: first ? (heard.told ?? []) : [],
      },
      here,
    );
    if (decided.lookUp) return { outcome: decided, each };
    const passedOver = isUnheard(decided, before);
    each.push({ heard: kept, by: decided.by, answer: decided.answer, passedOver });
    if (passedOver) {
      if (matters) unheard.push(quote);
      continue;
    }
    here = { ...here, kitchen: decided.changes.reduce<Kitchen>(applyChange, here.kitchen) };
    const saidBefore =
      sequence && !onlyAssents(sequence.outcome.answer) ? sequence.outcome.answer.parts.length : 0;
    const names = onlyNames(acts, before, decided) ? saidBefore : null;
    // What was named is asked about now: what is known of it besides was not.
    const said = sequence && asksOf(understood) ? withoutName(sequence) : sequence?.outcome;
    sequence = { outcome: said ? joined(said, decided) : decided, last: acts, names };
  }
  if (!sequence) return null;
  const { outcome } = sequence;
  const parts = [...outcome.answer.parts, ...unheard.map((said) => say('rest-not-heard', { said }))];
  return { outcome: { ...outcome, answer: { ...outcome.answer, parts } }, each };
};
