/** How things, places, people and days are mentioned: what talk is made of, before it is known which are meant. */
import type { PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';

/** A household thing that words may stand for, best first. */
export interface Candidate {
  readonly id: string;
  /** 0 to 1: how well the words fit its name. 1 is word for word. */
  readonly fit: number;
}

export type Pointer =
  | 'it'
  | 'this'
  | 'that'
  | 'them'
  | 'other'
  | 'another'
  | 'same'
  | 'last-added'
  | 'all'
  | 'both'
  | 'none'
  | 'rest';

/** How a cook named a thing. At least one part is set. */
export interface Mention {
  /** As said, without article and fillers; null when only pointed at or described by touch. */
  readonly words: string | null;
  /** Records of this household that the words fit; empty for a food not met before. */
  readonly candidates: readonly Candidate[];
  readonly pointer: Pointer | null;
  readonly touch: Touch | null;
  /** "the second one" is 2, "the last one" is -1. */
  readonly ordinal: number | null;
  /** "amara's", "by Dele": as said, possessive removed. */
  readonly maker: string | null;
  /** "vegan", "hot". */
  readonly diet: string | null;
  /** "on the door": narrows which one. */
  readonly at: PlaceMention | null;
  /** "The", "my", "that" before it, rather than "a" or nothing. */
  readonly definite?: true;
  /** "The beef one": one of several, told by what it is. */
  readonly oneOf?: true;
}

export interface PlaceMention {
  readonly words: string | null;
  /** Place ids, best first. */
  readonly candidates: readonly Candidate[];
  readonly pointer: 'here' | 'same' | 'other' | null;
  /** Within the place: "left side", "behind the milk". */
  readonly spot: string | null;
  /** "Next to the couscous": where that is. */
  readonly beside?: Mention;
  /** A place this household has not told of yet, by its parts, the outermost first: "door of the fridge". */
  readonly path?: readonly PlaceStep[];
}

/** One part of a place that was said and is not on record, or the record it is part of. */
export interface PlaceStep {
  /** As said, without article: "chest freezer", "top shelf", "door". */
  readonly words: string;
  /** Kind of a place record: "fridge", "shelf". */
  readonly kind: string;
  /** It stands by itself: a fridge, a cupboard; not a shelf or a door. */
  readonly whole: boolean;
  /** Told apart from others of its kind by its name: "bread bin", "cupboard over the kettle". */
  readonly distinct?: true;
  /** Records it may be; empty for one that is new. */
  readonly candidates: readonly Candidate[];
}

/** A day or span of days that was said, and how sure its year and day are. */
export interface SaidDate {
  readonly day: PlainDate;
  /** Last day of a span ("this week", "in May"); absent for one day. */
  readonly until?: PlainDate;
  readonly rough?: boolean;
  /** Only a month was printed or said. */
  readonly monthOnly?: boolean;
}

/** Somebody, as said. */
export interface PersonMention {
  readonly words: string;
  readonly candidates: readonly Candidate[];
  /** No name: "me", or somebody spoken of before, "she". */
  readonly points?: 'speaker' | 'other';
}
