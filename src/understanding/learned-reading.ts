/** What was learned from examples, where the grammar says nothing or is in doubt. */
import { CHANGING_INTENTS, type Intent, type Interpretation, type Understanding } from './intents.js';
import { guessed, type Guessed } from './learned/index.js';
import { classAt, movesLexicon } from './moves/lexicon.js';
import type { Reader } from './readings.js';
import { learnedThresholds, thresholds } from './thresholds.js';

/** One guess of a recogniser, tidied. */
export interface HeardWords {
  readonly heard: string;
  readonly tokens: readonly string[];
  /** Words taken away in tidying that say something where nothing else does. */
  readonly aside: readonly string[];
  /** Share of belief among the guesses, adding up to one. */
  readonly share: number;
}

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);
/** More guesses are not judged: they differ in a word. */
const mostJudged = 3;

interface Pooled {
  readonly guess: HeardWords;
  readonly made: Guessed;
  /** Of the request over all guesses judged. */
  readonly share: number;
  /** Of all requests together. */
  readonly ours: number;
}

/** Putting away takes any words for a thing: "sum up" is no food. */
const namesStranger = ({ acts }: Interpretation): boolean =>
  acts.some(
    ({ intent, slots: { item } }) =>
      intent === 'put-away' && typeof item?.words === 'string' && item.candidates.length === 0,
  );

/** Words. */
const longestSetup = 14;

const denies = (tokens: readonly string[], language: string): boolean => {
  const lexicon = movesLexicon(language);
  return lexicon !== null && tokens.some((_, at) => classAt(lexicon, tokens, at, 'not') > 0);
};

/** The request that the guesses together speak for, with the slots of the guess that says it best. */
const pooled = (guesses: readonly HeardWords[], { rules, language }: Reader): Pooled | null => {
  const judged = guesses.slice(0, mostJudged).flatMap((guess) => {
    const made = guessed(guess.tokens, guess.aside, rules, language);
    return made ? [{ guess, made }] : [];
  });
  const belief = judged.reduce((sum, { guess }) => sum + guess.share, 0);
  const shareOf = (label: Intent | 'none'): number =>
    judged.reduce((sum, { guess, made }) => sum + guess.share * made.shareOf(label), 0) / belief;
  const ours = 1 - shareOf('none');
  const all = judged.map(({ guess, made }) => ({ guess, made, ours, share: shareOf(made.act.intent) }));
  return all.reduce<Pooled | null>((best, one) => (best && best.share >= one.share ? best : one), null);
};

/**
 * A reading by what was learned, or null. `parsed` is what the grammar made of it and `score` how
 * likely: a sure reading of the grammar is never overruled. A change is only proposed.
 */
export const learnedReading = (
  guesses: readonly HeardWords[],
  parsed: Interpretation | undefined,
  score: number | undefined,
  reader: Reader,
): { readonly reading: Interpretation; readonly verdict: Understanding['verdict'] } | null => {
  const offered = parsed && parsed.confidence >= thresholds.offer ? parsed : null;
  if (offered && (offered.acts.length > 1 || score! >= learnedThresholds.sureGrammar)) return null;
  const found = pooled(guesses, reader);
  if (!found) return null;
  const { guess, made, share, ours } = found;
  const { intent } = made.act;
  const { plain, doubtful, change, awaited, vague, overrule, against } = learnedThresholds;
  const changes = changing.has(intent);
  // "I never touched it, it wasn't left out": what was learned hears what was done, and not that it was not.
  // "There'll be four of us, what ought to be eaten first": the set-up is asked for by few words.
  if (intent === 'start-setup' && guess.tokens.length > longestSetup) return null;
  const { duration, time, overnight } = made.act.slots;
  const lay = intent === 'left-out' && (duration ?? time ?? overnight) !== undefined;
  if ((changes || lay) && denies(guess.tokens, reader.language)) return null;
  const enough = Math.max(
    offered ? (namesStranger(offered) ? doubtful : overrule) : changes ? change : plain,
    reader.expecting === 'anything' ? 0 : awaited,
    made.whole ? 0 : vague,
  );
  if (share < enough || ours < learnedThresholds.ours) return null;
  if (made.strangers >= learnedThresholds.strangers) return null;
  if (offered) {
    const other = offered.acts[0]!.intent;
    // What the rules take for a change is asked about; it does not turn into something done at once.
    if (changing.has(other) && !namesStranger(offered)) return null;
    if (other === intent || made.shareOf(other) > against) return null;
  }
  const reading: Interpretation = {
    acts: [made.act],
    confidence: Math.min(share, changes ? learnedThresholds.sureOfChange : learnedThresholds.sureOfRest),
    heard: guess.heard,
    normalised: guess.tokens.join(' '),
  };
  // A yes that only what was learned speaks for settles no open question.
  if (intent === 'yes' && (reader.expecting === 'yes-no' || reader.expecting === 'outage-state'))
    return { reading, verdict: 'ask-again' };
  return { reading, verdict: changes ? 'confirm' : 'act' };
};
