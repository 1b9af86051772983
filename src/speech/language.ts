/**
 * What a spoken language does that phrase files cannot: numbers, nouns and amounts as words.
 * One folder a language (`english`, `spanish`) makes one of these; all else is in its phrases.
 */
import type { FluentFunction } from '@fluent/bundle';
import type { Amount, Share } from '../terms/amount.js';

/** Numbers as words, as dates and spans need them. */
export interface NumberWords {
  /** "twelve", "two and a half". */
  readonly number: (n: number) => string;
  /** The day in a date: "twelfth", "doce". */
  readonly dayOfMonth: (n: number) => string;
  readonly year: (n: number) => string;
  /** Minutes after the hour: "thirty", "oh five". */
  readonly minute: (n: number) => string;
}

/** A language as one household speaks it: its region decides details. */
export interface Language extends NumberWords {
  /** What `REGION()` gives in a phrase: "us" or "gb". */
  readonly region: 'us' | 'gb';
  /** "second"; -1 is "last". */
  readonly ordinal: (n: number) => string;
  /** "H, A, R". */
  readonly letters: (text: string) => string;
  /** "two tubs", "half". */
  readonly amount: (amount: Amount | Share) => string;
  /** "two tubs of stew". `name` may hold marks of the household's words. */
  readonly amountOf: (amount: Amount | Share, name: string) => string;
  /** True for "black beans", false for "stew". */
  readonly isPlural: (name: string) => boolean;
  /** "the stew". */
  readonly withThe: (name: string) => string;
  /** "a tub". */
  readonly withArticle: (name: string) => string;
  readonly plural: (noun: string) => string;
  /** Finds "and" or "or" inside a name. */
  readonly joint: RegExp;
  /** Last touches to a phrase put together, household words still marked: "de el" is "del". */
  readonly smooth: (text: string) => string;
}

/** A language with its phrases read. */
export interface SpokenLanguage {
  readonly as: (locale: string) => Language;
  /** Functions that only this language's phrases call, by name. */
  readonly functions: Readonly<Record<string, FluentFunction>>;
}

/** What a language reads from its phrase files. */
export interface PhraseWords {
  /** A message, or its attribute, without arguments; null when there is none. */
  readonly entry: (id: string, attribute?: string) => string | null;
  /** A message that is a list parted by commas. */
  readonly words: (id: string) => readonly string[];
}

export const isShare = (amount: Amount | Share): amount is Share => 'fraction' in amount;

/** What plural selection goes by: parts of one thing are one thing. */
export const amountCount = (amount: Amount | Share): number =>
  isShare(amount) ? 1 : amount.value > 0 && amount.value <= 1 ? 1 : amount.value;
