/**
 * What a kitchen holds. Plain, immutable records; every one belongs to one household
 * (the store adds the household id, first in each key).
 */
import type { Amount } from '../terms/amount.js';
import type { Instant, PlainDate } from '../terms/dates.js';
import type { Touch } from '../terms/touch.js';

export type Id = string;

export type Region = 'us' | 'uk';

export interface Household {
  readonly id: Id;
  readonly name: string;
  readonly timeZone: string;
  /** BCP 47, e.g. `en-US`. Decides date order and spoken wording. */
  readonly locale: string;
  /** Whose food-safety guidance is reported. */
  readonly region: Region;
  readonly measures: 'us' | 'metric';
  readonly microwaveWatts: number | null;
  /** Household wall time of the nightly summary, `HH:MM`, or null for none. */
  readonly summaryAt: string | null;
  /** Wall times between which nothing is spoken unasked. */
  readonly quietHours: { readonly from: string; readonly to: string } | null;
  /** What a number of dots, knots, ridges or notches means here: `{ 1: "for Auntie" }`. */
  readonly dotMeanings: Readonly<Record<number, string>>;
}

export interface Person {
  readonly id: Id;
  readonly name: string;
  readonly eatsHere: boolean;
  /** Names from the tables in `shared/tables`, e.g. "peanuts". */
  readonly allergens: readonly string[];
  /** What they eat by choice: "vegan". Absent when nobody said. */
  readonly diets?: readonly string[];
  /** Only when they chose to say so: age, pregnancy, weakened immunity. */
  readonly atRisk: boolean;
  /** Of what kind: "pregnant", "older", "weakened", "infant". Absent when nobody said. */
  readonly risks?: readonly string[];
  /** How their food is to be, in the words it was told in: "cut up small". Absent when nobody said. */
  readonly needs?: readonly string[];
  /** The day a guest comes, the last that was told. */
  readonly comesOn?: PlainDate;
}

export type PlaceKind =
  'fridge' | 'freezer' | 'pantry' | 'counter' | 'cupboard' | 'shelf' | 'drawer' | 'basket' | 'door' | 'side';

export interface Place {
  readonly id: Id;
  /** Null for a whole appliance or cupboard. */
  readonly parentId: Id | null;
  /** "fridge", "chest freezer", "second shelf", "door". */
  readonly name: string;
  readonly kind: PlaceKind;
  /** Position among its like, counted from the top (1 is the top), or from the left for sides. */
  readonly position: number | null;
  /** Other names this household uses for it. */
  readonly aliases: readonly string[];
  /** How full it was said to be, in hundredths, and when. Absent where nobody said. */
  readonly filled?: { readonly hundredths: number; readonly at: Instant };
}

/** A touchable thing on a container that tells it apart. It outlives the food it stands on. */
export interface Marker {
  readonly id: Id;
  readonly touch: Touch;
  /** What is written or encoded on it, if anything: an NFC record's text, a printed code. */
  readonly codes: readonly string[];
  /** How it is to be looked after, as recorded: "hand wash only". */
  readonly care: string | null;
  /** What it was on before it went to the spare box: an item's id. */
  readonly lastItemId: Id | null;
}

export type DateKind = 'made' | 'bought' | 'opened' | 'frozen' | 'thawed' | 'bestBefore' | 'useBy';

export type HeatMethod =
  'microwave' | 'oven' | 'hob' | 'air fryer' | 'steamer' | 'slow cooker' | 'toaster' | 'none';

/** One way to get a dish ready, as somebody told it. */
export interface Preparation {
  readonly method: HeatMethod;
  readonly from: 'fridge' | 'freezer' | 'any';
  /** Told in the cook's own words, one act a step. May be empty when only figures are known. */
  readonly steps: readonly string[];
  readonly minutes: number | null;
  /** The power the minutes are for. */
  readonly watts: number | null;
  readonly standMinutes: number | null;
  /** Oven or air fryer setting. */
  readonly heat: { readonly degrees: number; readonly scale: 'fahrenheit' | 'celsius' } | null;
  /** The portions the minutes are for. */
  readonly portions: number | null;
}

/**
 * Something a food went through that its dates do not tell. Written down when it is over, added up by
 * `src/safety/exposure.ts`, and never taken out again: only undoing the change that wrote it does that.
 */
export type FoodEvent =
  | {
      /** It stood out of the cold. */
      readonly kind: 'out';
      readonly from: Instant;
      readonly to: Instant;
      /** The air was hotter than the limit in `time-rules.json`. */
      readonly hot?: boolean;
      /** "Overnight": nobody knows the hour, and it was no less than this. */
      readonly atLeast?: boolean;
    }
  | {
      /** The place it lay in had no power. */
      readonly kind: 'power';
      /** Which cut, by its record; absent on what was written down before cuts had one. */
      readonly cutId?: Id;
      readonly from: Instant;
      readonly to: Instant;
      /** What the table made of it: to be thrown out, or to be felt and measured before it is kept. */
      readonly came: 'lost' | 'doubtful' | 'kept';
    };

export interface Item {
  readonly id: Id;
  /** What it is called here: "lentil stew". */
  readonly name: string;
  /** Containers filled from one pot share this. */
  readonly batchId: Id | null;
  /** What is left; null when nobody said. */
  readonly amount: Amount | null;
  /** What it started with, so that "about half left" means something. */
  readonly amountAtFirst: Amount | null;
  /** How the container itself feels (the marker has its own touch). */
  readonly touch: Touch;
  readonly placeId: Id | null;
  /** Within the place: "left side", "behind the milk". */
  readonly spot: string | null;
  readonly markerId: Id | null;
  readonly dates: Readonly<Partial<Record<DateKind, PlainDate>>>;
  /** It is open, and nobody said since when. Absent where the day is known, or nothing of it. */
  readonly open?: boolean;
  /** Standing at room temperature since; null when put away. */
  readonly outSince: Instant | null;
  /** The air it stands in is hotter than the limit in `time-rules.json`. Absent when nobody said so. */
  readonly outHot?: boolean;
  /** The hour it was set out is a guess, and it was out no shorter. */
  readonly outAtLeast?: boolean;
  /** What it went through, first of it first. Absent when nothing is known. */
  readonly history?: readonly FoodEvent[];
  readonly timesReheated: number;
  /** Days it was frozen before the last time, first of them first. Frozen again, it has been thawed between. */
  readonly frozenBefore?: readonly PlainDate[];
  /** The days it thawed after those, in the same order; the last time's is among its dates. */
  readonly thawedBefore?: readonly PlainDate[];
  /** Who made it: a person's name or a shop, as said. */
  readonly maker: string | null;
  /** Whose it is, when it is not everyone's. */
  readonly ownerId: Id | null;
  /** "vegan", "hot". */
  readonly diets: readonly string[];
  /** Allergens it is said to contain. What is not listed is unknown, never absent. */
  readonly contains: readonly string[];
  /** Allergens somebody said it is free from. */
  readonly freeFrom: readonly string[];
  readonly cautions: readonly string[];
  readonly preparations: readonly Preparation[];
  readonly notes: readonly string[];
  /** Printed on its packet: a GTIN, as read. Absent when none is known. */
  readonly codes?: readonly string[];
  readonly addedAt: Instant;
  readonly addedBy: Id | null;
  /** Set once it is used up, thrown out or given away. The record stays. */
  readonly gone: { readonly at: Instant; readonly how: 'used' | 'thrown out' | 'given away' } | null;
}

/** A line on the list to buy. */
export interface Purchase {
  readonly id: Id;
  readonly name: string;
  readonly amount: Amount | null;
  /** Section of a shop: "dairy", "bakery". */
  readonly section: string | null;
  readonly addedAt: Instant;
  readonly addedBy: Id | null;
  /** The finished item this replaces, whose details carry over. */
  readonly replaces: Id | null;
  /** Where it is to be bought: "fish market". */
  readonly shop?: string | null;
  /** Which kind, or what it is for: "in juice", "unsalted". */
  readonly note?: string | null;
  /** Who it is for. */
  readonly forPersonId?: Id | null;
}

/** A few words one person leaves for another. */
export interface Note {
  readonly id: Id;
  readonly forPersonId: Id | null;
  readonly fromPersonId: Id | null;
  readonly text: string;
  readonly itemId: Id | null;
  readonly at: Instant;
  readonly heard: boolean;
}

/** A timer or reminder. */
export interface Reminder {
  readonly id: Id;
  readonly kind: 'timer' | 'reminder';
  /** "rice", "freeze the chicken"; null for an unnamed timer. */
  readonly label: string | null;
  readonly due: Instant;
  readonly setAt: Instant;
  readonly setBy: Id | null;
  readonly itemId: Id | null;
  readonly deliveredAt: Instant | null;
  /** A timer that stands still: so many seconds are left of it. `due` is then further off than anybody waits. */
  readonly heldLeft?: number;
  /** Whom it reminds, where that is somebody else than whoever set it. */
  readonly forPersonId?: Id;
}

/** Progress of a check of a place against the record. */
export interface StockTake {
  readonly id: Id;
  readonly placeId: Id;
  readonly startedAt: Instant;
  readonly finishedAt: Instant | null;
  /** What was said of each item so far. */
  readonly seen: Readonly<Record<Id, 'there' | 'gone' | 'changed' | 'unsure'>>;
}

/**
 * The power was out, in the whole household or in some appliances. It belongs to the place and to every food in it,
 * whoever told of it and on whichever device; only undoing takes it away.
 */
export interface PowerCut {
  readonly id: Id;
  readonly since: Instant;
  /** Null while it lasts. */
  readonly backAt: Instant | null;
  readonly doors: 'shut' | 'open' | null;
  /** The freezer's, where they were otherwise than the fridge's. */
  readonly freezerDoors: 'shut' | 'open' | null;
  readonly fullness: 'full' | 'half' | null;
  /** What a thermometer in the fridge read. */
  readonly fridgeReads: { readonly degrees: number; readonly scale: 'fahrenheit' | 'celsius' } | null;
  /** The appliances that lost it, where some were named; null: all of them. */
  readonly placeIds: readonly Id[] | null;
  /** When something was told of it last. */
  readonly toldAt: Instant;
}

/** The kinds of record, and what each holds. Every change to a kitchen is a change to these. */
export interface Records {
  household: Household;
  person: Person;
  place: Place;
  marker: Marker;
  item: Item;
  purchase: Purchase;
  note: Note;
  reminder: Reminder;
  stockTake: StockTake;
  powerCut: PowerCut;
}
export type RecordKind = keyof Records;

/** A household's kitchen at one version. Immutable. */
export interface Kitchen {
  readonly household: Household;
  readonly people: ReadonlyMap<Id, Person>;
  readonly places: ReadonlyMap<Id, Place>;
  readonly markers: ReadonlyMap<Id, Marker>;
  /** Living and gone. */
  readonly items: ReadonlyMap<Id, Item>;
  readonly purchases: ReadonlyMap<Id, Purchase>;
  readonly notes: ReadonlyMap<Id, Note>;
  readonly reminders: ReadonlyMap<Id, Reminder>;
  readonly stockTakes: ReadonlyMap<Id, StockTake>;
  readonly powerCuts: ReadonlyMap<Id, PowerCut>;
  /** Rises by one with each journal entry. */
  readonly version: number;
}

/**
 * One record set, replaced or taken away. `before` makes it its own inverse:
 * swap the two and it is undone.
 */
export type Op = {
  [K in RecordKind]: {
    readonly kind: K;
    readonly id: Id;
    readonly before: Records[K] | null;
    readonly after: Records[K] | null;
  };
}[RecordKind];

/** What was done, for telling it later ("Dele finished the rice ten minutes ago"). */
export type Verb =
  | 'put away'
  | 'took'
  | 'finished'
  | 'threw out'
  | 'gave away'
  | 'moved'
  | 'marked'
  | 'unmarked'
  | 'amended'
  | 'opened'
  | 'froze'
  | 'thawed'
  | 'took out'
  | 'reheated'
  | 'split'
  | 'merged'
  | 'added a marker'
  | 'built a place'
  | 'renamed a place'
  | 'removed a place'
  | 'gave dots a meaning'
  | 'put on the list'
  | 'took off the list'
  | 'bought'
  | 'noted'
  | 'checked'
  | 'told of a power cut'
  | 'set'
  /** A timer, reminder or summary was spoken and heard. Nobody's doing: never what "undo" takes back. */
  | 'told'
  | 'imported'
  | 'undid'
  | 'redid';

/** One change, whole or not at all. */
export interface Change {
  readonly verb: Verb;
  /** What it was about, as spoken: item names, a place's name. */
  readonly about: readonly string[];
  readonly ops: readonly Op[];
  /** Who did it, where it was told of somebody else than whoever told it. */
  readonly doerId?: Id;
  /** The entry this takes back, for `undid` and `redid`. */
  readonly undoes?: Id;
}

/** A change as it was written down. */
export interface JournalEntry extends Change {
  readonly id: Id;
  /** The kitchen's version after it. */
  readonly version: number;
  readonly at: Instant;
  readonly personId: Id | null;
  readonly deviceId: Id | null;
  readonly turnId: Id | null;
}
