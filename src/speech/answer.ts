/**
 * The meaning of an answer, before it is words. Dialogue builds these; speech says them
 * from the phrase files in `grammars/<locale>/phrases`, at the listener's length.
 */
import type { Amount, Share } from '../terms/amount.js';
import type { Instant, PlainDate } from '../terms/dates.js';
import type { Quote } from '../terms/quote.js';

/** A value a phrase can hold. Speech turns each into spoken words. */
export type Value =
  | string
  | number
  /** What was heard, said back. */
  | Quote
  /** "two tubs", "half a jar", "about a pound". */
  | { readonly kind: 'amount'; readonly amount: Amount | Share }
  /** "yesterday", "last Friday", "the twelfth of May" — nearest natural form from the household's day. */
  | { readonly kind: 'date'; readonly day: PlainDate; readonly monthOnly?: boolean }
  /** "three days", "about two months". */
  | { readonly kind: 'days'; readonly days: number }
  /** "six in the evening", "ten past six". */
  | { readonly kind: 'time'; readonly at: Instant }
  /** "ten minutes ago", "yesterday evening". */
  | { readonly kind: 'ago'; readonly at: Instant }
  /** "three and a half minutes". */
  | { readonly kind: 'duration'; readonly seconds: number }
  | { readonly kind: 'temperature'; readonly degrees: number; readonly scale: 'fahrenheit' | 'celsius' }
  /** "three to four days", "a year": a published span; low and high the same for one figure. */
  | {
      readonly kind: 'span';
      readonly low: number;
      readonly high: number;
      readonly unit: 'hours' | 'days' | 'weeks' | 'months' | 'years';
    }
  /** "second", "last". */
  | { readonly kind: 'ordinal'; readonly n: number }
  /** Letters, one by one. */
  | { readonly kind: 'letters'; readonly text: string }
  /** "rice, beans and peas"; `or` for choices. */
  | { readonly kind: 'list'; readonly of: readonly Value[]; readonly or?: boolean }
  /** A phrase within a phrase: how an item is told apart, where it is. */
  | Say;

/** One phrase by its name in the phrase files, with what goes into it. */
export interface Say {
  readonly kind: 'say';
  readonly phrase: string;
  readonly args?: Readonly<Record<string, Value>>;
  /** What it says, where that is no more than one of these; speech does not look at it. */
  readonly tells?: Tells;
}

/**
 * `assent`: only that something was heard, nothing beside another answer. `record`: what is on record now, whether or
 * not that is new. `not-found`: that nothing here is what was named.
 */
export type Tells = 'assent' | 'record' | 'not-found';

export type Length = 'short' | 'usual' | 'full';

/** How this listener likes to be spoken to. */
export interface Listener {
  readonly length: Length;
  /** 1 is the voice's own rate; 0.5 to 3. */
  readonly rate: number;
  readonly volume: 'silent' | 'x-soft' | 'soft' | 'medium' | 'loud' | 'x-loud';
  readonly whisper: boolean;
  readonly earcons: boolean;
  /** Said by the listener: then it outranks what the client offers to play. */
  readonly earconsChosen?: boolean;
}

export interface Answer {
  /** For this answer only, in place of the listener's own ("tell me more", "shorter"). */
  readonly length?: Length;
  /** Sentences or short groups, in the order spoken. The first answers what was asked. */
  readonly parts: readonly Say[];
  /** Asked at the end; kept apart so that it can be asked again. */
  readonly question?: Say;
  /** What else there is, said for "more". */
  readonly more?: readonly Say[];
  /** Said softly whatever the listener chose: something due in quiet hours. */
  readonly whisper?: boolean;
  /** A short sound before it, for listeners who like that; what it announces. */
  readonly earcon?: 'done' | 'question' | 'alert' | 'step' | 'problem';
  /** Buttons for a screen, and the choices a question offers, in spoken order. */
  readonly choices?: readonly { readonly label: string | Say; readonly say: string }[];
}

export interface Spoken {
  /** W3C SSML 1.1, a whole `<speak>` document with a `<mark name="s1"/>` before each sentence. */
  readonly ssml: string;
  readonly text: string;
  /** As marked, so that "go on" can resume at one. */
  readonly sentences: readonly string[];
}
