/** Which words of a sentence may name somebody: by how they are written, and by what stands around them. */
import type { Guess } from '../../guesses.js';
import type { Reader } from '../../readings.js';
import { lexiconFor } from '../../words/lexicon.js';
import type { MovesLexicon } from '../lexicon.js';
import { placesOf } from './wholes.js';
import type { FirstDayWords } from './words.js';

/** A sentence with "Tom's allergic" as three words, and how its names are written. */
export interface Spelled {
  readonly tokens: readonly string[];
  /** Before which of `tokens` a pause was written. */
  readonly pauses: ReadonlySet<number>;
  /** Names are written with a capital here, so that a word without one is none. */
  readonly cased: boolean;
  /** Lower case, of words written with a capital inside a sentence. */
  readonly capitals: ReadonlySet<string>;
  /** And of those that begin one: whether they would have a capital elsewhere is not to be seen. */
  readonly first: ReadonlySet<string>;
}

const possessed = "'s";

/** "Susan's boy Ben" is of Ben; "Susan's vegan" is of her. */
const ownsNext = (tokens: readonly string[], at: number, words: FirstDayWords): boolean => {
  let next = at + 1;
  while (words.sizes.has(tokens[next] ?? '')) next += 1;
  return words.relations.longestAt(tokens, next) !== null || words.groups.longestAt(tokens, next) !== null;
};

const capitalsIn = (heard: string, where: RegExp): ReadonlySet<string> =>
  new Set([...heard.matchAll(where)].map(([word]) => word.toLowerCase()));

export const spelled = ({ heard, said, pauses }: Guess, words: FirstDayWords): Spelled => {
  const tokens: string[] = [];
  const paused = new Set<number>();
  said.forEach((word, at) => {
    if (pauses.has(at)) paused.add(tokens.length);
    if (!word.endsWith(possessed)) tokens.push(word);
    else if (!ownsNext(said, at, words)) tokens.push(word.slice(0, -possessed.length), 'is');
  });
  const capitals = capitalsIn(heard, /(?<![.?!:]\s*|^\s*)(?<=\s)\p{Lu}[\p{L}-]+/gu);
  const first = capitalsIn(heard, /(?<=[.?!:]\s*|^\s*)\p{Lu}[\p{L}-]+/gu);
  return { tokens, pauses: paused, cased: capitals.size > 0, capitals, first };
};

/** "Two pints": a word that counts or measures. */
const isMeasure = (tokens: readonly string[], at: number, rules: Reader['rules']): boolean =>
  [at, at - 1].some((from) =>
    (from >= 0 ? (rules.get('builtin:grammar/amount')?.matchesAt(tokens, from) ?? []) : []).some(
      ({ length }) => from + length > at,
    ),
  );

/** The ends that make a plural or a verb of an everyday word. */
const endings = /(es|s)$/;

const isEveryday = (word: string, moves: MovesLexicon): boolean =>
  moves.isOrdinary(word) ||
  moves.isOrdinary(word.replace(/s$/, '')) ||
  moves.isOrdinary(word.replace(endings, ''));

/** `surely`: it stands where only a name can, after "my grandson" or before "can't have". */
export const mayBeName = (
  { tokens, cased, capitals, first }: Spelled,
  at: number,
  surely: boolean,
  words: FirstDayWords,
  moves: MovesLexicon,
  { rules, language }: Reader,
): boolean => {
  const word = tokens[at];
  if (word === undefined || word.length < 2 || /\d/.test(word) || words.chatter.has(word)) return false;
  for (const table of [words.relations, words.groups, words.watches, words.risks, words.extra])
    if (table.longestAt(tokens, at)) return false;
  if (words.me.longestAt(tokens, at) || words.manner.longestAt(tokens, at)) return false;
  if (words.notBefore.has(word) || isMeasure(tokens, at, rules)) return false;
  if (placesOf(lexiconFor(language)).kinds.longestAt(tokens, at)) return false;
  const fits = (rule: string): boolean => (rules.get(rule)?.matchesAt(tokens, at).length ?? 0) > 0;
  if (fits('builtin:grammar/number') || fits('builtin:grammar/date?lean=future')) return false;
  // Poppy and Rosemary are names where they are written as such.
  if (capitals.has(word)) return moves.allergenOf(word) === undefined;
  if (moves.allergenOf(word) !== undefined || moves.phrases.longestAt(tokens, at) || fits('kitchen:food'))
    return false;
  if (isEveryday(word, moves)) return false;
  return surely || !cased || first.has(word);
};
