/**
 * What is asked of how a dish is got ready while its steps are not followed: "how many can I do at a time", "when do
 * I take the foil off the pie". The same questions as in the middle of it, heard with the words of its steps.
 */
import { heatMethodIn } from '../../name-words.js';
import type { Guess } from '../../guesses.js';
import type { Act, DishSteps, HearingContext, Interpretation, Mention } from '../../intents.js';
import { emptyMention } from '../../intents.js';
import type { Reader } from '../../readings.js';
import { anywhereIn, bitsOf, classed, figureOf, is, wordsIn } from '../requests/bits.js';
import { requestWords } from '../requests/lexicon.js';
import { methodIn } from '../requests/reheating.js';
import { dishQuestion } from '../steps.js';
import { stepsLexicon } from './lexicon.js';

/** In place of its name, and of how it is heated, for the words that are left to ask. */
const it = 'it';
const the = 'the';

interface Named {
  readonly mention: Mention;
  readonly from: number;
  readonly to: number;
  readonly ways: readonly DishSteps[];
}

const namedIn = (
  tokens: readonly string[],
  reader: Reader,
  dishes: readonly DishSteps[],
  points: (word: string) => boolean,
): Named | null => {
  const hers = anywhereIn(tokens, reader.rules)('thing').filter(({ source }) => source === 'hers');
  const meant = hers.flatMap(({ mention, from, to }): Named[] => {
    const ways = dishes.filter(({ dish }) => mention.candidates.some(({ id }) => id === dish.id));
    // "Chicken" may be the raw one.
    const sure = mention.candidates.every(
      ({ id, fit }) => fit < fitsWell || dishes.some(({ dish }) => dish.id === id),
    );
    return ways.length > 0 && sure ? [{ mention, from, to, ways }] : [];
  });
  const [one, ...others] = meant;
  if (one) return others.length === 0 && hers.length === 1 ? one : null;
  const ways = dishes.filter(({ spokenOf }) => spokenOf);
  const [first] = ways;
  if (!first || hers.length > 0 || ways.some(({ dish }) => dish.id !== first.dish.id)) return null;
  const at = tokens.findIndex(points);
  const mention: Mention = {
    ...emptyMention,
    words: null,
    pointer: 'it',
    candidates: [{ id: first.dish.id, fit: 1 }],
  };
  return at < 0
    ? { mention, from: tokens.length, to: tokens.length, ways }
    : { mention, from: at, to: at + 1, ways };
};

const confidence = 0.9;
const fitsWell = 0.8;

export const dishReading = (
  guess: Guess | undefined,
  reader: Reader,
  { dishes, locale }: HearingContext,
): Interpretation | null => {
  const words = requestWords(reader.language);
  const lexicon = stepsLexicon(reader.language);
  if (!guess || !words || !lexicon || !dishes) return null;
  const { tokens } = guess;
  const told = dishes();
  if (told.length === 0) return null;
  const named = namedIn(tokens, reader, told, (word) => lexicon.at('pointing', [word], 0) > 0);
  if (!named) return null;
  const bits = bitsOf(tokens, reader.rules, words, []);
  // "Could you take me through heating the stew": bidden to begin, and no question of a step.
  if (classed(bits, 'through-lead').length > 0) return null;
  const said = methodIn(bits);
  const method = said.slots.method ? heatMethodIn(said.slots.method, locale) : null;
  const ways = method ? named.ways.filter((way) => way.method === method) : named.ways;
  const heats = classed(bits, 'heat-it', 'cook-it').length > 0 || method !== null;
  const power = bits.flatMap((bit, at) => {
    const value = figureOf(bit);
    return value !== null && is(bits[at + 1], 'watts') ? [value] : [];
  });
  // How many it is asked of, and of how many watts, are no words of a step.
  const figures = bits.filter((bit) => bit.kind === 'number' || bit.kind === 'amount' || is(bit, 'watts'));
  // Out of where it comes is no word of a step either.
  const away = wordsIn([...said.bits, ...figures, ...classed(bits, 'heat-from')]);
  const possessive = tokens[named.to - 1]?.endsWith("'s") === true;
  const rest = tokens.flatMap((word, at) =>
    at === named.from
      ? [possessive ? the : it]
      : (at > named.from && at < named.to) || away.has(at)
        ? []
        : [word],
  );
  const found = dishQuestion(rest, ways, reader, { heats, bare: named.from >= tokens.length, locale });
  if (!found) return null;
  const acts = found.acts.map((act): Act => ({
    ...act,
    slots: {
      ...act.slots,
      item: named.mention,
      ...((method ?? found.method) ? { method: method ?? found.method! } : {}),
      ...(act.intent === 'reheat' && power[0] !== undefined ? { number: power[0] } : {}),
    },
  }));
  return { acts, confidence, framed: true, heard: guess.heard, normalised: tokens.join(' ') };
};
