/**
 * A turn is a sequence of moves. Which words make a move is searched for over its sentences: each run of them is
 * heard by itself, and the cover that holds most of what was said is taken. A sentence is a move of its own, unless
 * it says more with its neighbours, as what is told in one breath does.
 */
import type { Clock } from '../terms/dates.js';
import { rulesFor } from './grammar-files.js';
import {
  ASKING_INTENTS,
  CHANGING_INTENTS,
  type Act,
  type HearingContext,
  type Hypothesis,
  type Intent,
  type Slots,
  type Understanding,
} from './intents.js';
import { moodOf, type MoodShares } from './learned/index.js';
import { chunksOf } from './moves/chunks.js';
import type { Chunk } from './moves/api.js';
import { movesLexicon, type MovesLexicon } from './moves/lexicon.js';
import { past, settlingWords } from './moves/settling.js';
import { onlyLeavesOff } from './moves/turning-away.js';
import { stretchesOf } from './moves/stretches.js';
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
/** In stretches of a sentence that nobody marked. */
const longestUnmarked = 7;

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
  /** Another move begins where nobody marked it. */
  cut: -2,
  /** All moves of an unmarked sentence together. */
  enough: 1,
  /** A question word, a negation or a condition that no move took. */
  weighty: -2.5,
  /** Another word that no move took, in a stretch that is not for somebody else. */
  untaken: -1.5,
  /** And where nothing of this kitchen is named: why, or what else happened. */
  reason: -0.5,
} as const;

const bare: ReadonlySet<Intent> = new Set<Intent>(['choose', 'answer', 'follow-up']);

/** How a name was said, and what a record may be. */
const saysNothing: ReadonlySet<string> = new Set([
  ...['candidates', 'unused', 'definite', 'fresh', 'corrects', 'how', 'stands'],
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
    return (
      worthOfActs(best.acts) +
      (verdict === 'confirm' && !best.evidence && !best.acts.every(isTold) ? worth.doubtful : 0)
    );
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

const chunksIn = (text: string, names: HouseholdNames, context: HearingContext): readonly Chunk[] => {
  const clock: Clock = { now: context.now, timeZone: context.timeZone };
  const { language } = lexiconFor(context.locale);
  const { tokens, pauses } = normalise(text, context.locale);
  const lexicon = movesLexicon(language);
  const found = lexicon && chunksOf(tokens, rulesFor(names, context.locale, clock), language, pauses);
  return found?.chunks ?? [];
};

/** How much of this kitchen is named. */
const mattersIn = (chunks: readonly Chunk[]): number =>
  chunks.filter(
    (chunk) =>
      (chunk.kind === 'thing' &&
        (chunk.source === 'food' || (chunk.source === 'hers' && chunk.fit >= surely))) ||
      (chunk.kind === 'place' && chunk.fit >= surely) ||
      (chunk.kind === 'person' && (chunk.candidates[0]?.fit ?? 0) >= surely) ||
      chunk.kind === 'marker' ||
      chunk.kind === 'amount',
  ).length;
const surely = 0.9;
const surelyOrdered = 0.8;

/** As it was said, with its marks where all of a sentence is in it, without what only led to it. */
const textIn = (pieces: readonly Piece[], from: number, to: number): string => {
  const said: string[] = [];
  for (let at = from; at < to;) {
    const { joint, words, sentence } = pieces[at]!;
    const all = sentence && at + sentence.pieces <= to ? sentence : null;
    said.push(all ? all.text : at === from || joint === '' ? words : `${joint} ${words}`);
    at += all?.pieces ?? 1;
  }
  return said.join(' ');
};

/** The same run of pieces of every guess; of the first alone where the others are cut otherwise. */
const saidIn = (
  pieces: readonly (readonly Piece[])[],
  hypotheses: readonly Hypothesis[],
  from: number,
  to: number,
): readonly Hypothesis[] =>
  hypotheses.flatMap(({ confidence }, rank) =>
    pieces[rank]!.length === pieces[0]!.length
      ? [
          {
            text: textIn(pieces[rank]!, from, to),
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

/** Of an unmarked stretch only what is surely understood is a move: small bits of a sentence soon sound like one. */
const isSureMove = (understanding: Understanding, tokens: readonly string[], language: string): boolean => {
  const {
    verdict,
    readings: [best],
    question,
    settles,
  } = understanding;
  if (settles) return true;
  const asks = question?.outright === true && !question.fragment && question.left.length === 0;
  if (verdict !== 'act' || !best) return asks;
  const { acts } = best;
  if (acts.some(({ intent, slots }) => bare.has(intent) || (intent === 'amend' && !slots.item?.words)))
    return false;
  // "I had the tap running" is no report of a step.
  if (acts.some(({ intent, slots }) => intent === 'done' && slots.reported) && tokens.length > shortReport)
    return false;
  const changes = acts.some(({ intent }) => changing.has(intent));
  // "Salami opened when": what is asked is not told by a bit of it.
  if (changes && (moodOf(tokens, language)?.asked ?? 0) > seldomAsked) return false;
  const whole = acts.every(isTold) && acts.every(({ slots }) => !slots.unused?.length && hasSubject(slots));
  // "How many does that leave": what was learned knows questions by their wording.
  const known = acts.every(({ intent }) => asking.has(intent)) && best.confidence >= likelyKnown;
  if (known && (moodOf(tokens, language)?.asked ?? 0) >= surelyAsked) return true;
  const framed = best.agenda === true || best.framed === true || best.byPhrase === true;
  return isSureOfWhole(understanding) || framed || whole || asks;
};
const shortReport = 3;
const likelyKnown = 0.6;
const surelyAsked = 0.6;

/** "Use by Saturday" belongs to what was told before it; "ate it" is a move. */
const hasSubject = ({ statements = [] }: Slots): boolean =>
  statements.every(({ thing, deed }) => thing?.words || (deed !== 'fact' && deed !== 'stored'));

const changing: ReadonlySet<Intent> = new Set<Intent>(CHANGING_INTENTS);
const seldomAsked = 0.35;

/** All that was said is held in one move. */
const holdsAll = (understanding: Understanding, mood: MoodShares | null): boolean => {
  const {
    verdict,
    readings: [best],
    question,
  } = understanding;
  // A rule for two things at once makes less of each than it would of one.
  if ((isSureOfWhole(understanding) && best?.acts.length === 1) || best?.agenda) return true;
  const asks = question?.outright === true && question.left.length === 0 && (mood?.asked ?? 1) >= surelyAsked;
  if (verdict !== 'act' || !best) return asks;
  if (best.acts.every(isTold)) return best.acts.every(({ slots }) => !slots.unused?.length);
  return best.framed === true || asks;
};

/** Kinds of constituent that are a fact, whoever it is told of. */
const facts: ReadonlySet<Chunk['kind']> = new Set<Chunk['kind']>([
  ...([
    'place',
    'person',
    'marker',
    'amount',
    'share',
    'number',
    'day',
    'time',
    'span',
    'container',
  ] as const),
]);
const turning = ['wh', 'not', 'if', 'without', 'aux'] as const;

/** What is lost with one constituent of an unmarked stretch that no move took; `named`: something of this kitchen is. */
const lossOf = (chunk: Chunk, lexicon: MovesLexicon, named: boolean): number => {
  if (chunk.kind === 'word') {
    if (turning.some((name) => chunk.classes.has(name))) return worth.weighty;
    const tells = [...chunk.classes].some((name) => /^(?:date|state|deed):/u.test(name));
    return tells ? worth.untaken : 0;
  }
  if (chunk.kind === 'unknown') {
    if (lexicon.weighs(chunk.word)) return worth.weighty;
    return lexicon.isOrdinary(chunk.word) ? 0 : named ? worth.untaken : worth.reason;
  }
  if (chunk.kind === 'thing') return chunk.source === 'open' ? worth.reason : worth.untaken;
  return facts.has(chunk.kind) ? worth.untaken : 0;
};

const lostWith = (
  chunks: readonly Chunk[],
  tokens: readonly string[],
  named: boolean,
  language: string,
): number => {
  const lexicon = movesLexicon(language);
  if (!lexicon || (moodOf(tokens, language)?.['not-ours'] ?? 0) >= mostlyOthers) return 0;
  return chunks.reduce((sum, chunk) => sum + lossOf(chunk, lexicon, named), 0);
};

const moodIn = (text: string, context: HearingContext): MoodShares | null =>
  moodOf(normalise(text, context.locale).tokens, lexiconFor(context.locale).language, context);
/** It is of another world, however well bits of it fit. */
const mostlyOthers = 0.5;

/** What was said, in the pieces that moves are made of. */
interface Piece {
  /** Words that only lead to it: no part of a move that begins here. */
  readonly joint: string;
  readonly words: string;
  /** Nobody marked that it ends there. */
  readonly unmarked: boolean;
  /** The sentence that begins with it, as it was marked, and how many pieces that was cut into. */
  readonly sentence?: { readonly text: string; readonly pieces: number };
}

const piecesOf = (
  sentences: readonly string[],
  isHeld: (sentence: string, nth: number) => boolean,
  names: HouseholdNames,
  context: HearingContext,
): readonly Piece[] => {
  const clock: Clock = { now: context.now, timeZone: context.timeZone };
  const rules = rulesFor(names, context.locale, clock);
  const { language } = lexiconFor(context.locale);
  return sentences.flatMap((sentence, at) => {
    const stretches = isHeld(sentence, at)
      ? [{ joint: '', words: sentence }]
      : stretchesOf(sentence, rules, language, context.locale);
    return stretches.map((stretch, nth) => ({
      ...stretch,
      unmarked: nth < stretches.length - 1,
      ...(nth === 0 ? { sentence: { text: sentence, pieces: stretches.length } } : {}),
    }));
  });
};

/** Something is waited for or going on, which may be left. */
const isBusy = ({ expecting, steps, checking, standing }: HearingContext): boolean =>
  (expecting !== 'anything' && expecting !== 'detail') ||
  Boolean(steps) ||
  Boolean(checking) ||
  Boolean(standing);

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
  const { steps } = context;
  const [read] = inAll.readings;
  const sure = isSureOfWhole(inAll) && read?.acts.length === 1 && !read.byPhrase;
  if (sure || (read?.agenda && !steps)) return whole;
  const sentences = hypotheses.map(({ text }) => withLead(sentencesOf(text), context.locale));
  if (sentences[0]!.length > mostSentences) return whole;
  const after: HearingContext = {
    ...context,
    expecting: steps ? context.expecting : 'anything',
    goesOn: true,
  };
  const mood = moodIn(sentences[0]!.join(' '), context);
  const within = !holdsAll(inAll, mood) && (mood?.['not-ours'] ?? 0) < mostlyOthers;
  /** Of several sentences, one that makes sense by itself is not cut. */
  const isHeld = (text: string, nth: number): boolean =>
    !within ||
    (sentences[0]!.length > 1 &&
      worthOf(understander.understand([{ text }], names, nth === 0 ? context : after)) !== null);
  const pieces = sentences.map((all) => piecesOf(all, isHeld, names, context));
  const [own] = pieces;
  const count = own!.length;
  if (count < 2) return whole;
  const heard = (from: number, to: number): Understanding =>
    understander.understand(saidIn(pieces, hypotheses, from, to), names, from === 0 ? context : after);
  const { language } = lexiconFor(context.locale);
  const tokensOf = (from: number, to: number): readonly string[] =>
    normalise(textIn(own!, from, to), context.locale).tokens;
  /** Its beginning or its end is nobody's mark. */
  const isGuessed = (from: number, to: number): boolean =>
    (from > 0 && own![from - 1]!.unmarked) || own![to - 1]!.unmarked;
  /** Within a sentence, or of whole ones. */
  const joins = (from: number, to: number): boolean =>
    own!.slice(from, to - 1).every(({ unmarked }) => unmarked) || !isGuessed(from, to);
  const longest = own!.some(({ unmarked }) => unmarked) ? longestUnmarked : longestMove;
  const held = own!.map(({ words }) => chunksIn(words, names, context));
  const matters = held.map(mattersIn);
  const lost = held.map((chunks, at) =>
    isGuessed(at, at + 1)
      ? lostWith(chunks, tokensOf(at, at + 1), matters[at]! > 0, language)
      : worth.lost * matters[at]!,
  );
  const alone: number[] = [];
  const back: boolean[] = [];
  const elsewhere: boolean[] = [];
  /** What is said to nobody here, alone. */
  const aside: boolean[] = [];
  const heldFrom = (from: number, to: number): number | null => {
    const understanding = from === 0 && to === count ? inAll : heard(from, to);
    const guessed = isGuessed(from, to);
    const held =
      guessed && !isSureMove(understanding, tokensOf(from, to), language) ? null : worthOf(understanding);
    if (to - from === 1) {
      aside[from] = held === null && guessed && lost[from] === 0;
      back[from] = pointsBack(understanding);
      elsewhere[from] = held !== null && !isOfSteps(understanding);
      return (alone[from] = held ?? lost[from]!);
    }
    if (held === null) return null;
    if (onlyTells(understanding)) return held + worth.goesOn;
    // "Done. Next." moves the steps on once.
    if (understanding.readings[0]?.agenda && elsewhere.slice(from, to).every((other) => !other)) {
      const each = alone.slice(from, to).reduce((sum, one) => sum + one, 0);
      return Math.max(held, each) + worth.goesOn;
    }
    const marked =
      understanding.readings[0]?.byPhrase === true ||
      own!.slice(from, to - 1).some(({ unmarked }) => !unmarked);
    return held + (!marked || (back[to - 1] && !back[from]) ? 0 : worth.joined);
  };
  const worthFrom = (from: number, to: number): number | null => {
    const held = heldFrom(from, to);
    return held === null ? null : held + (from > 0 && own![from - 1]!.unmarked ? worth.cut : 0);
  };
  for (let at = 0; at < count; at += 1) heldFrom(at, at + 1);
  const best: Run[] = [{ from: 0, worth: 0 }];
  for (let to = 1; to <= count; to += 1) {
    let run: Run | null = null;
    for (let from = to - 1; from >= Math.max(0, to - longest); from -= 1) {
      const here =
        to - from === 1
          ? alone[from]! + (from > 0 && own![from - 1]!.unmarked && !aside[from] ? worth.cut : 0)
          : worthFrom(from, to);
      if (here === null || !joins(from, to)) continue;
      const sum = best[from]!.worth + here;
      if (!run || sum >= run.worth) run = { from, worth: sum };
    }
    best.push(run!);
  }
  // Of a sentence that nobody marked, what is made of its bits must be more than a guess.
  if (sentences[0]!.length === 1 && best[count]!.worth < worth.enough) return whole;
  // "Put them on the list": what is ordered is not passed over, whatever it names.
  const orders = (text: string): boolean => {
    const { language } = lexiconFor(context.locale);
    const { tokens } = normalise(text, context.locale);
    return tokens.length > 2 && (moodOf(tokens, language)?.ordered ?? 0) >= surelyOrdered;
  };
  const moves: Move[] = [];
  for (let to = count; to > 0; to = best[to]!.from) {
    const { from } = best[to]!;
    // A stretch that says nothing of this kitchen, where nobody marked it, is no move of its own.
    if (to - from === 1 && aside[from]) continue;
    const followed = moves.length > 0 && !isBusy(context);
    if (followed && onlyLeavesOff(tokensOf(from, to), language)) continue;
    moves.unshift({
      said: saidIn(pieces, hypotheses, from, to),
      matters: matters.slice(from, to).some((some) => some > 0) || orders(textIn(own!, from, to)),
    });
  }
  return moves;
};
