/**
 * Dates in GS1 codes: six digits, YYMMDD.
 * Sources: GS1 General Specifications, section 7.12 (century) and section 3.4 (day 00);
 * GS1 Syntax Dictionary, linters `yymmdd` and `yymmd0`.
 */
import { isPlainDate, type PlainDate } from '../../terms/dates.js';
import { readElementString, type Elements } from './gs1.js';

/** The application identifiers that are dates of this form, and what GS1 calls them. */
export const DATE_AIS = {
  11: 'production',
  12: 'due',
  13: 'packaging',
  15: 'bestBefore',
  16: 'sellBy',
  17: 'expiry',
} as const;
export type Gs1DateKind = (typeof DATE_AIS)[keyof typeof DATE_AIS];

export interface Gs1Date {
  readonly day: PlainDate;
  /** Printed with day 00: only the month is known. */
  readonly monthOnly: boolean;
}

/** The year YY means in this one: from 49 years back to 50 years on. */
export const centuryYear = (yy: number, thisYear: number): number => {
  const century = thisYear - (thisYear % 100);
  const ahead = yy - (thisYear % 100);
  if (ahead >= 51) return century - 100 + yy;
  if (ahead <= -50) return century + 100 + yy;
  return century + yy;
};

const lastOfMonth = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate();

/**
 * Reads YYMMDD, or null when there is no such day. Day 00 means the last of the month for the dates
 * something keeps until. For production and packaging the standard does not settle it: taken as the
 * first, the food is never reckoned younger than it may be; say the month only.
 */
export const readGs1Date = (digits: string, kind: Gs1DateKind, thisYear: number): Gs1Date | null => {
  if (!/^\d{6}$/.test(digits)) return null;
  const year = centuryYear(Number(digits.slice(0, 2)), thisYear);
  const month = Number(digits.slice(2, 4));
  if (month < 1 || month > 12) return null;
  const monthOnly = digits.endsWith('00');
  const starts = kind === 'production' || kind === 'packaging';
  const day = !monthOnly ? Number(digits.slice(4)) : starts ? 1 : lastOfMonth(year, month);
  const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  return isPlainDate(text) ? { day: text, monthOnly } : null;
};

/** A date of a code, or that there is no such day. */
export type PrintedDate =
  | ({ readonly kind: Gs1DateKind } & Gs1Date)
  | { readonly kind: Gs1DateKind; readonly problem: 'no-such-day' };

/** Every date among the elements of a code, in the order of their identifiers. */
export const datesAmong = (elements: Elements, thisYear: number): readonly PrintedDate[] =>
  Object.entries(DATE_AIS).flatMap(([ai, kind]): readonly PrintedDate[] => {
    const digits = elements.get(ai);
    if (digits === undefined) return [];
    const date = readGs1Date(digits, kind, thisYear);
    return [date ? { kind, ...date } : { kind, problem: 'no-such-day' }];
  });

/** The dates of an element string as it is printed or read, e.g. `(17)270200(10)A1`; none where it is none. */
export const datesPrinted = (text: string, thisYear: number): readonly PrintedDate[] => {
  const elements = readElementString(text.trim());
  return elements ? datesAmong(elements, thisYear) : [];
};
