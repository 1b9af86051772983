/** The food a question is about: what is known as one, with the words around it that nothing else took. */
import { emptyMention, type Mention } from '../intents.js';
import { movesLexicon } from '../moves/lexicon.js';
import { entriesOf } from '../word-lists.js';
import { foodsIn, isWord, mentionOf, spotsOf, type Sentence } from './sentence.js';
import { matchesIn } from './spots.js';

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Classes whose words say when, where and what is asked, and belong to no name. */
const TAKING =
  `ask at thawedin icy doors full times boiling method label probe air hot inverted whatif risk relation
 morethan done homecanned sniff discards cookverb cooktime reads howlong`.split(/\s+/);

/** States that a name is made of: "raw chicken", "cooked ham", "live crab". "Opened" and "thawed" are told of it. */
export const OF_NAMES: ReadonlySet<string> = new Set(['raw', 'cooked', 'homemade', 'live']);

const wordsOf = (list: string): ((language: string) => ReadonlySet<string>) => {
  const known = new Map<string, ReadonlySet<string>>();
  return (language) => {
    let words = known.get(language);
    if (!words)
      known.set(language, (words = new Set(entriesOf(language, list).flatMap((one) => one.split(' ')))));
    return words;
  };
};
const fillersOf = wordsOf('guidance-filler');
/** A word that says how it is asked, and nothing of the food. */
export const isFiller = (word: string, language: string): boolean => fillersOf(language).has(word);
const modifiersOf = wordsOf('food-modifiers');
const foodWordsOf = wordsOf('foods');

/** Longest name, in words. */
const longest = 6;

/** Which words are taken by something other than a name. */
const takenIn = (sentence: Sentence, spans: readonly Span[]): readonly boolean[] => {
  const { tokens, language } = sentence;
  const filler = fillersOf(language);
  // "In the cold" is a place, "cold" of "cold cuts" none: what a quality took is of the name.
  const qualities = spotsOf(sentence, 'quality');
  const told = spotsOf(sentence, 'state').filter(({ value }) => !OF_NAMES.has(value));
  const taken = [...spans, ...told, ...TAKING.flatMap((kind) => spotsOf(sentence, kind))].filter(
    (one) => !qualities.some(({ from, to }) => from <= one.from && one.to <= to),
  );
  return tokens.map(
    (token, at) =>
      !qualities.some(({ from, to }) => from <= at && at < to) &&
      (filler.has(token) || taken.some(({ from, to }) => from <= at && at < to)),
  );
};

/**
 * A word that may be part of a food's name: one that goes before foods ("smoked", "sunday"), or one that nothing
 * else is known of. A verb, a person, a pronoun, any everyday word that names nothing to eat is none.
 */
const mayBeNamed = (sentence: Sentence, at: number): boolean => {
  const { tokens, language, rules } = sentence;
  const token = tokens[at] ?? '';
  if (
    modifiersOf(language).has(token) ||
    foodWordsOf(language).has(token) ||
    isWord(sentence, 'named', token) ||
    spotsOf(sentence, 'quality').some(({ from, to }) => from <= at && at < to)
  )
    return true;
  const lexicon = movesLexicon(language);
  if (!lexicon) return true;
  const does = lexicon.phrases.longestAt([token], 0)?.value;
  const acts = does && [...does].some((name) => !ofThings.test(name));
  const somebody = matchesIn(tokens, rules, 'kitchen:person').some(({ from, to }) => from <= at && at < to);
  return !lexicon.isOrdinary(token) && !acts && !somebody;
};
/** What a phrase of the moves lexicon may be and yet be said of food: an allergen, a diet, a state, a kind of dish. */
const ofThings = /^(state:|diet|a$|of$|without$|single$|position$|caution$)/;

/** "Cooked", "raw" say how a food is, and are no food alone. */
const isState = (sentence: Sentence, at: number): boolean =>
  spotsOf(sentence, 'state').some(({ from, to }) => from <= at && at < to);

/** "Pollo crudo": where a language says so after the name, it is part of it. */
const qualifies = (sentence: Sentence, at: number): boolean =>
  !isState(sentence, at) || isWord(sentence, 'qualityafter', sentence.tokens[at]);

/** "Garlic in oil", "cake with cream": one food, where what follows is of no other use. */
const joins = (sentence: Sentence, at: number): boolean => isWord(sentence, 'joins', sentence.tokens[at]);

/** @param spans Days, times, amounts and the like found in the sentence. */
export const foodOf = (
  sentence: Sentence,
  spans: readonly Span[],
): { readonly mention: Mention; readonly from: number; readonly to: number } | null => {
  const { tokens } = sentence;
  const taken = takenIn(sentence, spans);
  const untaken = (at: number): boolean => at >= 0 && at < tokens.length && taken[at] === false;
  const free = (at: number): boolean => untaken(at) && mayBeNamed(sentence, at);
  const asked = [...spotsOf(sentence, 'ask'), ...spotsOf(sentence, 'risk'), ...spans];
  // "Half a tin of tuna", "reheated lasagna": an amount or a state within a name takes nothing of it.
  const taking = (one: Span): boolean => asked.some(({ from, to }) => from < one.to && one.to <= to);
  const known = foodsIn(sentence)
    .filter((one) => !taking(one))
    .find(({ from, to }) => to - from > 1 || untaken(from) || !taken.slice(from, to).every(Boolean));
  let [from, to] = known ? [known.from, known.to] : [-1, -1];
  if (!known) {
    // What no list of foods knows: the first words that nothing took, where a place to keep it was said.
    // Of a power cut, what no list knows is as likely the appliance's name.
    const ofPower = spotsOf(sentence, 'ask').some(({ value }) => value === 'power');
    const placed =
      (!ofPower && spotsOf(sentence, 'at').some(({ value }) => value !== 'counter')) ||
      spotsOf(sentence, 'ask').some(({ value }) => value === 'freeze');
    if (!placed) return null;
    from = tokens.findIndex((_, at) => free(at) && !isState(sentence, at));
    if (from < 0) return null;
    to = from + 1;
  }
  while (to - from < longest && free(from - 1)) from -= 1;
  for (;;) {
    if (to - from < longest && free(to) && qualifies(sentence, to)) to += 1;
    else if (to - from < longest - 1 && joins(sentence, to) && free(to + 1) && !isState(sentence, to + 1))
      to += 2;
    else break;
  }
  // "Garlic I put in olive oil" is garlic in olive oil.
  const put = spotsOf(sentence, 'putsin').find((spot) => spot.from === to);
  let end = put && free(put.to) ? put.to : to;
  while (put && end >= put.to && end - put.to < longest && free(end)) end += 1;
  const within = put && end > put.to ? `in ${tokens.slice(put.to, end).join(' ')}` : '';
  if (!known) return { mention: { ...emptyMention, words: tokens.slice(from, to).join(' ') }, from, to };
  // The name itself as its rule heard it: "muscles" may be mussels.
  const mention = mentionOf(known);
  const around = [...tokens.slice(from, known.from), mention.words, ...tokens.slice(known.to, to)];
  const words = [...around, within].filter((word) => word).join(' ');
  // What it was put into makes another food of it, which no record is meant by.
  return within === ''
    ? { mention: { ...mention, words }, from, to }
    : { mention: { ...mention, words, candidates: [] }, from, to: end };
};
