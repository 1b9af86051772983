import type { Instant, PlainDate } from '../../../terms/dates.js';
import type { SaidDate } from '../../intents.js';
import type { Lexicon } from '../../words/lexicon.js';

/**
 * Which way an unfinished date leans: "Friday" is the one just gone for what was made, the one
 * to come for what is wanted. `near` takes the nearest; `printed` is what stands on a label,
 * past or to come; `window` is a span to ask about.
 */
export type Lean = 'near' | 'past' | 'future' | 'printed' | 'window';

export interface DateContext {
  readonly now: Instant;
  readonly timeZone: string;
  /** The household's day at `now`. */
  readonly today: PlainDate;
  /** True where 3/4 is the third of April. */
  readonly dayFirst: boolean;
  readonly lexicon: Lexicon;
}

export interface DateReading {
  readonly said: SaidDate;
  readonly length: number;
  /** Below 1 for words that are a date only in the right company ("the second"). */
  readonly weight?: number;
}

/** One way of saying a date, read at one place of a sentence. */
export type DateParser = (
  tokens: readonly string[],
  from: number,
  lean: Lean,
  context: DateContext,
) => readonly DateReading[];
