/**
 * What one utterance is made of. Constituents are found at every position of the tidied words; the
 * readers of statements, questions and talk each propose meanings over them; one search takes the
 * proposal that explains most of what was said for the least cost (`search.ts`).
 */
import type { Amount, Share } from '../../terms/amount.js';
import type { Touch } from '../../terms/touch.js';
import type { Candidate, Mention, PlaceMention, SaidDate } from '../intents.js';

/** Words `from` up to, not including, `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** One constituent: a piece of meaning over a span, before anybody knows what role it plays. */
export type Chunk = Span &
  (
    | {
        readonly kind: 'thing';
        readonly mention: Mention;
        /** 0 to 1: how surely it names something of hers; 0 for a food not met before. */
        readonly fit: number;
        /** hers: a record; food: a food everybody knows; goods: household goods; open: told by its frame only. */
        readonly source: 'hers' | 'food' | 'goods' | 'open';
      }
    | { readonly kind: 'pointer'; readonly mention: Mention }
    | { readonly kind: 'place'; readonly place: PlaceMention; readonly fit: number }
    /** `touch`: how its container feels, where that was said with it: "one big glass jar". */
    /** `more`: beside what there is: "two more bottles". */
    | { readonly kind: 'amount'; readonly amount: Amount; readonly touch?: Touch; readonly more?: true }
    | { readonly kind: 'share'; readonly share: Share }
    | { readonly kind: 'number'; readonly value: number }
    /** `printed`: of a label, where a day just gone by is likelier than one most of a year off. */
    | {
        readonly kind: 'day';
        readonly past: SaidDate;
        readonly future: SaidDate;
        readonly printed: SaidDate;
        readonly window: SaidDate;
      }
    | { readonly kind: 'time'; readonly time: string }
    | { readonly kind: 'span'; readonly seconds: number }
    | { readonly kind: 'person'; readonly words: string; readonly candidates: readonly Candidate[] }
    | { readonly kind: 'marker'; readonly mention: Mention }
    | { readonly kind: 'container'; readonly touch: Touch }
    | { readonly kind: 'ordinal'; readonly ordinal: number }
    /** A word or phrase of the lexicon of moves (`grammars/<language>/moves.json`): "deed:stored", "and", "repair", … */
    | { readonly kind: 'word'; readonly classes: ReadonlySet<string> }
    /** A word nothing is known of. */
    | { readonly kind: 'unknown'; readonly word: string }
  );

export type ChunkOf<K extends Chunk['kind']> = Extract<Chunk, { readonly kind: K }>;

/** A constituent that may stand there, and what it costs. */
export interface Offer<T extends Span = Chunk> {
  readonly chunk: T;
  readonly cost: number;
}
