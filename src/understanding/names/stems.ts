import { LRUCache } from 'lru-cache';
import { stemmer } from 'stemmer';
import { wordFormsOf } from '../languages/index.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';

const remembered = perLexicon(() => new LRUCache<string, string>({ max: 20_000 }));

/** Without the possessive ending: "amara's" and "amaras'" are "amara" and "amaras". */
export const withoutPossessive = (word: string): string => word.replace(/(?:'s|')$/, '');

/**
 * What is the same in a word's forms: "tomatoes" and "tomato", "baked" and "baking". The stemmer
 * is Porter's, for English; other languages say what theirs is.
 */
export const stemOf = (word: string, lexicon: Lexicon): string => {
  const memory = remembered(lexicon);
  const known = memory.get(word);
  if (known !== undefined) return known;
  const single = wordFormsOf(lexicon.language).stemOf(withoutPossessive(word));
  const stem = lexicon.language === 'en' ? stemmer(single) : single;
  memory.set(word, stem);
  return stem;
};

export const joiningWords = perLexicon(({ joining, numbers, places }) => ({
  /** Words that tell things apart by number or position: one is never a mishearing of another here. */
  counting: new Set([
    ...Object.keys(numbers.words),
    ...Object.keys(numbers.ordinals),
    ...Object.keys(places.positions),
  ]),
  inside: new Set(joining.inside),
  stops: new Set(joining.stops),
  articles: new Set(joining.articles),
}));

/** A name's words that carry it: lower case, without articles and joiners; all of them if nothing else is left. */
export const contentStems = (words: readonly string[], lexicon: Lexicon): string[] => {
  const { inside, articles } = joiningWords(lexicon);
  const content = words.filter((word) => !inside.has(word) && !articles.has(word));
  return (content.length > 0 ? content : words).map((word) => stemOf(word, lexicon));
};
