/**
 * Dates and numbers in codes printed on packages, by the GS1 General Specifications and Syntax
 * Dictionary: application identifiers 11 to 17 hold six-digit dates; a GTIN ends in a check digit.
 */
import { isPlainDate } from '../terms/dates.js';
import type { PlainDate } from '../terms/dates.js';

/** What a date identifier says. */
export const GS1_DATES = {
  '11': 'produced',
  '12': 'due',
  '13': 'packed',
  '15': 'best-before',
  '16': 'sell-by',
  '17': 'use-by',
} as const;
export type Gs1DateKind = (typeof GS1_DATES)[keyof typeof GS1_DATES];

export type Gs1Date =
  | { readonly kind: Gs1DateKind; readonly day: PlainDate; readonly monthOnly: boolean }
  | { readonly kind: Gs1DateKind; readonly problem: 'not-six-digits' | 'no-such-month' | 'no-such-day' };

/**
 * The full year for two digits (General Specifications 7.12): from 51 years ahead on it is the last
 * century, from 50 years back the next; a window that moves with the current year.
 */
export const fullYear = (twoDigits: number, currentYear: number): number => {
  const century = currentYear - (currentYear % 100);
  const ahead = twoDigits - (currentYear % 100);
  if (ahead >= 51) return century - 100 + twoDigits;
  if (ahead <= -50) return century + 100 + twoDigits;
  return century + twoDigits;
};

const two = (number: number): string => String(number).padStart(2, '0');

/**
 * A date of YYMMDD. Day 00 is the last day of the month for dates that end something; for production
 * and packing dates that is not settled, so only the month is meant (`monthOnly`).
 */
export const readGs1Date = (
  identifier: keyof typeof GS1_DATES,
  digits: string,
  currentYear: number,
): Gs1Date => {
  const kind = GS1_DATES[identifier];
  if (!/^\d{6}$/.test(digits)) return { kind, problem: 'not-six-digits' };
  const year = fullYear(Number(digits.slice(0, 2)), currentYear);
  const month = Number(digits.slice(2, 4));
  if (month < 1 || month > 12) return { kind, problem: 'no-such-month' };
  const day = Number(digits.slice(4, 6));
  if (day === 0) {
    const last = new Date(Date.UTC(year, month, 0)).getUTCDate();
    return {
      kind,
      day: `${year}-${two(month)}-${two(last)}`,
      monthOnly: kind === 'produced' || kind === 'packed',
    };
  }
  const text = `${year}-${two(month)}-${two(day)}`;
  return isPlainDate(text) ? { kind, day: text, monthOnly: false } : { kind, problem: 'no-such-day' };
};

/** The dates of an element string in its readable form, e.g. `(17)270200(10)A1`. */
export const readGs1Dates = (text: string, currentYear: number): readonly Gs1Date[] =>
  [...text.matchAll(/\((1[1-35-7])\)(\d*)/g)].map(([, identifier = '', digits = '']) =>
    readGs1Date(identifier as keyof typeof GS1_DATES, digits, currentYear),
  );

/** The check digit for the digits before it: weights three and one from the right, to the next ten. */
export const checkDigit = (body: string): number => {
  const sum = [...body]
    .reverse()
    .reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
};

/** Whether a GTIN of 8, 12, 13 or 14 digits ends in its check digit. */
export const isGtin = (digits: string): boolean =>
  /^(\d{8}|\d{12,14})$/.test(digits) && checkDigit(digits.slice(0, -1)) === Number(digits.slice(-1));
