/** What the gate is asked, and what its rules find: one food, its history and the ground it is judged on. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { Item, Region } from '../../kitchen/model.js';
import type { Instant, PlainDate } from '../../terms/dates.js';
import type {
  ClockState,
  CookState,
  Exposure,
  FoodMatch,
  PowerState,
  Reason,
  RowUsed,
  Span,
  Verdict,
  Where,
} from '../api.js';
import type { ReasonCode } from '../codes.js';
import { plainDate } from '../days.js';
import type { Chosen } from '../storage.js';
import type { SafetyTables } from '../tables.js';

/** One food, as far as it is known. `Item`s and plain questions are both brought to this. */
export interface Subject {
  readonly itemId: string | null;
  readonly name: string;
  readonly dates: Item['dates'];
  readonly where: Where | null;
  readonly state: CookState;
  readonly homeMade: boolean;
  /** It was opened, dated or not. */
  readonly opened: boolean;
  /** It was thawed, dated or not. */
  readonly thawed: boolean;
  readonly outSince: Instant | null;
  /** How long it stood out of the cold in all; null when it never did, as far as is known. */
  readonly exposure: Exposure | null;
  /** What the worst power cut it went through came to, or the one it lies in now. */
  readonly power: PowerState | null;
  readonly timesReheated: number;
  /** Earlier freezings, as the record has them. */
  readonly frozenBefore?: readonly PlainDate[];
  readonly thawedBefore?: readonly PlainDate[];
  /** The day it was first recorded: it is at least that old. */
  readonly recordedOn: PlainDate | null;
  readonly withinDaysOfOpening: number | null;
  /** Hours it has been there, when known that closely. */
  readonly hours: number | null;
  /** No age was given: tell how long it keeps. */
  readonly ageless: boolean;
  readonly oldestPart: PlainDate | null;
  readonly atRisk: boolean;
}

/** The household's day, as both forms, and the moment. */
export interface Today {
  readonly day: PlainDate;
  readonly number: number;
  readonly now: Instant;
}

/** Everything a rule may look at. Nothing in it changes while a food is judged. */
export interface Case {
  readonly subject: Subject;
  readonly kind: FoodKind;
  readonly match: FoodMatch;
  readonly clock: ClockState;
  /** The row that decides; null where no table has one. */
  readonly chosen: Chosen | null;
  /** What another table says of the same food, where it says otherwise. */
  readonly other: { readonly span: Span; readonly table: 'chart' | 'data' } | null;
  readonly region: Region;
  readonly today: Today;
  readonly tables: SafetyTables;
}

/** What was found so far. A rule takes one and gives another; days are day numbers. */
export interface Finding {
  readonly verdict: Verdict;
  /** The deciding reason first. */
  readonly reasons: readonly Reason[];
  readonly row: RowUsed | null;
  readonly useSoon: number | null;
  readonly last: number | null;
  readonly quality: { readonly from: number; readonly to: number } | null;
  readonly atLeast: boolean;
  readonly used: number | null;
}
export type Rule = (of: Case, before: Finding) => Finding;

/** A finding while a rule works on its own copy of it. */
type Draft = { -readonly [K in keyof Finding]: K extends 'reasons' ? Reason[] : Finding[K] };
export const draftOf = (before: Finding): Draft => ({ ...before, reasons: [...before.reasons] });

export const nothingYet: Finding = {
  verdict: 'no-figure',
  reasons: [],
  row: null,
  useSoon: null,
  last: null,
  quality: null,
  atLeast: false,
  used: null,
};

/** A day something must be used by. */
export interface Limit {
  readonly low: number;
  readonly high: number;
  readonly chosen: Chosen | null;
  readonly reason: Reason | null;
}

export const reason = (
  code: ReasonCode,
  args: Reason['args'] = {},
  source: Reason['source'] = null,
): Reason => ({
  code,
  args,
  source,
});
export const onDay = (number: number): { readonly kind: 'date'; readonly day: PlainDate } => ({
  kind: 'date',
  day: plainDate(number),
});
export const days = (count: number): { readonly kind: 'days'; readonly days: number } => ({
  kind: 'days',
  days: count,
});

/** How bad a verdict is; used to rank and to take the stricter of two regions. */
export const SEVERITY: Readonly<Record<Verdict, number>> = {
  'throw-out': 9,
  'refrigerate-now': 8,
  'last-day': 7,
  'cook-thoroughly': 6,
  'use-soon': 5,
  unknown: 4,
  'past-best-quality': 3,
  fine: 2,
  'how-long': 1,
  'no-figure': 0,
};

export const spanArgs = (row: RowUsed): Reason['args'] =>
  row.limit === null
    ? { food: row.food, type: row.type }
    : { food: row.food, type: row.type, low: row.limit.low, high: row.limit.high, unit: row.limit.unit };
