/**
 * What the word rooms of understanding (`words`, `numbers`, `dates`, `touch`, `names`) offer
 * to grammars and to the pipeline: the rules a grammar may refer to, the value each one
 * yields, and the index of a household's names.
 *
 * | grammar reference                        | value (`SemanticValue`)                               |
 * | ---------------------------------------- | ----------------------------------------------------- |
 * | `$<builtin:grammar/number>`              | number: 2, 2.5, 0.5, 1200                             |
 * | `$<builtin:grammar/whole>`               | number without a fraction: 2, 1200                    |
 * | `$<builtin:grammar/ordinal>`             | number: 1 … 99; `-1` is "last", `-2` "second to last" |
 * | `$<builtin:grammar/amount>`              | `Amount`: `{ value, unit, rough? }`                   |
 * | `$<builtin:grammar/share>`               | `Share`: `{ fraction, rough? }`                       |
 * | `$<builtin:grammar/duration>`            | number: seconds                                       |
 * | `$<builtin:grammar/time>`                | string: `HH:MM`, household wall time                  |
 * | `$<builtin:grammar/temperature>`         | `{ value, scale }`, scale fahrenheit, celsius or null |
 * | `$<builtin:grammar/watts>`               | number                                                |
 * | `$<builtin:grammar/digits>`              | string of digits                                      |
 * | `$<builtin:grammar/letters>`             | string: letters said one by one, joined               |
 * | `$<builtin:grammar/boolean>`             | true or false: "yes", "no"                            |
 * | `$<builtin:grammar/date>`                | `SaidDate`, the nearest day the words fit             |
 * | `$<builtin:grammar/date?lean=past>`      | `SaidDate`: made, bought, opened, frozen              |
 * | `$<builtin:grammar/date?lean=future>`    | `SaidDate`: best before, "I want it for Thursday"     |
 * | `$<builtin:grammar/date?lean=printed>`   | `SaidDate` as printed: "03/15", "may twenty twenty seven" |
 * | `$<builtin:grammar/date?lean=window>`    | `SaidDate`, usually with `until`: "this week"         |
 * | `$<kitchen:touch>`                       | `Touch`                                               |
 * | `$<kitchen:item>`                        | `NamedMatch`                                          |
 * | `$<kitchen:person>`                      | `NamedMatch`                                          |
 * | `$<kitchen:owner>`                       | `NamedMatch`: whose, said before the thing            |
 * | `$<kitchen:food>`                        | `NamedMatch` without candidates                       |
 * | `$<kitchen:marker>`                      | `MarkerMatch`                                         |
 * | `$<kitchen:place>`                       | `PlaceMatch`                                          |
 * | `$<kitchen:words>`                       | string: one to six words not known before             |
 * | `$<kitchen:message>`                     | string: all words to the end, whatever they are       |
 *
 * Articles: `kitchen:item`, `kitchen:person`, `kitchen:food` and `kitchen:words` start at the
 * first word of the name, so a grammar says `[the|a|my] $<kitchen:item>`. `kitchen:place`,
 * `kitchen:touch`, `kitchen:marker` and dates take a leading article along, and also match without.
 * Prepositions ("on", "in") stay in the grammar; dates also match with their "on" or "in".
 */
import type { DynamicRules } from '../../grammar/api.js';
import type { Touch } from '../../terms/touch.js';
import type { PlaceStep } from '../../protocol/mentions.js';
import type { Candidate } from '../intents.js';

/** Value of `kitchen:item`, `kitchen:person` and `kitchen:food`. */
export interface NamedMatch {
  /** As said. For an item without its maker: "amara's white beans" gives "white beans". */
  readonly words: string;
  /** Best first, at most eight. */
  readonly candidates: readonly Candidate[];
  /** "amara" of "amara's white beans"; null when no maker was said. */
  readonly maker: string | null;
  /** A person heard by sound alone: her name as the household has it. */
  readonly recorded?: string;
}

/** Value of `kitchen:marker`: a marker as felt. */
export interface MarkerMatch {
  readonly words: string;
  readonly touch: Touch;
  readonly candidates: readonly Candidate[];
}

/** Value of `kitchen:place`. */
export interface PlaceMatch {
  /** As said, without article: "second shelf of the fridge". */
  readonly words: string;
  /** Place ids, best first; empty when the words describe a place this household does not have. */
  readonly candidates: readonly Candidate[];
  /** "left side", "back": where within the place, when said with it. */
  readonly spot: string | null;
  /** Only where no record fits: what the words describe, the outermost first. */
  readonly path?: readonly PlaceStep[];
}

/** What the index reads of each record: kitchen records fit as they are. */
export interface NamedRecords {
  item: {
    readonly id: string;
    readonly name: string;
    readonly maker?: string | null;
    /** Set when the item is gone: it is still found, after those that are left. */
    readonly gone?: unknown;
  };
  person: { readonly id: string; readonly name: string };
  place: {
    readonly id: string;
    readonly parentId: string | null;
    readonly name: string;
    readonly kind: string;
    readonly position: number | null;
    readonly aliases: readonly string[];
  };
  marker: {
    readonly id: string;
    readonly touch: Touch;
    /** What is written on it: it goes by that, too. */
    readonly codes?: readonly string[];
  };
  /** A food word known to everybody (id: any key, e.g. the word). */
  food: { readonly id: string; readonly name: string };
}
export type NamedKind = keyof NamedRecords;

/** The names of one household, kept in step by `set` and `remove`; nothing is ever compiled again. */
export interface HouseholdNames {
  /** Adds or replaces. Cost grows with the name's length, not with the household. */
  set<K extends NamedKind>(kind: K, record: NamedRecords[K]): void;
  remove(kind: NamedKind, id: string): void;
  readonly size: number;
  /** `kitchen:*` rules over this index. The same map each time. */
  readonly rules: DynamicRules;
  /** The records whose names fit the whole of `words`, best first, at most `limit` (default 8). */
  find(kind: NamedKind, words: string, limit?: number): readonly Candidate[];
  /** Every item, place and person some word of whose name stands among these. */
  named(tokens: readonly string[]): readonly NamedAt[];
}

/** Where words of a record's names stand. */
export interface NamedAt {
  readonly kind: 'item' | 'place' | 'person';
  readonly id: string;
  /** Which of the words, from nought. */
  readonly at: readonly number[];
  /** One of its names stands there whole. */
  readonly whole: boolean;
}
