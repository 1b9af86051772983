/**
 * A turn of several moves: each is heard and decided on what the one before left, as if it had been a turn of its
 * own, and all are answered together. What says nothing of this kitchen is passed over; what does and was not
 * understood is said to be so.
 */
import type { Answer } from '../speech/answer.js';
import { applyChange } from '../kitchen/index.js';
import type { Kitchen, Op } from '../kitchen/model.js';
import type { Act, Understanding } from '../understanding/intents.js';
import type { Conversation, Heard, Outcome, Surroundings } from './api.js';
import { decide } from './decide.js';
import { say } from './handler.js';
import { stateOf } from './state.js';

/** One move, to be heard once it is known what came before it. */
export interface SaidMove {
  readonly words: string;
  /** It names something of this kitchen: not understood, that is said. */
  readonly matters: boolean;
  /** @param changed what the moves before it changed. */
  readonly hear: (conversation: Conversation, around: Surroundings, changed: readonly Op[]) => Understanding;
}

interface Sequence {
  readonly outcome: Outcome;
  readonly understanding: Understanding;
  /** What the move before was heard as. */
  readonly last: readonly Act[];
}

/** Answers that only say that something was heard: nothing where another move was answered. */
const assents: ReadonlySet<string> = new Set([
  ...['all-right', 'good', 'hello', 'welcome', 'nothing-to-say', 'nothing-changed', 'left-as-it-is'],
  ...[
    'offer-declined',
    'say-it-otherwise',
    'nothing-open',
    'nothing-was-asked',
    'nothing-to-correct',
    'told-nothing-new',
    'shop-start',
  ],
]);
const onlyAssents = ({ parts, question }: Answer): boolean =>
  question === undefined && parts.every(({ phrase }) => assents.has(phrase));

const actsOf = ({ readings: [best] }: Understanding): readonly Act[] => best?.acts ?? [];

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

/** Both, for who is told what was understood. */
const heardTogether = (one: Understanding, other: Understanding): Understanding => {
  const [first, second] = [one.readings[0], other.readings[0]];
  if (!first || !second) return first ? one : other;
  const reading = {
    ...second,
    acts: [...first.acts, ...second.acts],
    confidence: Math.min(first.confidence, second.confidence),
    heard: `${first.heard} ${second.heard}`,
  };
  return { ...other, readings: [reading, ...other.readings.slice(1)] };
};

const missesOf = (conversation: Conversation): number => stateOf(conversation).misses;
const isUnheard = (outcome: Outcome, before: Conversation): boolean =>
  outcome.changes.length === 0 && missesOf(outcome.conversation) > missesOf(before);

/** One move as it was heard and decided, for whoever asks why. */
export interface DecidedMove {
  readonly words: string;
  readonly understanding: Understanding;
  readonly by: Outcome['by'];
  readonly answer: Answer;
  /** Nothing came of it. */
  readonly passedOver: boolean;
}

/** What was decided of all moves, and what was understood of them; null where none of them was understood. */
export const decideMoves = (
  conversation: Conversation,
  moves: readonly SaidMove[],
  heard: Omit<Heard, 'understanding' | 'words'>,
  around: Surroundings,
): {
  readonly outcome: Outcome;
  readonly understanding: Understanding;
  readonly each: readonly DecidedMove[];
} | null => {
  let sequence = null as Sequence | null;
  const unheard: string[] = [];
  const each: DecidedMove[] = [];
  let here = around;
  for (const { words, matters, hear } of moves) {
    const before = sequence?.outcome.conversation ?? conversation;
    const understanding = hear(
      before,
      here,
      (sequence?.outcome.changes ?? []).flatMap(({ ops }) => ops),
    );
    const acts = actsOf(understanding);
    if (sequence && saysAgain(sequence.last, acts)) continue;
    const first = sequence === null;
    const decided = decide(
      before,
      {
        understanding,
        words,
        touched: first ? heard.touched : null,
        cutAt: first ? heard.cutAt : null,
        told: first ? (heard.told ?? []) : [],
      },
      here,
    );
    if (decided.lookUp) return { outcome: decided, understanding, each };
    const passedOver = isUnheard(decided, before);
    each.push({ words, understanding, by: decided.by, answer: decided.answer, passedOver });
    if (passedOver) {
      if (matters) unheard.push(words);
      continue;
    }
    here = { ...here, kitchen: decided.changes.reduce<Kitchen>(applyChange, here.kitchen) };
    sequence = sequence
      ? {
          ...sequence,
          outcome: joined(sequence.outcome, decided),
          understanding: heardTogether(sequence.understanding, understanding),
          last: acts,
        }
      : { outcome: decided, understanding, last: acts };
  }
  if (!sequence) return null;
  const { outcome, understanding } = sequence;
  const parts = [...outcome.answer.parts, ...unheard.map((said) => say('rest-not-heard', { said }))];
  return { outcome: { ...outcome, answer: { ...outcome.answer, parts } }, understanding, each };
};
