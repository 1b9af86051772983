/**
 * Two questions in one breath: "how much rice is left, and does it need eating tomorrow?" Cut where the second
 * begins; where both halves ask something by themselves, both are answered, in the order they were asked.
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
import { movesLexicon, type MovesLexicon } from './moves/lexicon.js';
import type { HouseholdNames } from './names/api.js';
import type { Understander } from './understand.js';
import { lexiconFor } from './words/index.js';

/** A half of fewer words asks nothing by itself. */
const shortest = 3;
/** What could hurt somebody is heard in the whole. */
const weighty: ReadonlySet<Intent> = new Set<Intent>(['urgent', 'danger', 'add-person']);
const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);
const ofTalk: ReadonlySet<Intent> = new Set<Intent>(CONTROL_INTENTS);

const classAt = (
  lexicon: MovesLexicon,
  tokens: readonly string[],
  at: number,
  ...names: string[]
): number => {
  const hit = lexicon.phrases.longestAt(tokens, at);
  return hit && names.some((name) => hit.value.has(name)) ? hit.length : 0;
};

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

/** The two halves as they were said; every place where it could be cut. */
const cutsOf = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  lexicon: MovesLexicon,
): readonly (readonly [string, string])[] => {
  const first = begins(lexicon, tokens, 0);
  if (!asksAt(lexicon, tokens, first)) return [];
  const cuts: (readonly [string, string])[] = [];
  for (let at = first + shortest; at <= tokens.length - shortest; at += 1) {
    if (!pauses.has(at) && classAt(lexicon, tokens, at, 'and') === 0) continue;
    const second = begins(lexicon, tokens, at);
    if (second > tokens.length - shortest || !asksAt(lexicon, tokens, second)) continue;
    cuts.push([tokens.slice(first, at).join(' '), tokens.slice(second).join(' ')]);
    at = second;
  }
  return cuts;
};

/** What half a sentence asks; null where it asks nothing, or would change something. */
const askedBy = ({ verdict, readings: [best], question }: Understanding): readonly Act[] | null => {
  const acts = best?.acts ?? [];
  if (verdict === 'act' && acts.length > 0 && acts.every(({ intent }) => asking.has(intent))) return acts;
  const outright = question && question.outright && question.left.length === 0 && !question.fragment;
  return outright && !acts.some(({ intent }) => ofTalk.has(intent)) ? question.acts : null;
};

/** An understander that hears two questions as two. */
export const withTwoQuestions = (inner: Understander, locale: string): Understander => {
  const lexicon = movesLexicon(lexiconFor(locale).language);
  const apart = (said: Hypothesis, names: HouseholdNames, context: HearingContext): readonly Act[] | null => {
    const [guess] = guessesFrom([said], context.locale);
    if (!guess || !lexicon) return null;
    const half = (text: string): readonly Act[] | null =>
      askedBy(inner.understand([{ text }], names, { ...context, expecting: 'anything' }));
    for (const [first, second] of cutsOf(guess.said, guess.pauses, lexicon)) {
      const one = half(first);
      const other = one && half(second);
      if (one && other) return [...one, ...other];
    }
    return null;
  };
  return {
    begins: (words, names, context) => inner.begins(words, names, context),
    understand(hypotheses, names, context) {
      const base = inner.understand(hypotheses, names, context);
      const [said] = hypotheses;
      const [best] = base.readings;
      if (!said || base.settles || best?.acts.some(({ intent }) => weighty.has(intent))) return base;
      const acts = apart(said, names, context);
      if (!acts || (best?.acts.length ?? 0) >= acts.length) return base;
      const reading = { acts, confidence: sureOfBoth, heard: said.text, normalised: said.text };
      return { readings: [reading, ...base.readings], margin: 1, verdict: 'act' };
    },
  };
};
const sureOfBoth = 0.85;
