/**
 * Answers to the three questions of the first day, out of whatever is said around them: each finds its own
 * kinds of thing anywhere in the sentence and leaves the chatter. Nothing is a place for standing between
 * commas, and nobody is somebody for being a word nobody knows: the frame around a word says so.
 */
import type { Guess } from '../guesses.js';
import type { Expectation, Interpretation, Slots } from '../intents.js';
import type { Reader } from '../readings.js';
import { lexiconFor, type Lexicon } from '../words/lexicon.js';
import { eatersIn } from './first-day/eaters.js';
import { mannerIn } from './first-day/manner.js';
import { wholesIn, placesOf } from './first-day/wholes.js';
import { firstDayWords } from './first-day/words.js';
import { movesLexicon, type MovesLexicon } from './lexicon.js';

/** A food in the answer: something is told or asked, and no place is. "Bread bin" names none. */
const ofFood = (tokens: readonly string[], { rules }: Reader, lexicon: Lexicon): boolean =>
  tokens.some(
    (_, at) =>
      placesOf(lexicon).qualifiers.longestAt(tokens, at) === null &&
      placesOf(lexicon).kinds.longestAt(tokens, at) === null &&
      ['kitchen:food', 'kitchen:item'].some((rule) => rules.get(rule)?.matchesAt(tokens, at).length),
  );

/** "No, two freezers" puts right; "no freezer" says that there is none. */
const repairOf = (tokens: readonly string[], moves: MovesLexicon, lexicon: Lexicon): number => {
  const cue = moves.phrases.longestAt(tokens, 0);
  if (!cue?.value.has('repair')) return 0;
  const { kinds, qualifiers } = placesOf(lexicon);
  const denies = kinds.longestAt(tokens, cue.length) ?? qualifiers.longestAt(tokens, cue.length);
  return denies ? 0 : cue.length;
};

const slotsFor = (expecting: Expectation, { said }: Guess, reader: Reader): Slots | null => {
  const words = firstDayWords(reader.language);
  const moves = movesLexicon(reader.language);
  if (!words || !moves) return null;
  const lexicon = lexiconFor(reader.language);
  const repair = repairOf(said, moves, lexicon);
  const tokens = said.slice(repair);
  const told = repair > 0 ? { negated: true } : {};
  /** Who eats here, told at another question: only where somebody's place or food says that it is that. */
  const surely = (watching = false): Slots | null => {
    const eaters = eatersIn(tokens, words, moves, reader);
    const sure = eaters.some(
      ({ relation, allergens, nuts, diets }) =>
        (relation !== null && !watching) || allergens.length + diets.length > 0 || nuts,
    );
    return sure ? { ...told, eaters } : null;
  };
  switch (expecting) {
    case 'wholes': {
      if (ofFood(tokens, reader, lexicon)) return surely(true);
      const wholes = wholesIn(tokens, words, lexicon);
      return wholes.length > 0 ? { ...told, wholes } : surely();
    }
    case 'eaters': {
      const eaters = eatersIn(tokens, words, moves, reader);
      return eaters.length > 0 ? { ...told, eaters } : null;
    }
    case 'manner': {
      const manner = mannerIn(tokens, words);
      return surely() ?? (manner ? { ...told, manner } : null);
    }
    default:
      return null;
  }
};

/** A rule's reading of the talk itself stands: "next", "skip that", "wait". */
const surelyTalk = 0.7;
const talk: ReadonlySet<string> = new Set([
  'next',
  'back',
  'wait',
  'stop',
  'repeat',
  'start-over',
  'skip-to',
  'steps-left',
  'help',
  'cancel',
  'yes',
  'no',
  'maybe',
  'undo',
  'end-session',
  'goodbye',
  'what-heard',
  'household',
  'people',
  'places',
  'start-practice',
  'explain',
  'find',
  'contains',
]);

/** The answer to the question of the first day that is open, or null where it is none. */
export const firstDayReading = (
  guesses: readonly Guess[],
  parsed: Interpretation | undefined,
  reader: Reader,
): Interpretation | null => {
  const [guess] = guesses;
  if (!guess) return null;
  const act = parsed && parsed.confidence >= surelyTalk && parsed.acts.length === 1 ? parsed.acts[0]! : null;
  if (act && act.intent !== 'no' && talk.has(act.intent)) return null;
  const slots = slotsFor(reader.expecting, guess, reader);
  // "No, just as you are" says what is right; a plain no does not.
  if (!slots || (act && slots.negated !== true && act.intent === 'no')) return null;
  return {
    acts: [{ intent: 'answer', slots }],
    confidence: sureAnswer,
    agenda: true,
    heard: guess.heard,
    normalised: guess.tokens.join(' '),
  };
};
const sureAnswer = 0.9;
