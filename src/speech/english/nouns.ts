/** Nouns: number, articles, possessives. */
import indefinite from 'indefinite';
import pluralize from 'pluralize';
import { unmark } from '../marks.js';

/** The noun a name is about: "beans" in "black beans in tomato sauce", "stew" in "lentil stew (hot)". */
const headOf = (name: string): string => {
  const plain = unmark(name)
    .normalize('NFC')
    .toLowerCase()
    .replace(/\(.*$/, '')
    .split(/[,;:]| (?:in|with|from|of|for|on|and|without|at|by) /u)[0]
    ?.trim();
  return plain?.split(/\s+/).at(-1) ?? '';
};

/** Knows which nouns only look plural, from the phrase files. */
export interface Nouns {
  /** True for "black beans" and "rice and peas"; false for "hummus", "lentil stew". */
  readonly isPlural: (name: string) => boolean;
  readonly plural: (noun: string) => string;
  readonly singular: (noun: string) => string;
}

export const createNouns = (looksPlural: readonly string[], alwaysPlural: readonly string[]): Nouns => {
  const single = new Set(looksPlural);
  const many = new Set(alwaysPlural);
  const isPlural = (name: string): boolean => {
    const head = headOf(name);
    if (many.has(head)) return true;
    if (single.has(head)) return false;
    return pluralize.isPlural(head) && !pluralize.isSingular(head);
  };
  const changed = (noun: string, change: (word: string) => string): string => {
    const words = noun.split(' ');
    const last = words.pop() ?? '';
    return [...words, change(last)].join(' ');
  };
  return {
    isPlural,
    plural: (noun) =>
      single.has(headOf(noun)) || many.has(headOf(noun)) ? noun : changed(noun, (w) => pluralize.plural(w)),
    singular: (noun) =>
      single.has(headOf(noun)) || many.has(headOf(noun)) ? noun : changed(noun, (w) => pluralize.singular(w)),
  };
};

/** "an egg", "a unit", "an hour-old tub". */
export const withArticle = (text: string): string => {
  const plain = unmark(text)
    .normalize('NFD')
    .replace(/[^\p{L}\p{N}\s'-]/gu, '')
    .trim();
  if (plain === '') return text;
  return `${indefinite(plain, { articleOnly: true })} ${text}`;
};

const DETERMINED =
  /^(?:the|a|an|my|our|your|his|her|their|this|that|these|those|some|all|both|each|every)\s/i;

/** "the lentil stew", but "Dele's soup" and "my sauce" as they are. */
export const withThe = (text: string): string => {
  const plain = unmark(text);
  const owned = /^\p{Lu}[\p{L}-]*(?:['’]s|s['’])\s/u.test(plain);
  return DETERMINED.test(plain) || owned ? text : `the ${text}`;
};

/** "Dele's", "James's", "the beans'". */
export const possessive = (text: string, nouns: Nouns): string => {
  const plain = unmark(text);
  return /s$/i.test(plain) && nouns.isPlural(plain) && /^\p{Ll}/u.test(plain) ? `${text}'` : `${text}'s`;
};
