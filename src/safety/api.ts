/**
 * What this room takes and gives. Nothing here is a sentence: a finding is a code with
 * values, and `codes.ts` lists every code, so that the phrase files can be checked complete.
 *
 * The room reports what published guidance says. No code means "safe".
 */
import type { DateKind, HeatMethod, Id, Item, Region } from '../kitchen/model.js';
import type { Amount } from '../terms/amount.js';
import type { Clock, Instant, PlainDate } from '../terms/dates.js';
import type {
  CautionCode,
  MatchCode,
  PowerReasonCode,
  ReasonCode,
  RefusalCode,
  StepCode,
  ThawAdviceCode,
} from './codes.js';
export type { StepCode } from './codes.js';

/** Where food is kept, whatever shelf or basket of it. */
export type Where = 'fridge' | 'freezer' | 'pantry' | 'counter';

/** Whether the food is as bought and uncooked, or cooked. `null` when nobody said. */
export type CookState = 'raw' | 'cooked' | null;

/** A published span: `{ low: 3, high: 4, unit: 'days' }` is "three to four days". A single figure has low = high. */
export interface Span {
  readonly low: number;
  readonly high: number;
  readonly unit: 'hours' | 'days' | 'weeks' | 'months' | 'years';
}

export interface Temperature {
  readonly degrees: number;
  readonly scale: 'fahrenheit' | 'celsius';
}

/**
 * How a figure is known: the agency's own text was read; a copy of it was read; from memory;
 * reckoned from another figure; or common practice without a publisher.
 */
export type Basis = 'agency-text' | 'copy' | 'from-memory' | 'derived' | 'common-practice';

/** Where a figure is published. Unknown parts are null, never made up. */
export interface Citation {
  readonly agency: string;
  readonly document: string;
  readonly section: string | null;
  readonly year: number | null;
  readonly edition: string | null;
  readonly region: Region;
  readonly basis: Basis;
}

/** Values that fill a phrase. The objects have the same shape as speech's values, so they can be passed on as they are. */
export type Fact =
  | string
  | number
  | { readonly kind: 'date'; readonly day: PlainDate }
  | { readonly kind: 'days'; readonly days: number }
  | { readonly kind: 'time'; readonly at: Instant }
  | { readonly kind: 'duration'; readonly seconds: number }
  | { readonly kind: 'temperature'; readonly degrees: number; readonly scale: 'fahrenheit' | 'celsius' }
  | { readonly kind: 'amount'; readonly amount: Amount };

interface Coded<Code extends string> {
  readonly code: Code;
  readonly args: Readonly<Record<string, Fact>>;
  readonly source: Citation | null;
}
/** Why a verdict is what it is. */
export type Reason = Coded<ReasonCode>;
/** What to watch out for, said before the act it belongs to. */
export type Caution = Coded<CautionCode>;

/** A food name matched to the reviewed table. */
export interface FoodMatch {
  /** As asked. */
  readonly name: string;
  /** The table's food it was taken for; null when none fits. */
  readonly food: string | null;
  /** The family whose rows apply ("general" for unknown foods). */
  readonly family: string;
  readonly state: CookState;
  /** How sure: `exact` name or synonym, `contains` a known food or dish word, `unknown`. */
  readonly sure: 'exact' | 'contains' | 'unknown';
  /** What the cook should be told about the match, e.g. that raw was assumed. */
  readonly notes: readonly MatchCode[];
}

/** The row of a storage table an answer rests on. */
export interface RowUsed {
  readonly id: string;
  /** "Leftovers", and "cooked meat or poultry". */
  readonly food: string;
  readonly type: string;
  readonly region: Region;
  /** Time it may be kept, by this row, where it is; null when the row gives none. */
  readonly limit: Span | null;
  /** `keeping`: throw out after it. `quality`: taste and texture only. */
  readonly kind: 'keeping' | 'quality';
  /** `older`: only on charts since replaced. `guide`: a standards body's leaflet, not a government chart. */
  readonly standing: 'current' | 'older' | 'guide';
  readonly source: Citation;
  /** What the table adds: another edition's figure, "or the use by date". */
  readonly note: string | null;
}

export type Verdict =
  | 'fine'
  | 'use-soon'
  | 'last-day'
  | 'throw-out'
  /** Taste and texture only: frozen food past its time, or past a best-before. */
  | 'past-best-quality'
  /** UK eggs up to two days past their best-before. */
  | 'cook-thoroughly'
  /** Left out, but within the time allowed. */
  | 'refrigerate-now'
  /** Guidance gives no figure: the package's date and label decide. */
  | 'no-figure'
  /** Only how long it keeps was asked, no age. */
  | 'how-long'
  /** A date, time or temperature is not known. Throw out if in doubt. */
  | 'unknown';

export type Hazard = 'high' | 'medium' | 'low' | 'none';

/** What happened to a food, for its clock. */
export interface ClockEvent {
  readonly kind: 'made' | 'bought' | 'opened' | 'frozen' | 'thawed';
  readonly day: PlainDate;
}

/** An item's clock: which phase it is in, and how many fridge days are already used. */
export interface ClockState {
  /** Earlier freezings that are over, first of them first; null where when one ended is not known. */
  readonly freezings: readonly { readonly from: PlainDate; readonly to: PlainDate }[] | null;
  /** `frozen`: the keeping clock is paused and the quality clock runs. */
  readonly phase: 'unknown' | 'fridge' | 'opened' | 'frozen' | 'thawed' | 'room' | 'out';
  /** The day counted as day nought; null when no date was given. */
  readonly startedOn: PlainDate | null;
  /** The day the phase began. */
  readonly since: PlainDate | null;
  /** Fridge days used before this phase; null when not known. */
  readonly usedBefore: number | null;
  readonly openedOn: PlainDate | null;
  readonly frozenOn: PlainDate | null;
  readonly thawedOn: PlainDate | null;
  readonly outSince: Instant | null;
  readonly timesReheated: number;
}

export interface Assessment {
  readonly itemId: Id | null;
  readonly name: string;
  readonly verdict: Verdict;
  readonly match: FoodMatch;
  readonly row: RowUsed | null;
  readonly where: Where | null;
  readonly region: Region;
  readonly clock: ClockState;
  /** Fridge days used so far, counted from day nought; null when not known. */
  readonly daysUsed: number | null;
  /** The age is only known from below: it was recorded that long ago without a date. */
  readonly atLeast: boolean;
  readonly useSoonFrom: PlainDate | null;
  /** Last day to eat (or cook, or freeze) it; a date, not a quality. */
  readonly lastDay: PlainDate | null;
  /** Days from today to `lastDay`; 0 is today, negative is past. */
  readonly daysLeft: number | null;
  /** Best quality ends between these days; a single day twice for a printed best-before. */
  readonly qualityUntil: { readonly from: PlainDate; readonly to: PlainDate } | null;
  readonly hazard: Hazard;
  /** The deciding reason first. */
  readonly reasons: readonly Reason[];
  readonly cautions: readonly Caution[];
}

/** What an assessment may look at. */
/** What a power cut makes of a food. `now`: it lasts. */
export type PowerState =
  | { readonly came: 'lost' }
  | { readonly came: 'doubtful'; readonly now: boolean }
  | { readonly came: 'holds'; readonly until: Instant };

export interface AssessContext {
  readonly where: Where | null;
  /** Null: not chosen; the stricter of both is taken, and said. */
  readonly region: Region | null;
  readonly clock: Clock;
  /** Somebody who eats here is at higher risk. */
  readonly atRisk?: boolean;
  /** What a power cut that lasts makes of a food; absent where none does. */
  readonly power?: (item: Item, where: Where | null) => PowerState | null;
}

export interface RankedItem {
  readonly item: Item;
  readonly assessment: Assessment;
  /** Why it stands where it does, strongest first. */
  readonly because: readonly Reason[];
}

/** How long a food stood out of the cold, over all its outings. */
export interface Exposure {
  /** Minutes out of the cold in all, up to now. */
  readonly minutes: number;
  /** Some of them in air above the limit for heat. */
  readonly hot: boolean;
  /** The hours are known from below only. */
  readonly atLeast: boolean;
  /** It stands out now. */
  readonly now: boolean;
  /** How warm it was there, where that was told. */
  readonly air?: Temperature | null;
}

/** A single question without a record: `tellshelf guidance`. */
export interface GuidanceQuestion {
  readonly food: string;
  readonly where: Where;
  readonly region: Region | null;
  readonly state?: CookState;
  readonly opened?: boolean;
  readonly thawed?: boolean;
  /** Days or hours it has been there. Either, or neither for "how long does it keep". */
  readonly days?: number | null;
  readonly hours?: number | null;
  /** Dated history instead of days. */
  readonly dates?: Readonly<Partial<Record<DateKind, PlainDate>>>;
  /** Its oldest part: chicken of Sunday in a soup of Tuesday. */
  readonly oldestPart?: PlainDate | null;
  /** "Eat within three days of opening". */
  readonly withinDaysOfOpening?: number | null;
  readonly timesReheated?: number;
  readonly atRisk?: boolean;
  /** How long it stood out of the cold, all outings together. */
  readonly out?: Exposure | null;
  /** The power cut it lay in. */
  readonly cut?: PowerCutQuestion | null;
  /** How it thawed, where it is to be frozen again. */
  readonly thawedIn?: ThawedIn | null;
  readonly clock: Clock;
}

export type ThawedIn = 'fridge' | 'cold-water' | 'microwave' | 'left-out';

/** Whether what thawed may be frozen again. */
export interface RefreezeAnswer {
  readonly may: 'yes' | 'cook-first' | 'no' | 'unknown';
  readonly source: Citation | null;
}

/** One act, with the caution that must be heard before it. */
export interface Step {
  readonly code: StepCode;
  readonly args: Readonly<Record<string, Fact>>;
  readonly caution: Caution | null;
  /** A timer to offer with it. */
  readonly seconds: number | null;
  readonly temperature: Temperature | null;
  readonly source: Citation | null;
  /** The cook's own words, for `own-words` steps. */
  readonly words: string | null;
}

/** A microwave time carried over to another oven or other portions. */
export interface ScaledTime {
  readonly seconds: number;
  readonly exactSeconds: number;
  /** Given when the range is known, e.g. twice the portions. */
  readonly latestSeconds: number | null;
  readonly notes: readonly ReasonCode[];
}

export type ReheatPlan =
  | {
      readonly kind: 'plan';
      readonly method: HeatMethod;
      readonly from: 'fridge' | 'freezer';
      /** Said before anything else: allergens, spice, people at risk, what the record says. */
      readonly first: readonly Caution[];
      readonly steps: readonly Step[];
      /** What ends it: a temperature, or (soups, US) a rolling boil. */
      readonly target: {
        readonly temperature: Temperature;
        readonly boil: boolean;
        readonly holdSeconds: number | null;
      };
      /** What the heating is set to, as recorded, and how long all of it takes; null where nobody said. */
      readonly setting: {
        readonly heat: Temperature | null;
        readonly watts: number | null;
        readonly seconds: number | null;
      };
      readonly reasons: readonly Reason[];
    }
  | {
      readonly kind: 'refused';
      readonly refusal: RefusalCode;
      readonly reasons: readonly Reason[];
      readonly source: Citation | null;
    };

export interface ThawReminder {
  readonly at: Instant;
  readonly code: ThawAdviceCode;
}

export interface ThawOption {
  readonly method: 'fridge' | 'cold-water' | 'microwave';
  /** Shortest and longest time, in hours. Null for a microwave: follow its book. */
  readonly hours: { readonly low: number; readonly high: number } | null;
  /** When to begin, so that the longest time is over by the time wanted. */
  readonly startBy: Instant | null;
  readonly tooLate: boolean;
  readonly reminders: readonly ThawReminder[];
  readonly advice: readonly ThawAdviceCode[];
  readonly source: Citation;
}

export interface ThawPlan {
  readonly pounds: number | null;
  readonly wantedAt: Instant;
  /** Slowest and gentlest first. */
  readonly options: readonly ThawOption[];
  /** The first option that is still in time; null when only cooking from frozen is left. */
  readonly best: ThawOption | null;
}

export interface PowerCutQuestion {
  readonly since: Instant;
  /** When it came back; null while it is still out. */
  readonly backAt: Instant | null;
  readonly doors: 'shut' | 'open' | null;
  /** The freezer's, where they were otherwise than the fridge's. */
  readonly freezerDoors?: 'shut' | 'open' | null;
  readonly fullness: 'full' | 'half' | null;
  /** What a thermometer in the fridge or freezer reads, if anybody looked. */
  readonly fridgeReads?: Temperature | null;
  readonly freezerReads?: Temperature | null;
  /** Hours the food is known to have been above forty degrees Fahrenheit. */
  readonly hoursAbove40?: number | null;
  /** Ice crystals can be felt. */
  readonly iceCrystals?: boolean | null;
}

export interface HoldingTime {
  readonly hours: number | null;
  readonly until: Instant | null;
  /** 'at-most': a door was opened, so no longer than that and maybe not so long. */
  readonly state: 'holding' | 'at-most' | 'past' | 'unknown';
  readonly source: Citation;
}

export type PowerVerdict =
  | 'keep'
  | 'discard'
  | 'refreeze'
  /** Quality suffers, still refreeze. */
  | 'refreeze-with-loss'
  /** Not yet discard: the table's hours are not over. */
  | 'use-now'
  /** Feel for ice crystals or read a thermometer first. */
  | 'check'
  | 'discard-in-doubt';

export interface PowerItem {
  readonly itemId: Id | null;
  readonly name: string;
  readonly where: Where;
  readonly verdict: PowerVerdict;
  readonly match: FoodMatch;
  /** "Hard cheese": the row of the power-cut table. */
  readonly row: { readonly id: string; readonly item: string } | null;
  readonly reason: PowerReasonCode;
  readonly source: Citation;
}

export interface PowerCutReport {
  readonly fridge: HoldingTime;
  readonly freezer: HoldingTime;
  /** Discards first. Fridge and freezer items only. */
  readonly items: readonly PowerItem[];
  /** What to do, in order. */
  readonly steps: readonly Step[];
}

export interface LeftOutQuestion {
  readonly food: string;
  readonly since: Instant | null;
  readonly clock: Clock;
  readonly region: Region | null;
  readonly state?: CookState;
  /** Air temperature, when known. */
  readonly air?: Temperature | null;
  /** Minutes it was out before that, all outings together. */
  readonly minutesBefore?: number;
  /** "It was hot in here": above ninety Fahrenheit, thirty-two Celsius. */
  readonly hot?: boolean | null;
}

export interface LeftOutAnswer {
  readonly verdict: 'refrigerate-now' | 'throw-out' | 'unknown' | 'no-figure';
  readonly match: FoodMatch;
  readonly minutesOut: number | null;
  readonly limitMinutes: number;
  /** The last moment it may still go back; null when the start is not known. */
  readonly backBy: Instant | null;
  readonly reasons: readonly Reason[];
}

export interface CookTemperature {
  readonly match: FoodMatch;
  readonly row: { readonly id: string; readonly food: string };
  readonly temperature: Temperature;
  /** Where the name does not say of which ground meat it is: what poultry wants. */
  readonly ifPoultry: Temperature | null;
  /** Minimum rest after reaching it, in seconds (US); null when none. */
  readonly restSeconds: number | null;
  /** Time to be held at it, in seconds (UK); null when none. */
  readonly holdSeconds: number | null;
  readonly boil: boolean;
  readonly source: Citation;
  readonly notes: readonly ReasonCode[];
}

/** A name for an allergen group of a region's law. */
export interface Allergen {
  readonly id: string;
  readonly name: string;
  readonly also: readonly string[];
  readonly regions: readonly Region[];
  readonly source: Citation;
}

/** What can be said of one allergen in one item. Unknown is never "free from". */
export type AllergenAnswer = {
  readonly allergen: string;
  readonly answer:
    | 'said-to-contain'
    | 'said-free-from'
    /** Not recorded, but such a food usually holds it. */
    | 'usually-contains'
    /** Recorded as free from it, though such a food usually holds it. */
    | 'conflict'
    | 'unknown';
};
