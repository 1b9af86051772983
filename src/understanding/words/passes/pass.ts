import type { Lexicon } from '../lexicon.js';
import type { Word } from '../tokens.js';

/** What a pass took away or changed, for "what did you hear" and for logs. */
export interface Note {
  readonly pass: string;
  /** The words before and after. */
  readonly from: string;
  readonly to: string;
}

/** One small step of tidying. Gives the same array back when there is nothing to do. */
export type Pass = (words: readonly Word[], lexicon: Lexicon, note: (note: Note) => void) => readonly Word[];

export const textOf = (words: readonly Word[]): string => words.map((word) => word.text).join(' ');
export const textsOf = (words: readonly Word[]): string[] => words.map((word) => word.text);
export const asWords = (text: string, pause: boolean): Word[] =>
  text === '' ? [] : text.split(' ').map((part, at) => ({ text: part, pause: pause && at === 0 }));
