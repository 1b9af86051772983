/**
 * Several moves in one breath: "how much rice is left, and does it need eating tomorrow?", "done, next, how long's
 * left on the timer". Cut where the next begins; where each half makes sense by itself and the whole held less,
 * both are taken, in the order they were said. What is told stays whole: a statement may hold many.
 */
import {
  ASKING_INTENTS,
  CONTROL_INTENTS,
  type Act,
  type HearingContext,
  type Hypothesis,
  type Intent,
  type Understanding,
} from './intents.js';
import { guessesFrom } from './guesses.js';
import { classAt, movesLexicon, type MovesLexicon } from './moves/lexicon.js';
import type { HouseholdNames } from './names/api.js';
import type { Understander } from './understand.js';
import { lexiconFor } from './words/index.js';

/** A half of fewer words asks nothing by itself. */
const shortest = 3;
/** What could hurt somebody is heard in the whole. */
const weighty: ReadonlySet<Intent> = new Set<Intent>(['urgent', 'danger', 'add-person']);
const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);
const ofTalk: ReadonlySet<Intent> = new Set<Intent>(CONTROL_INTENTS);
/** What moves the steps on: by itself a move, where they are followed. */
const ofSteps: ReadonlySet<Intent> = new Set<Intent>(['next', 'done', 'back', 'repeat', 'ask-step']);
/** Requests and questions that are made beside another, and are no talk of steps. */
const clocks: ReadonlySet<Intent> = new Set<Intent>([
  ...(['set-timer', 'cancel-timer', 'change-timer', 'set-reminder', 'cancel-reminder'] as const),
  ...(['buy-add', 'buy-remove', 'buy-read', 'timers', 'reminders'] as const),
]);

const asksAt = (lexicon: MovesLexicon, tokens: readonly string[], at: number): boolean =>
  classAt(lexicon, tokens, at, 'wh', 'aux', 'opens-question') > 0;

/** Past fillers and joints. */
const begins = (lexicon: MovesLexicon, tokens: readonly string[], from: number): number => {
  let at = from;
  for (
    let length = 0;
    !asksAt(lexicon, tokens, at) && (length = classAt(lexicon, tokens, at, 'fill', 'and', 'so', 'but')) > 0;
  )
    at += length;
  return at;
};

/** A few words with a pause after them: "done.", "next." */
const fewest = 1;

/**
 * The two halves as they were said; every place where it could be cut. `onlyAsked`: both halves open as a question.
 */
const cutsOf = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  lexicon: MovesLexicon,
  onlyAsked: boolean,
): readonly (readonly [string, string])[] => {
  const cuts: (readonly [string, string])[] = [];
  if (onlyAsked && !asksAt(lexicon, tokens, begins(lexicon, tokens, 0))) return cuts;
  for (let at = fewest; at < tokens.length; at += 1) {
    const paused = pauses.has(at);
    if (!paused && classAt(lexicon, tokens, at, 'and') === 0) continue;
    const second = begins(lexicon, tokens, at);
    const shortFirst = at < shortest && !paused;
    // Without a pause, only a question or a command begins another move.
    const opens =
      paused || asksAt(lexicon, tokens, second) || classAt(lexicon, tokens, second, 'command', 'you') > 0;
    if (shortFirst || !opens || second >= tokens.length) continue;
    if (onlyAsked && !asksAt(lexicon, tokens, second)) continue;
    cuts.push([tokens.slice(0, at).join(' '), tokens.slice(second).join(' ')]);
    at = Math.max(at, second - 1);
  }
  return cuts;
};

/** Read of one half, these say nothing of the other. */
const ofOneHalf = (intent: Intent): boolean => clocks.has(intent) || ofSteps.has(intent);

/** One question that asks several things of the same. */
const asksSeveral = ({ readings: [best] }: Understanding): boolean => {
  const { query, edit } = best?.acts[0]?.slots ?? {};
  return ((query ?? edit?.query)?.ask.length ?? 0) > 1;
};

/** What half a sentence asks or requests; null where it says nothing by itself. */
const movesIn = (
  { verdict, readings: [best], question }: Understanding,
  steps: boolean,
): readonly Act[] | null => {
  const acts = best?.acts ?? [];
  const plain = (intent: Intent): boolean =>
    asking.has(intent) || clocks.has(intent) || intent === 'tell' || (steps && ofSteps.has(intent));
  if (verdict === 'act' && acts.length > 0 && acts.every(({ intent }) => plain(intent))) return acts;
  const outright = question && question.outright && question.left.length === 0 && !question.fragment;
  return outright && !acts.some(({ intent }) => ofTalk.has(intent)) ? question.acts : null;
};

/** An understander that hears two moves as two. */
export const withSeveralMoves = (inner: Understander, locale: string): Understander => {
  const lexicon = movesLexicon(lexiconFor(locale).language);
  const apart = (
    said: Hypothesis,
    names: HouseholdNames,
    context: HearingContext,
    onlyAsked: boolean,
  ): readonly Act[] | null => {
    const [guess] = guessesFrom([said], context.locale);
    if (!guess || !lexicon || guess.said.length > mostWords) return null;
    const steps = Boolean(context.steps);
    const half = (text: string): readonly Act[] | null => {
      const heard = inner.understand([{ text }], names, {
        ...context,
        expecting: steps ? context.expecting : 'anything',
      });
      return movesIn(heard, steps);
    };
    for (const [first, second] of cutsOf(guess.said, guess.pauses, lexicon, onlyAsked)) {
      const one = half(first);
      const other = one && (half(second) ?? apart({ text: second }, names, context, onlyAsked));
      // Two things told are one telling.
      const tells = (acts: readonly Act[]): boolean => acts.every(({ intent }) => intent === 'tell');
      if (!one || !other || (tells(one) && tells(other))) continue;
      const both = [...one, ...other];
      // A report with its request is one move of the steps, which their own room hears.
      if (!steps || both.some(({ intent }) => clocks.has(intent))) return both;
    }
    return null;
  };
  return {
    begins: (words, names, context) => inner.begins(words, names, context),
    understand(hypotheses, names, context) {
      const base = inner.understand(hypotheses, names, context);
      const [said] = hypotheses;
      const [best] = base.readings;
      const told =
        best?.acts.some(
          ({ intent, slots }) => weighty.has(intent) || (intent === 'tell' && slots.unused === undefined),
        ) === true;
      if (!said || base.settles || told) return base;
      // What holds the whole, its facts and its question, is cut only between two questions.
      const holds = base.verdict === 'act' && best?.acts.some(({ intent }) => !ofOneHalf(intent)) === true;
      const acts = asksSeveral(base) ? null : apart(said, names, context, holds);
      if (!acts || (best?.acts.length ?? 0) >= acts.length) return base;
      const reading = { acts, confidence: sureOfBoth, heard: said.text, normalised: said.text };
      return { readings: [reading, ...base.readings], margin: 1, verdict: 'act' };
    },
  };
};
const sureOfBoth = 0.85;
/** More cuts are not tried. */
const mostWords = 60;
