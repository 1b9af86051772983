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
import { mannerBeside, mannerIn } from './first-day/manner.js';
import { spelled } from './first-day/people-words.js';
import { wholesIn, placesOf } from './first-day/wholes.js';
import { firstDayWords, type FirstDayWords } from './first-day/words.js';
import { markerMention } from '../meaning-parts.js';
import { requestWords } from './requests/lexicon.js';
import { settlingWords } from './settling.js';
import { movesLexicon, type MovesLexicon } from './lexicon.js';

/** A food in the answer: something is told or asked, and no place is. "Bread bin" names none. */
const ofFood = (
  tokens: readonly string[],
  { rules }: Reader,
  lexicon: Lexicon,
  { purposes }: FirstDayWords,
): boolean =>
  tokens.some(
    (_, at) =>
      placesOf(lexicon).qualifiers.longestAt(tokens, at) === null &&
      placesOf(lexicon).kinds.longestAt(tokens, at) === null &&
      !tokens.slice(Math.max(0, at - 2), at).some((word) => purposes.has(word)) &&
      ['kitchen:food', 'kitchen:item'].some((rule) => rules.get(rule)?.matchesAt(tokens, at).length),
  );

/** "Two pints", and no bare number: that is how old somebody is, or how many of them there are. */
const isMeasured = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'unit' in value &&
  value.unit !== null &&
  value.unit !== 'piece';

/** Food with its place or its measure: something is put away, and nobody's allergy told. */
const ofStore = (tokens: readonly string[], { rules }: Reader, lexicon: Lexicon): boolean =>
  tokens.some(
    (_, at) =>
      placesOf(lexicon).kinds.longestAt(tokens, at) !== null ||
      // "I've got rubber bands": what is marked with, and nobody called so.
      (rules.get('kitchen:marker')?.matchesAt(tokens, at) ?? []).some(
        ({ value }) => markerMention(value).touch?.fastening !== undefined,
      ) ||
      (rules.get('builtin:grammar/amount')?.matchesAt(tokens, at) ?? []).some(({ value }) =>
        isMeasured(value),
      ),
  );

/** "No, two freezers" puts right; "no freezer" says that there is none. */
const repairOf = (tokens: readonly string[], moves: MovesLexicon, lexicon: Lexicon): number => {
  const cue = moves.phrases.longestAt(tokens, 0);
  if (!cue?.value.has('repair')) return 0;
  const { kinds, qualifiers } = placesOf(lexicon);
  const denies = kinds.longestAt(tokens, cue.length) ?? qualifiers.longestAt(tokens, cue.length);
  return denies ? 0 : cue.length;
};

/** "That's it, that's the lot": every word says that nothing more is to come, or says nothing. */
const isAllTold = ({ said }: Guess, words: FirstDayWords): boolean => {
  let told = false;
  for (let at = 0; at < said.length;) {
    const hit = words.allTold.longestAt(said, at);
    if (!hit && !words.chatter.has(said[at]!)) return false;
    told ||= hit !== null;
    at += hit?.length ?? 1;
  }
  return told;
};

const ofTheFirstDay: ReadonlySet<Expectation> = new Set<Expectation>(['wholes', 'eaters', 'manner']);

const slotsFor = (expecting: Expectation, guess: Guess, reader: Reader): Slots | null => {
  const { said } = guess;
  const words = firstDayWords(reader.language);
  const moves = movesLexicon(reader.language);
  if (!words || !moves) return null;
  const lexicon = lexiconFor(reader.language);
  const repair = repairOf(said, moves, lexicon);
  const tokens = said.slice(repair);
  const told = repair > 0 ? { negated: true } : {};
  /** Who eats here, told at another question: only where somebody's place or food says that it is that. */
  const surely = (watching = false): Slots | null => {
    const eaters = eatersIn(guess, words, moves, reader, { open: false });
    const sure = eaters.some(
      ({ who, relation, allergens, nuts, diets }) =>
        who !== 'whose' && ((relation !== null && !watching) || allergens.length + diets.length > 0 || nuts),
    );
    return sure ? { ...told, eaters } : null;
  };
  /** What keeps food, told at this question or at the next one. */
  const ofWholes = (): Slots | null => {
    const wholes = ofFood(tokens, reader, lexicon, words) ? [] : wholesIn(tokens, words, lexicon);
    return wholes.length > 0 ? { ...told, wholes } : null;
  };
  /** How to talk, told at another question, alone or with the answer to that. */
  const withManner = (slots: Slots | null): Slots | null => {
    const manner = mannerBeside(tokens, words);
    return manner ? { ...told, ...slots, manner } : slots;
  };
  switch (expecting) {
    case 'wholes': {
      return withManner(ofWholes() ?? surely(ofFood(tokens, reader, lexicon, words)));
    }
    case 'eaters': {
      // "A dozen eggs in the fridge" tells of nobody, but for who must not have them.
      if (ofStore(said, reader, lexicon)) return surely(true) ?? ofWholes();
      const eaters = eatersIn(guess, words, moves, reader);
      return withManner(eaters.length > 0 ? { ...told, eaters } : null);
    }
    case 'manner': {
      const manner = mannerIn(tokens, words);
      return surely(manner !== null) ?? (manner ? { ...told, manner } : null);
    }
    default:
      return null;
  }
};

/** Who must not have what, told at any time and of any number of people. A question is none of this. */
const toldOfEaters = (guess: Guess, reader: Reader): Slots | null => {
  const words = firstDayWords(reader.language);
  const moves = movesLexicon(reader.language);
  if (!words || !moves || reader.expecting === 'allergen') return null;
  const opens = guess.said.find((word) => !words.openers.has(word));
  if (words.asks.has(opens ?? '') || guess.heard.trimEnd().endsWith('?')) return null;
  const all = eatersIn(guess, words, moves, reader, { open: false });
  const eaters = all.filter(
    ({ who, allergens, nuts, diets, risks, unclear, none }) =>
      none ||
      (who !== 'whose' && (allergens.length + diets.length + risks.length > 0 || nuts || unclear === true)),
  );
  const [first] = eaters.filter(({ none }) => !none);
  // How somebody eats alone is heard by rule; a word of diet is of food at least as often.
  const watched = eaters.some(({ allergens, nuts }) => allergens.length > 0 || nuts);
  if (!first || !watched) return null;
  // One person and the groups of the tables is what the guidance hears by itself.
  const plain =
    reader.expecting !== 'person' &&
    all.length === 1 &&
    first.who === 'named' &&
    first.diets.length + first.risks.length === 0 &&
    first.allergens.every((one) => moves.isAllergen(one));
  return plain || toldOfFood(guess, moves, reader) ? null : { eaters };
};

/**
 * "It have peanut inside, my sister is allergic": what is in the food is a fact of its own, which who must not have
 * it holds nothing of. Such a sentence is no one move, and is heard in its parts.
 */
const toldOfFood = ({ said }: Guess, { phrases }: MovesLexicon, { rules }: Reader): boolean => {
  const classes = (at: number): readonly string[] => [...(phrases.longestAt(said, at)?.value ?? [])];
  return said.some((_, at) => {
    const [food] = rules.get('kitchen:food')?.matchesAt(said, at) ?? [];
    if (!food) return false;
    const after = classes(at + food.length);
    const subject = classes(at - 2);
    const ofIt = classes(at - 1).includes('has') && subject.some((name) => pointsAtFood.has(name));
    return ofIt || after.includes('in-it') || after.includes('on-it');
  });
};
const pointsAtFood: ReadonlySet<string> = new Set(['pointer:it', 'pointer:that']);

/** "My name's Joanne", "it's me, Joanne", where somebody's name is asked: the name, without what it is said with. */
const nameAlone = (guess: Guess, reader: Reader): Slots | null => {
  const words = firstDayWords(reader.language);
  const moves = movesLexicon(reader.language);
  if (reader.expecting !== 'person' || !words || !moves) return null;
  const all = eatersIn(guess, words, moves, reader);
  const told = all.some(
    ({ allergens, nuts, diets, risks, none }) =>
      none || nuts || allergens.length + diets.length + risks.length > 0,
  );
  const [name, ...more] = all.flatMap((one) => one.name ?? []);
  // "Dad made a stew" names somebody and answers nothing.
  const { tokens } = spelled(guess, words);
  const only = tokens.every(
    (word) => words.chatter.has(word) || words.openers.has(word) || name?.toLowerCase().includes(word),
  );
  return name !== undefined && more.length === 0 && !told && only ? { words: name } : null;
};

const nutKinds: ReadonlySet<string> = new Set(['tree nuts', 'peanuts', 'nuts']);

/** "Both I should think, the doctor said all nuts", where it was asked which: in any words, of nobody and nothing else. */
const nutsAnswered = (guess: Guess, reader: Reader): Slots | null => {
  const words = firstDayWords(reader.language);
  const moves = movesLexicon(reader.language);
  const both = settlingWords(reader.language)?.bothKinds;
  if (reader.expecting !== 'allergen' || !words || !moves || !both || guess.heard.trimEnd().endsWith('?'))
    return null;
  const { said } = guess;
  const every = said.some((_, at) => both.longestAt(said, at) !== null);
  const others = said.some((word, at) => {
    const allergen = moves.allergenOf(word);
    return (
      (allergen !== undefined && !nutKinds.has(allergen) && word !== 'tree') ||
      words.relations.longestAt(said, at) !== null ||
      words.none.longestAt(said, at) !== null
    );
  });
  const names = eatersIn(guess, words, moves, reader, { open: false }).some(({ name }) => name !== null);
  return every && !others && !names ? { allergens: ['tree nuts', 'peanuts'] } : null;
};

/** "Mrs Patel", "Anne Marie". */
const longestName = 2;
const sureAnswer = 0.9;
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
  const words = firstDayWords(reader.language);
  if (words && ofTheFirstDay.has(reader.expecting) && isAllTold(guess, words))
    return {
      acts: [{ intent: 'done', slots: {} }],
      confidence: sureAnswer,
      heard: guess.heard,
      normalised: guess.tokens.join(' '),
    };
  const act = parsed && parsed.confidence >= surelyTalk && parsed.acts.length === 1 ? parsed.acts[0]! : null;
  if (act && act.intent !== 'no' && talk.has(act.intent)) return null;
  const request = requestWords(reader.language);
  const ofLessons = guess.said.some((_, at) =>
    request?.allAt(guess.said, at).some(({ value }) => value.has('lesson-word') || value.has('hint-word')),
  );
  if (ofLessons) return null;
  const own = nameAlone(guess, reader) ?? nutsAnswered(guess, reader);
  if (own)
    return {
      acts: [{ intent: 'answer', slots: own }],
      confidence: sureAnswer,
      heard: guess.heard,
      normalised: guess.tokens.join(' '),
    };
  // "Nice and loud" is nobody's name.
  const bare = reader.expecting === 'person' ? parsed?.acts[0]?.slots.words : undefined;
  if (bare !== undefined && bare.split(' ').length > longestName)
    return {
      acts: [{ intent: 'answer', slots: {} }],
      confidence: sureAnswer,
      heard: guess.heard,
      normalised: guess.tokens.join(' '),
    };
  const open = ofTheFirstDay.has(reader.expecting);
  const told = open ? null : toldOfEaters(guess, reader);
  if (told)
    return {
      acts: [{ intent: 'add-person', slots: told }],
      confidence: sureAnswer,
      heard: guess.heard,
      normalised: guess.tokens.join(' '),
    };
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
