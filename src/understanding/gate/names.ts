/**
 * What a name nobody has on record is worth: whether it may become the name of a record. Chatter, commands and
 * left-over words are never one, whichever reader proposes it.
 */
import type { DynamicRules } from '../../grammar/api.js';
import type { Mention } from '../intents.js';
import { entriesOf } from '../word-lists.js';
import { lexiconFor } from '../words/index.js';
import { joiningWords } from '../names/stems.js';
import { movesLexicon } from '../moves/lexicon.js';

/**
 * hers: on record. food, goods: known to everybody. unknown: no word of everyday talk, so that it may well be food.
 * everyday: words of everyday talk that name nothing to eat. never: a word in it belongs to talk and to no name.
 */
export type Worth = 'hers' | 'food' | 'goods' | 'unknown' | 'everyday' | 'never';

/** A name this near to one on record is that. */
const surelyHers = 0.7;
const exactly = 0.95;

/** What a word does where it can be no part of a name: it denies, asks, points, supposes, or says who. */
const ofTalk: ReadonlySet<string> = new Set([
  ...['not', 'if', 'because', 'wh', 'aux', 'is-not', 'i', 'you', 'they', 'wished', 'pointer:it'],
  ...['pointer:this', 'pointer:that', 'pointer:them', 'pointer:both'],
]);

const lists = new Map<string, ReadonlySet<string>>();
const listedIn = (language: string, list: 'nameless' | 'food-modifiers'): ReadonlySet<string> => {
  const key = `${language} ${list}`;
  let words = lists.get(key);
  if (!words) lists.set(key, (words = new Set(entriesOf(language, list))));
  return words;
};

/** A word that no name holds, unless a food known to everybody has it. */
export const neverNames = (word: string, language: string): boolean => {
  if (listedIn(language, 'nameless').has(word)) return true;
  const { stops, inside } = joiningWords(lexiconFor(language));
  if (stops.has(word) && !inside.has(word)) return true;
  const does = movesLexicon(language)?.phrases.longestAt([word], 0)?.value;
  return does !== undefined && !inside.has(word) && [...does].some((name) => ofTalk.has(name));
};

/**
 * Of words that nobody understood, those worth saying back: food, goods, and what is no word of everyday talk. The
 * rest says nothing that she could put right.
 */
export const worthNaming = (
  words: readonly string[],
  rules: DynamicRules,
  language: string,
): readonly string[] => {
  const lexicon = movesLexicon(language);
  const everyday = (word: string): boolean => {
    const stem = word.replace(/(ing|ed|s)$/, '');
    return [word, stem, `${stem}e`].some((form) => lexicon?.isOrdinary(form)) || /^\d/.test(word);
  };
  const isPerson = (at: number): boolean =>
    (rules.get('kitchen:person')?.matchesAt(words, at) ?? []).some(({ value }) => fitOf(value) >= exactly);
  return words.filter((word, at) => {
    const { food, goods } = covered([word], rules);
    if (food || goods) return true;
    const used = lexicon?.phrases.longestAt([word], 0) !== null;
    return !used && !neverNames(word, language) && !everyday(word) && !isPerson(at);
  });
};

const fitOf = (value: unknown): number =>
  (value as { candidates?: readonly { fit: number }[] }).candidates?.[0]?.fit ?? 0;

/** Which of the words stand in names of hers, foods and goods. A word that only sounds like a food is none. */
const covered = (
  words: readonly string[],
  rules: DynamicRules,
): { readonly at: ReadonlySet<number>; readonly food: boolean; readonly goods: boolean } => {
  const at = new Set<number>();
  let food = false;
  let goods = false;
  words.forEach((_, from) => {
    const cover = (length: number): void => {
      for (let step = 0; step < length; step += 1) at.add(from + step);
    };
    for (const { length, value } of rules.get('kitchen:item')?.matchesAt(words, from) ?? [])
      if (fitOf(value) >= exactly) {
        cover(length);
        food = true;
      }
    for (const { length, weight = 1 } of rules.get('kitchen:food')?.matchesAt(words, from) ?? [])
      if (weight >= asWritten) {
        cover(length);
        food = true;
      }
    for (const { length } of rules.get('kitchen:goods')?.matchesAt(words, from) ?? []) {
      cover(length);
      goods = true;
    }
  });
  return { at, food, goods };
};
/** Below this a food was heard in a word that only sounds like it. */
const asWritten = 0.65;

export const worthOf = (mention: Mention, rules: DynamicRules, language: string): Worth => {
  const { words, candidates } = mention;
  if (words === null || (candidates[0]?.fit ?? 0) >= surelyHers) return 'hers';
  const { articles, inside } = joiningWords(lexiconFor(language));
  const all = words.toLowerCase().split(' ');
  const first = all.findIndex((word) => !articles.has(word));
  const said = first < 0 ? all : all.slice(first);
  const known = covered(said, rules);
  const others = said.filter((_, at) => !known.at.has(at));
  if (others.some((word) => (articles.has(word) && !inside.has(word)) || neverNames(word, language)))
    return 'never';
  if (known.food) return 'food';
  if (known.goods) return 'goods';
  const lexicon = movesLexicon(language);
  const head = lexicon?.forms.headFirst ? said[0]! : said.at(-1)!;
  // "Half full": how food is, and no food.
  const describes =
    listedIn(language, 'food-modifiers').has(head) ||
    lexicon?.phrases.longestAt([head], 0)?.value.has('nameless') === true;
  return describes || lexicon?.isOrdinary(head) ? 'everyday' : 'unknown';
};

/** Words of everyday talk alone, none of which is eaten: no table of food can answer for it. */
export const isNoFood = (mention: Mention, rules: DynamicRules, language: string): boolean => {
  const { words, candidates } = mention;
  if (!words || candidates.length > 0) return false;
  const { articles } = joiningWords(lexiconFor(language));
  const said = words.toLowerCase().split(' ');
  const { at, food } = covered(said, rules);
  const lexicon = movesLexicon(language);
  return (
    !food &&
    said.every(
      (word, index) =>
        at.has(index) ||
        articles.has(word) ||
        neverNames(word, language) ||
        lexicon?.isOrdinary(word) === true,
    )
  );
};
