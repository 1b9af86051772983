/**
 * A turn is a sequence of moves. Which words make a move is searched for over its sentences: each run of them is
 * heard by itself, and the cover that holds most of what was said is taken. A sentence is a move of its own, unless
 * it says more with its neighbours, as what is told in one breath does.
 */
import type { Clock } from '../terms/dates.js';
import { rulesFor } from './grammar-files.js';
import {
  ASKING_INTENTS,
  type Act,
  type HearingContext,
  type Hypothesis,
  type Intent,
  type Understanding,
} from './intents.js';
import { moodOf } from './learned/index.js';
import { chunksOf } from './moves/chunks.js';
import { movesLexicon } from './moves/lexicon.js';
import { past, settlingWords } from './moves/settling.js';
import type { HouseholdNames } from './names/api.js';
import { isSureOfWhole, type Understander } from './understand.js';
import { lexiconFor, normalise } from './words/index.js';
import { sentencesOf } from './words/sentences.js';

export interface Move {
  readonly said: readonly Hypothesis[];
  /** Words of food, places or people here stand in it: not understood, it may not be passed over in silence. */
  readonly matters: boolean;
}

/** More sentences than that are heard as they come. */
const mostSentences = 8;
/** No move is longer, in sentences. */
const longestMove = 4;

const worth = {
  /** A move of several sentences that goes on with what it tells, over as many moves. */
  goesOn: 1,
  /** And one that does not: a sentence is likelier a move of its own. */
  joined: -2,
  left: -1.5,
  /** Only what was learned speaks for it. */
  doubtful: -2,
  /** A few words that only the talk before makes sense of. */
  bare: 0.5,
  /** What is of this kitchen and was not understood, each. */
  lost: -0.7,
} as const;

const bare: ReadonlySet<Intent> = new Set<Intent>(['choose', 'answer', 'follow-up']);

/** How a name was said, and what a record may be. */
const saysNothing: ReadonlySet<string> = new Set([
  ...['candidates', 'unused', 'definite', 'fresh', 'corrects', 'how'],
]);

/** Values of a meaning, each once; records a name may mean are no more than the name. */
const heldIn = (value: unknown, into: Set<string>, role = ''): Set<string> => {
  if (Array.isArray(value)) for (const part of value) heldIn(part, into, role);
  else if (typeof value === 'object' && value !== null) {
    const words = (value as { words?: unknown }).words;
    if (typeof words === 'string') into.add(`${role} ${words}`);
    else for (const [key, part] of Object.entries(value)) if (!saysNothing.has(key)) heldIn(part, into, key);
  } else if (value !== null && value !== undefined && value !== false) into.add(`${role} ${String(value)}`);
  return into;
};

const worthOfActs = (acts: readonly Act[]): number =>
  acts.reduce(
    (sum, { intent, slots }) =>
      sum +
      (bare.has(intent)
        ? worth.bare
        : (slots.statements ?? [slots]).reduce((held, part) => held + heldIn(part, new Set()).size, 1) +
          worth.left * (slots.unused?.length ?? 0)),
    0,
  );

/** What is heard in it, in numbers; null where nothing is. */
const worthOf = ({ verdict, readings: [best], question, settles }: Understanding): number | null => {
  if (settles) return 1 + Math.max(0, worthOf(settles.rest) ?? 0);
  if (best && (verdict === 'act' || verdict === 'confirm'))
    return worthOfActs(best.acts) + (verdict === 'confirm' && !best.acts.every(isTold) ? worth.doubtful : 0);
  return question?.outright && !question.fragment
    ? worthOfActs(question.acts) + worth.left * question.left.length
    : null;
};

const isTold = ({ intent }: Act): boolean => intent === 'tell';
/** It moves the steps on, or is about them. */
const isOfSteps = ({ readings: [best] }: Understanding): boolean =>
  best?.agenda === true || best?.acts.every(({ intent }) => ofSteps.has(intent)) === true;
const ofSteps: ReadonlySet<Intent> = new Set<Intent>([
  ...(['next', 'done', 'back', 'repeat', 'ask-step', 'steps-left', 'yes', 'continue'] as const),
]);

const onlyTells = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined && best.acts.length > 0 && best.acts.every(isTold);

/** "What is it?", "what's the total?": asked of what stands before it. */
const pointsBack = ({ readings: [best], question }: Understanding): boolean => {
  const [act, ...more] = best?.acts ?? question?.acts ?? [];
  if (!act || more.length > 0 || !asking.has(act.intent)) return false;
  const { item, items, place, query } = act.slots;
  return (
    (item?.words ?? items ?? place) === undefined &&
    !query?.where.some(({ by }) => by === 'named' || by === 'each' || by === 'place')
  );
};
const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);

/** How much of this kitchen is named. */
const mattersIn = (text: string, names: HouseholdNames, context: HearingContext): number => {
  const clock: Clock = { now: context.now, timeZone: context.timeZone };
  const { language } = lexiconFor(context.locale);
  const { tokens, pauses } = normalise(text, context.locale);
  const lexicon = movesLexicon(language);
  const found = lexicon && chunksOf(tokens, rulesFor(names, context.locale, clock), language, pauses);
  return (found?.chunks ?? []).filter(
    (chunk) =>
      (chunk.kind === 'thing' &&
        (chunk.source === 'food' || (chunk.source === 'hers' && chunk.fit >= surely))) ||
      (chunk.kind === 'place' && chunk.fit >= surely) ||
      (chunk.kind === 'person' && (chunk.candidates[0]?.fit ?? 0) >= surely) ||
      chunk.kind === 'marker' ||
      chunk.kind === 'amount',
  ).length;
};
const surely = 0.9;
const surelyOrdered = 0.8;

/** The same run of sentences of every guess; of the first alone where the others are cut otherwise. */
const saidIn = (
  sentences: readonly (readonly string[])[],
  hypotheses: readonly Hypothesis[],
  from: number,
  to: number,
): readonly Hypothesis[] =>
  hypotheses.flatMap(({ confidence }, rank) =>
    sentences[rank]!.length === sentences[0]!.length
      ? [
          {
            text: sentences[rank]!.slice(from, to).join(' '),
            ...(confidence === undefined ? {} : { confidence }),
          },
        ]
      : [],
  );

/** The best cover of all sentences up to one, by where its last move begins. */
interface Run {
  readonly from: number;
  readonly worth: number;
}

/** "Right. No to that.": a word that only leads to what is said is no move. */
const withLead = (sentences: readonly string[], locale: string): readonly string[] => {
  const [first, second, ...rest] = sentences;
  const words = settlingWords(lexiconFor(locale).language);
  if (first === undefined || second === undefined || !words) return sentences;
  const { tokens } = normalise(first, locale);
  return past(words.before, tokens, 0) === tokens.length ? [`${first} ${second}`, ...rest] : sentences;
};

/** The moves of a turn, in order; one where all of it is one. */
export const movesOf = (
  understander: Understander,
  hypotheses: readonly Hypothesis[],
  names: HouseholdNames,
  context: HearingContext,
  /** All of it, as it was heard. */
  inAll: Understanding,
): readonly Move[] => {
  const [first] = hypotheses;
  const whole: readonly Move[] = [{ said: hypotheses, matters: true }];
  if (!first || context.expecting === 'spelling' || context.expecting === 'code') return whole;
  const sentences = hypotheses.map(({ text }) => withLead(sentencesOf(text), context.locale));
  const count = sentences[0]!.length;
  if (count < 2 || count > mostSentences) return whole;
  const { steps } = context;
  const after: HearingContext = {
    ...context,
    expecting: steps ? context.expecting : 'anything',
    goesOn: true,
  };
  const heard = (from: number, to: number): Understanding =>
    understander.understand(saidIn(sentences, hypotheses, from, to), names, from === 0 ? context : after);
  const [read] = inAll.readings;
  if ((isSureOfWhole(inAll) && !read?.byPhrase) || (read?.agenda && !steps)) return whole;
  const matters = sentences[0]!.map((text) => mattersIn(text, names, context));
  const alone: number[] = [];
  const back: boolean[] = [];
  const elsewhere: boolean[] = [];
  const worthFrom = (from: number, to: number): number | null => {
    const understanding = from === 0 && to === count ? inAll : heard(from, to);
    const own = worthOf(understanding);
    if (to - from === 1) {
      back[from] = pointsBack(understanding);
      elsewhere[from] = own !== null && !isOfSteps(understanding);
      return (alone[from] = own ?? worth.lost * matters[from]!);
    }
    if (own === null) return null;
    if (onlyTells(understanding)) return own + worth.goesOn;
    // "Done. Next." moves the steps on once.
    if (understanding.readings[0]?.agenda && elsewhere.slice(from, to).every((other) => !other)) {
      const each = alone.slice(from, to).reduce((sum, one) => sum + one, 0);
      return Math.max(own, each) + worth.goesOn;
    }
    return own + (back[to - 1] && !back[from] ? 0 : worth.joined);
  };
  for (let at = 0; at < count; at += 1) worthFrom(at, at + 1);
  const best: Run[] = [{ from: 0, worth: 0 }];
  for (let to = 1; to <= count; to += 1) {
    let run: Run | null = null;
    for (let from = to - 1; from >= Math.max(0, to - longestMove); from -= 1) {
      const here = to - from === 1 ? alone[from]! : worthFrom(from, to);
      if (here === null) continue;
      const sum = best[from]!.worth + here;
      if (!run || sum >= run.worth) run = { from, worth: sum };
    }
    best.push(run!);
  }
  // "Put them on the list": what is ordered is not passed over, whatever it names.
  const orders = (text: string): boolean => {
    const { language } = lexiconFor(context.locale);
    const { tokens } = normalise(text, context.locale);
    return tokens.length > 2 && (moodOf(tokens, language)?.ordered ?? 0) >= surelyOrdered;
  };
  const moves: Move[] = [];
  for (let to = count; to > 0; to = best[to]!.from) {
    const { from } = best[to]!;
    moves.unshift({
      said: saidIn(sentences, hypotheses, from, to),
      matters:
        matters.slice(from, to).some((some) => some > 0) || orders(sentences[0]!.slice(from, to).join(' ')),
    });
  }
  return moves;
};
