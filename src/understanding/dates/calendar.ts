/**
 * Sums with calendar days that the date parsers share. The same results as `terms/dates.ts`
 * (its tests hold them together), on plain UTC days: a sentence asks for hundreds of them.
 */
import { LRUCache } from 'lru-cache';
import type { PlainDate } from '../../terms/dates.js';
import type { Lean } from './parsers/parser.js';

const millisecondsADay = 86_400_000;
// Sentences speak of few days; both directions are remembered.
const numbers = new LRUCache<PlainDate, number>({ max: 4000 });
const days = new LRUCache<number, PlainDate>({ max: 4000 });

/** Days since 1 January 1970. */
const numberOf = (day: PlainDate): number => {
  let number = numbers.get(day);
  if (number === undefined) numbers.set(day, (number = Date.parse(`${day}T00:00:00Z`) / millisecondsADay));
  return number;
};
const dayOf = (number: number): PlainDate => {
  let day = days.get(number);
  if (day === undefined) {
    days.set(number, (day = new Date(number * millisecondsADay).toISOString().slice(0, 10)));
  }
  return day;
};

export const plusDays = (day: PlainDate, many: number): PlainDate => dayOf(numberOf(day) + many);
const daysBetween = (from: PlainDate, to: PlainDate): number => numberOf(to) - numberOf(from);

/** Open ends of a window: before anything was recorded, and after everything. */
export const beginning: PlainDate = '1970-01-01';
export const endless: PlainDate = '9999-12-31';

export const yearOf = (day: PlainDate): number => Number(day.slice(0, 4));
export const monthOf = (day: PlainDate): number => Number(day.slice(5, 7));
const dayOfMonth = (day: PlainDate): number => Number(day.slice(8, 10));

/** A day from its parts, or null for one that does not exist. */
export const plainDate = (year: number, month: number, day: number): PlainDate | null => {
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1000 || year > 9999) return null;
  if (day > 28 && day > new Date(Date.UTC(year, month, 0)).getUTCDate()) return null;
  return `${year}-${month < 10 ? '0' : ''}${month}-${day < 10 ? '0' : ''}${day}`;
};

/** The day `months` months on, clamped to the month's end (31 January + 1 = 28 February). */
export const plusMonths = (day: PlainDate, months: number): PlainDate => {
  const month = yearOf(day) * 12 + monthOf(day) - 1 + months;
  const first = new Date(Date.UTC(Math.floor(month / 12), ((month % 12) + 12) % 12, 1))
    .toISOString()
    .slice(0, 10);
  const last = dayOfMonth(monthEndFrom(first));
  return plusDays(first, Math.min(dayOfMonth(day), last) - 1);
};
const monthEndFrom = (first: PlainDate): PlainDate =>
  dayOf(Date.UTC(yearOf(first), monthOf(first), 0) / millisecondsADay);

/** 0 is Sunday. */
export const weekdayOf = (day: PlainDate): number => (((numberOf(day) + 4) % 7) + 7) % 7;
/** Weeks start on Monday. */
export const weekStart = (day: PlainDate): PlainDate => plusDays(day, -((weekdayOf(day) + 6) % 7));
export const monthStart = (day: PlainDate): PlainDate => plusDays(day, 1 - dayOfMonth(day));
export const monthEnd = (day: PlainDate): PlainDate => monthEndFrom(monthStart(day));

/** The candidate a lean asks for. When none lies on that side, the nearest. */
export const byLean = (candidates: readonly PlainDate[], today: PlainDate, lean: Lean): PlainDate | null => {
  const nearest = (days: readonly PlainDate[]): PlainDate | null =>
    days.reduce<PlainDate | null>(
      (best, day) =>
        best === null || Math.abs(daysBetween(today, day)) < Math.abs(daysBetween(today, best)) ? day : best,
      null,
    );
  const past = candidates.filter((day) => day <= today);
  const coming = candidates.filter((day) => day >= today);
  if (lean === 'past') return nearest(past) ?? nearest(candidates);
  if (lean === 'future') return nearest(coming) ?? nearest(candidates);
  return nearest(candidates);
};
