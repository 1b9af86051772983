/**
 * A turn is a sequence of moves. Which words make a move is searched for over its sentences: each run of them is
 * heard by itself, and the cover that holds most of what was said is taken. A sentence is a move of its own, unless
 * it says more with its neighbours, as what is told in one breath does.
 */
import { rulesFor } from './grammar-files.js';
import { type Expectation, type HearingContext, type Hypothesis, type Understanding } from './intents.js';
import { passedOver } from './held.js';
import { moodOf, type MoodShares } from './learned/index.js';
import type { Chunk } from './moves/api.js';
import { constituentsOf } from './moves/occasion.js';
import { onlyLeavesOff } from './moves/turning-away.js';
import type { HouseholdNames } from './names/api.js';
import { piecesOf, saidIn, textIn, withLead } from './pieces.js';
import { isSureOfWhole, type Understander } from './understand.js';
import { lexiconFor, normalise } from './words/index.js';
import { sentencesOf } from './words/sentences.js';
import {
  holdsAll,
  isOfSteps,
  isReport,
  tellsAll,
  isSureMove,
  lostWith,
  marksWhatIsGone,
  mattersIn,
  mostlyOthers,
  onlyChanges,
  onlyTells,
  isOfSomebody,
  isRequest,
  pointsBack,
  tellsOfPeople,
  worth,
  worthOf,
} from './worth.js';

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
const surelyOrdered = 0.8;
/** "Right?" after what was told asks nothing of its own. */
const shortestQuestion = 4;

/** What is asked for then is a value, and whatever gives one answers it, with more after it or not. */
const takesValue: ReadonlySet<Expectation> = new Set<Expectation>([
  ...(['choice', 'item', 'place', 'amount', 'date', 'time', 'method', 'marker', 'person'] as const),
]);
const isAnswer = ({ verdict, readings: [best] }: Understanding): boolean =>
  verdict === 'act' &&
  best !== undefined &&
  best.acts.length > 0 &&
  best.acts.every(
    ({ intent, slots }) => intent === 'choose' || (intent === 'answer' && Object.keys(slots).length > 0),
  );

/** "Huh", "hey": asked for by themselves, and no more than a call beside anything else. */
const isCall = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined && best.acts.every(({ intent }) => intent === 'repeat' || intent === 'greeting');
const longestCall = 2;

/** The constituents of a text of this turn, each read but once. */
const constituentsOnce = (
  names: HouseholdNames,
  context: HearingContext,
): ((text: string) => readonly Chunk[]) => {
  const { language } = lexiconFor(context.locale);
  const rules = rulesFor(names, context.locale, { now: context.now, timeZone: context.timeZone });
  const known = new Map<string, readonly Chunk[]>();
  return (text) => {
    let chunks = known.get(text);
    if (!chunks) {
      const { tokens, pauses } = normalise(text, context.locale);
      known.set(text, (chunks = constituentsOf(tokens, rules, language, pauses)));
    }
    return chunks;
  };
};

/** The best cover of all sentences up to one, by where its last move begins. */
interface Run {
  readonly from: number;
  readonly worth: number;
}

const moodIn = (text: string, context: HearingContext): MoodShares | null =>
  moodOf(normalise(text, context.locale).tokens, lexiconFor(context.locale).language, context);

/** Something is waited for or going on, which may be left. */
const isBusy = ({ expecting, steps, checking, standing }: HearingContext): boolean =>
  (expecting !== 'anything' && expecting !== 'detail') ||
  Boolean(steps) ||
  Boolean(checking) ||
  Boolean(standing);

/** Heard as the turn begins, or after something else was said; the same words but once. */
const hearingOnce = (
  understander: Understander,
  names: HouseholdNames,
  context: HearingContext,
): ((said: readonly Hypothesis[], begins: boolean) => Understanding) => {
  const after: HearingContext = {
    ...context,
    expecting: context.steps ? context.expecting : 'anything',
    goesOn: true,
  };
  const known = new Map<string, Understanding>();
  return (said, begins) => {
    const key = JSON.stringify([begins, said]);
    let understanding = known.get(key);
    if (!understanding)
      known.set(key, (understanding = understander.understand(said, names, begins ? context : after)));
    return understanding;
  };
};

/** "The lamb stew, made it today, it's on the top shelf", to where it goes: told whole, with no word left over. */
const tellsAnswer = ({ verdict, readings: [best] }: Understanding, { expecting }: HearingContext): boolean =>
  verdict === 'act' &&
  (expecting === 'place' || expecting === 'date') &&
  best !== undefined &&
  best.acts.every(({ intent, slots }) => intent === 'tell' && !slots.unused?.length);

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
  const waits =
    takesValue.has(context.expecting) && !isAnswer(inAll) && !inAll.settles && !tellsAnswer(inAll, context);
  const sure = isSureOfWhole(inAll) && read?.acts.length === 1 && !read.byPhrase;
  if (sure && !waits) return whole;
  const { language } = lexiconFor(context.locale);
  const constituents = constituentsOnce(names, context);
  /** What it leaves of this kitchen without a place; of steps, what was done besides is a report. */
  const missing = (understanding: Understanding, text: string): number =>
    isReport(understanding) || tellsAll(understanding)
      ? 0
      : passedOver(understanding, constituents(text), normalise(text, context.locale).tokens, context.clocks);
  const unheld = missing(inAll, first.text);
  if (read?.agenda && !steps && unheld === 0) return whole;
  const sentences = hypotheses.map(({ text }) => withLead(sentencesOf(text), context.locale));
  if (sentences[0]!.length > mostSentences) return whole;
  const hear = hearingOnce(understander, names, context);
  const mood = moodIn(sentences[0]!.join(' '), context);
  const within =
    waits || ((!holdsAll(inAll, mood) || unheld > 0) && (mood?.['not-ours'] ?? 0) < mostlyOthers);
  const isWhole = (text: string, understanding: Understanding): boolean =>
    worthOf(understanding) !== null && missing(understanding, text) === 0;
  /** Of several sentences, one that makes sense by itself is not cut. */
  const isHeld = (text: string, nth: number): boolean =>
    !within || (sentences[0]!.length > 1 && isWhole(text, hear([{ text }], nth === 0)));
  const pieces = sentences.map((all) => piecesOf(all, isHeld, names, context));
  const [own] = pieces;
  const count = own!.length;
  if (count < 2) return whole;
  const heard = (from: number, to: number): Understanding =>
    hear(saidIn(pieces, hypotheses, from, to), from === 0);
  const tokensOf = (from: number, to: number): readonly string[] =>
    normalise(textIn(own!, from, to), context.locale).tokens;
  const isCutAt = (at: number): boolean => own![at - 1]?.unmarked === true;
  /** Its beginning or its end is nobody's mark. */
  const isGuessed = (from: number, to: number): boolean => isCutAt(from) || isCutAt(to);
  /** Within a sentence, or of whole ones. */
  const joins = (from: number, to: number): boolean =>
    own!.slice(from, to - 1).every(({ unmarked }) => unmarked) || !isGuessed(from, to);
  const longest = own!.some(({ unmarked }) => unmarked) ? longestUnmarked : longestMove;
  const parts = own!.map(({ words }) => constituents(words));
  const matters = parts.map(mattersIn);
  const lost = parts.map((chunks, at) =>
    isGuessed(at, at + 1)
      ? lostWith(chunks, tokensOf(at, at + 1), matters[at]! > 0, language)
      : worth.lost * matters[at]!,
  );
  const alone: number[] = [];
  const back: boolean[] = [];
  const elsewhere: boolean[] = [];
  /** What is said to nobody here, alone. */
  const aside: boolean[] = [];
  /** "Undo that.", "Add chickpeas to the list.": a sentence that is surely a request of its own, and nothing told. */
  const requests: boolean[] = [];
  /** "Have I got anything for tonight?": a sentence that asks, and tells nothing. */
  const questions: boolean[] = [];
  /** "She is allergic to peanuts": of somebody who was named before it. */
  const ofSomebody: boolean[] = [];
  const asks = (at: number): boolean => {
    const tokens = tokensOf(at, at + 1);
    return tokens.length >= shortestQuestion && (moodOf(tokens, language)?.asked ?? 0) >= surelyOrdered;
  };
  const heldFrom = (from: number, to: number): number | null => {
    const understanding = from === 0 && to === count ? inAll : heard(from, to);
    const guessed = isGuessed(from, to);
    const worthAlone =
      guessed && !isSureMove(understanding, tokensOf(from, to), language) ? null : worthOf(understanding);
    const held =
      worthAlone === null
        ? null
        : worthAlone + worth.untaken * missing(understanding, textIn(own!, from, to));
    if (to - from === 1) {
      aside[from] = held === null && guessed && lost[from] === 0;
      back[from] = pointsBack(understanding);
      requests[from] = !guessed && isRequest(understanding);
      questions[from] = !guessed && asks(from);
      ofSomebody[from] = isOfSomebody(understanding);
      elsewhere[from] = held !== null && !isOfSteps(understanding);
      return (alone[from] = held ?? lost[from]!);
    }
    if (held === null || marksWhatIsGone(understanding.readings[0]?.acts ?? [])) return null;
    // What does something answers no question that was asked beside it.
    if (onlyChanges(understanding) && questions.slice(from, to).some(Boolean)) return null;
    if (onlyTells(understanding)) return requests.slice(from, to).some(Boolean) ? null : held + worth.goesOn;
    // "Done. Next." moves the steps on once.
    if (
      understanding.readings[0]?.agenda &&
      held === worthAlone &&
      elsewhere.slice(from, to).every((other) => !other)
    ) {
      const each = alone.slice(from, to).reduce((sum, one) => sum + one, 0);
      return Math.max(held, each) + worth.goesOn;
    }
    // "My friend Ana is coming. She is allergic to peanuts": whose it is stands before it, and is never lost.
    if (
      ofSomebody[to - 1] &&
      !ofSomebody[from] &&
      tellsOfPeople(understanding) &&
      !isOfSomebody(understanding)
    )
      return held + worth.goesOn;
    const marked =
      understanding.readings[0]?.byPhrase === true ||
      own!.slice(from, to - 1).some(({ unmarked }) => !unmarked);
    return held + (!marked || (back[to - 1] && !back[from]) ? 0 : worth.joined);
  };
  /** With what it costs to begin where nobody marked it: nothing for what is passed over. */
  const worthFrom = (from: number, to: number): number | null => {
    const single = to - from === 1;
    if (from === 0 && answers !== undefined && to === answers + 1) return worth.answer;
    const held = single ? alone[from]! : heldFrom(from, to);
    if (held === null) return null;
    return held + (isCutAt(from) && !(single && aside[from]) ? worth.cut : 0);
  };
  for (let at = 0; at < count; at += 1) heldFrom(at, at + 1);
  /** So many pieces answer what was asked: "the jollof, and what about the freezer". */
  const answers = waits
    ? [...own!.keys()].findLast((at) => at + 1 < count && isAnswer(heard(0, at + 1)))
    : undefined;
  const best: Run[] = [{ from: 0, worth: 0 }];
  for (let to = 1; to <= count; to += 1) {
    let run: Run | null = null;
    for (let from = to - 1; from >= Math.max(0, to - longest); from -= 1) {
      const here = joins(from, to) ? worthFrom(from, to) : null;
      if (here === null) continue;
      const sum = best[from]!.worth + here;
      if (!run || sum >= run.worth) run = { from, worth: sum };
    }
    best.push(run!);
  }
  // Of a sentence that nobody marked, what is made of its bits must be more than a guess.
  if (sentences[0]!.length === 1 && best[count]!.worth < worth.enough) return whole;
  // "Put them on the list": what is ordered is not passed over, whatever it names.
  const orders = (tokens: readonly string[]): boolean =>
    tokens.length > 2 && (moodOf(tokens, language)?.ordered ?? 0) >= surelyOrdered;
  const moves: Move[] = [];
  for (let to = count; to > 0; to = best[to]!.from) {
    const { from } = best[to]!;
    // A stretch that says nothing of this kitchen, where nobody marked it, is no move of its own.
    if (to - from === 1 && aside[from] && !(from === 0 && answers === 0)) continue;
    // "Huh. The ham is out", "hey, which one's that": a call beside what is said asks for nothing.
    const others = moves.length > 0 || from > 0;
    if (others && tokensOf(from, to).length <= longestCall && isCall(heard(from, to))) continue;
    const followed = moves.length > 0 && !isBusy(context);
    if (followed && onlyLeavesOff(tokensOf(from, to), language)) continue;
    moves.unshift({
      said: saidIn(pieces, hypotheses, from, to),
      matters: matters.slice(from, to).some((some) => some > 0) || orders(tokensOf(from, to)),
    });
  }
  return moves;
};
