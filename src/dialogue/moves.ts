/**
 * A turn of several moves: each is heard and decided on what the one before left, as if it had been a turn of its
 * own, and all are answered together. What says nothing of this kitchen is passed over; what does and was not
 * understood is said to be so.
 */
import type { Answer } from '../speech/answer.js';
import { applyChange } from '../kitchen/index.js';
import type { Kitchen, Op } from '../kitchen/model.js';
import type { Quote } from '../terms/quote.js';
import type { Act, Understood } from '../understanding/intents.js';
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
}

/** It says only that something was heard: nothing where another move was answered. */
const onlyAssents = ({ parts, question }: Answer): boolean =>
  question === undefined && parts.every(({ tells }) => tells === 'assent');

const actsOf = ({ readings: [best] }: Understood): readonly Act[] => best?.acts ?? [];

/** "Undo that. Undo the last thing." */
const saysAgain = (last: readonly Act[], acts: readonly Act[]): boolean =>
  acts.length > 0 && JSON.stringify(last) === JSON.stringify(acts);

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
    sequence = sequence
      ? {
          outcome: joined(sequence.outcome, decided),
          last: acts,
        }
      : { outcome: decided, last: acts };
  }
  if (!sequence) return null;
  const { outcome } = sequence;
  const parts = [...outcome.answer.parts, ...unheard.map((said) => say('rest-not-heard', { said }))];
  return { outcome: { ...outcome, answer: { ...outcome.answer, parts } }, each };
};
