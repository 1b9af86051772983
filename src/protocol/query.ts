/**
 * What is asked, as a value: a set of things, narrowed by facts; what is wanted of them; and in which
 * order. A follow-up is an `Edit`: a change to the question before it. Pure data, of any language.
 */
import type { PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';
import type { Candidate, Mention, PersonMention, PlaceMention } from './mentions.js';

/** Somebody: by name, or the one who speaks. */
export type Who =
  | { readonly who: 'me' }
  | { readonly who: 'named'; readonly person: PersonMention }
  /** "She", "him": who was spoken of last. */
  | { readonly who: 'same' }
  /** "Zoe and Amara", "her and Sam"; nobody named is "they both": the two who were spoken of last. */
  | { readonly who: 'several'; readonly each: readonly Who[] }
  /** "Who may have it", "the kids", "all four of us": whoever eats here, and nobody by name. */
  | { readonly who: 'everybody' }
  /** "Someone who can't have celery": nobody by name, and what they must not have. */
  | { readonly who: 'unnamed'; readonly allergens: readonly string[] };

export type DateOf = 'made' | 'bought' | 'opened' | 'frozen' | 'thawed' | 'bestBefore' | 'useBy';

/** Days, both ends included; null is open. */
export interface Days {
  readonly from: PlainDate | null;
  readonly until: PlainDate | null;
}

/** One fact that narrows a set. At most one of a kind counts in a question, unless said of `not`. */
export type Filter =
  | { readonly by: 'named'; readonly mention: Mention }
  /** Several things: each of them. */
  | { readonly by: 'each'; readonly mentions: readonly Mention[] }
  | { readonly by: 'place'; readonly places: readonly PlaceMention[] }
  | { readonly by: 'spot'; readonly spot: string }
  /** As felt: the container, what stands on it, or both. */
  | { readonly by: 'felt'; readonly touch: Touch; readonly candidates: readonly Candidate[] }
  | { readonly by: 'maker'; readonly who: Who }
  | { readonly by: 'owner'; readonly who: Who }
  | { readonly by: 'contains'; readonly allergens: readonly string[] }
  | { readonly by: 'free'; readonly allergens: readonly string[] }
  /** What somebody may eat, or must not. */
  | { readonly by: 'suits'; readonly who: Who; readonly is: boolean }
  | { readonly by: 'diet'; readonly diet: string }
  | { readonly by: 'date'; readonly of: DateOf | null; readonly days: Days }
  | {
      readonly by: 'state';
      /** `fresh` is what is neither frozen nor cooked. */
      readonly state: 'frozen' | 'chilled' | 'room' | 'opened' | 'unopened' | 'cooked' | 'raw' | 'fresh';
    }
  /** `past` guidance or its date, `expired` by its printed date, `due` by a day (soon, when left out). */
  | { readonly by: 'keeping'; readonly is: 'past' | 'expired' | 'within' | 'due'; readonly day?: PlainDate }
  | { readonly by: 'low' }
  /** Of the list to buy, and not of what is here. */
  | { readonly by: 'listed' }
  /** What somebody warned of, in any of these words. */
  /** With no words: any caution at all. */
  | { readonly by: 'caution'; readonly words: readonly string[] }
  | { readonly by: 'marked'; readonly is: boolean }
  /** Any day is on record of it. */
  | { readonly by: 'dated'; readonly is: boolean }
  /** When it came to where it is: "what I put in today". */
  | { readonly by: 'put'; readonly days: Days }
  /** What was just told of. */
  | { readonly by: 'told' }
  /** By what the household lets a mark mean: whichever of its meanings is among these words, or in them and a name. */
  | { readonly by: 'means'; readonly words: string; readonly who?: Who }
  | { readonly by: 'not'; readonly filter: Filter };

/** What is wanted of each thing of the set. `what` is which things they are. */
export type Attribute =
  | 'what'
  | 'which'
  | 'where'
  | 'spot'
  | 'how-many'
  /** How many they are together, of several kinds. */
  | 'sum'
  /** The day that what was just told began: opened, made, bought. */
  | 'since'
  | 'how-old'
  | 'until'
  | 'good'
  | 'keeps'
  | 'contents'
  | 'maker'
  | 'owner'
  | 'feel'
  | 'all'
  | 'everything'
  | 'dates'
  | `date:${DateOf}`
  | 'who-used'
  | 'used-up'
  | 'use-first'
  | 'people'
  /** What is eaten with it. */
  | 'goes-with'
  | 'why';

export type Order = 'oldest' | 'newest' | 'longest-open' | 'first-to-use' | 'most' | 'least';

export interface Query {
  readonly where: readonly Filter[];
  /** In the order asked; empty where only the set was named. */
  readonly ask: readonly Attribute[];
  /** Put as yes or no: "is there any …", "Sam made that, did he not?" */
  readonly whether: boolean;
  readonly order: Order | null;
  /** A day the answer is reckoned to: "will it keep till Sunday". */
  readonly by: PlainDate | null;
}

/** Which of what was told before. */
export type Point =
  | 'told'
  | 'it'
  | 'other'
  | 'rest'
  | 'both'
  /** Counted from one; -1 is the last. */
  | { readonly nth: number };

/** A follow-up: what differs from the question before. */
export interface Edit {
  readonly query: Query;
  /** Of which things it is asked; null where the set itself is changed ("and in the garage"). */
  readonly point: Point | null;
  /** "Just the frozen ones": part of what was told, whatever was asked before. */
  readonly only: boolean;
  /** "What about …", "and …": of something else. */
  readonly again: boolean;
}
