/**
 * When to act, when to ask first, when to ask again. The one place for these numbers; they are
 * fitted on the development half of tests/data (see tests/accuracy), not guessed.
 */
import {
  CHANGING_INTENTS,
  DESTRUCTIVE_INTENTS,
  type Act,
  type Intent,
  type Understanding,
} from './intents.js';

export const thresholds = {
  /** Below this, a reading is not worth offering: what was said is not ours. */
  offer: 0.4,
  /** Below this, and not worth a yes-or-no either: say it again, please. */
  confirm: 0.45,
  /** Questions are answered from here on; a wrong answer costs a sentence. */
  act: 0.5,
  /** Changes are made from here on. They can be undone. */
  change: 0.7,
  /** Changes that lose something. */
  destroy: 0.85,
  /** Two meanings closer than this are told apart by a question before anything changes. */
  margin: 0.2,
} as const;

/** How sure a reading by cue words alone is: so many of them are right on the development data. */
export const confidenceOfCues = 0.9;

/**
 * For readings by what was learned from examples (`npm run learn -- check` shows what each share is
 * worth). They never carry out a change: `sureOfChange` stays below everything that would.
 */
export const learnedThresholds = {
  /** Of all the requests together, against what is not ours … */
  ours: 0.6,
  /** … and of the likeliest alone, where the grammar says nothing. */
  plain: 0.4,
  /** The same for a change: it costs a question. */
  change: 0.6,
  /** So many words that nothing is known of, besides the thing named, are too many. */
  strangers: 2,
  /** Where an answer is waited for. */
  awaited: 0.8,
  /** Where no thing was named that the request is about. */
  vague: 0.9,
  /** Against a doubtful reading of the grammar … */
  overrule: 0.9,
  /** The same where the rules took words for a thing that she has not. */
  doubtful: 0.7,
  /** … that hardly anything learned speaks for. */
  against: 0.05,
  /** A reading of the grammar with this score (natural logarithm) stands. */
  sureGrammar: -1,
  sureOfRest: 0.9,
  sureOfChange: 0.55,
} as const;

/** A rule's reading with this score (natural logarithm) leaves no word unused. */
export const surelyWhole = -1;

/**
 * How much of what was said may be not ours (`moodOf`) where nothing is waited for. Fitted on CLINC val, SLURP devel
 * and the blind sets, with moods that had seen none of them.
 */
export const notOursAtMost = {
  /** Before a question is answered or something is changed. */
  plain: 0.6,
  /** Talk about the talk costs a sentence. */
  talk: 0.7,
  /** A rule used every word. */
  whole: 0.97,
} as const;

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

const needed = (acts: readonly Act[]): number => {
  if (acts.some(({ intent }) => DESTRUCTIVE_INTENTS.has(intent))) return thresholds.destroy;
  if (acts.some(({ intent }) => changing.has(intent))) return thresholds.change;
  return thresholds.act;
};

/**
 * A change to a thing that was named, but fits no record well, is asked about first; one that loses
 * something, also when it fits no record at all.
 */
const surelyNamed = { change: 0.7, loss: 0.78 } as const;
const doubtfulName = ({ intent, slots }: Act): boolean =>
  // What is on the list need not be here.
  intent !== 'buy-add' &&
  intent !== 'buy-remove' &&
  [slots.item, ...(slots.items ?? [])].some((mention) => {
    if (!mention || mention.words === null) return false;
    const [best] = mention.candidates;
    const loses = DESTRUCTIVE_INTENTS.has(intent);
    if (!best) return intent === 'finish' || intent === 'merge';
    return best.fit < (loses ? surelyNamed.loss : surelyNamed.change);
  });

/** A loss of a thing that the words fit only half: however clear the sentence, it is asked about. */
export const losesDoubtful = (acts: readonly Act[]): boolean =>
  acts.some(
    (act) => DESTRUCTIVE_INTENTS.has(act.intent) && act.slots.item?.candidates[0] && doubtfulName(act),
  );

/** What to do with the best reading, given its confidence and how far behind the next meaning is. */
export const verdictOn = (
  best:
    | {
        readonly acts: readonly Act[];
        readonly confidence: number;
        readonly mended: boolean;
        readonly hedged?: boolean;
        /** The guesses do not agree on what would be lost. */
        readonly disputed?: boolean;
      }
    | undefined,
  margin: number,
): Understanding['verdict'] => {
  if (!best || best.confidence < thresholds.offer) return 'out-of-scope';
  const enough = needed(best.acts);
  const changes = enough > thresholds.act;
  const unsure = (best.hedged === true || best.disputed === true) && enough === thresholds.destroy;
  const asks = changes && (best.mended || unsure || best.acts.some(doubtfulName));
  if (!asks && best.confidence >= enough && (!changes || margin >= thresholds.margin)) return 'act';
  if (best.confidence >= thresholds.confirm) return 'confirm';
  return 'ask-again';
};
