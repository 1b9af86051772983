/** What a sentence says beside what it asks or tells: found by the words of one household and by lists of the language. */
import type { Quote } from '../terms/quote.js';

/** Something of this household, by a word of its name or more. */
export interface Named {
  readonly kind: 'item' | 'place' | 'person' | 'clock';
  readonly id: string;
  /** At which words it stands, counted from nought. */
  readonly at: readonly number[];
  /** One of its names was said whole. */
  readonly whole: boolean;
  /** Nothing else was said, but for small words. */
  readonly alone: boolean;
}

export interface Beside {
  /** All of it, to be said back. */
  readonly quote: Quote;
  /** What it names. A word may be part of several names. */
  readonly named: readonly Named[];
  /** Where a name or words of her own were asked for: all that was said, as it was said. */
  readonly free: string | null;
  /** Whose guidance it names. */
  readonly region: 'uk' | 'us' | null;
  /** What marks mean here, or the diets of their food: those it names. */
  readonly meanings: readonly string[];
}
