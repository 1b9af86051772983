/**
 * Calendar reckoning in whole day numbers. `terms/dates` reckons the same days with date-fns;
 * ranking ten thousand items in a few milliseconds needs it cheaper, so days here are plain
 * integers counted from 1 January 1970. Both are checked against luxon in the tests.
 */
import type { PlainDate } from '../terms/dates.js';
import type { Span } from './api.js';

const MS_PER_DAY = 86_400_000;

/** A kitchen's dates are few and come again: both directions are remembered, up to so many. */
const REMEMBERED = 50_000;
const numbers = new Map<PlainDate, number>();
const days = new Map<number, PlainDate>();

const remember = <K, V>(memory: Map<K, V>, key: K, value: V): V => {
  if (memory.size >= REMEMBERED) memory.clear();
  memory.set(key, value);
  return value;
};

/** Days since 1 January 1970; days have no time zone, so none plays a part. */
export const dayNumber = (day: PlainDate): number =>
  numbers.get(day) ??
  remember(
    numbers,
    day,
    Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10))) / MS_PER_DAY,
  );

export const plainDate = (number: number): PlainDate =>
  days.get(number) ?? remember(days, number, new Date(number * MS_PER_DAY).toISOString().slice(0, 10));

/** The same day so many months later, clamped to the month's end. */
const monthsLater = (number: number, months: number): number => {
  const date = new Date(number * MS_PER_DAY);
  const month = date.getUTCMonth() + months;
  const lastOfMonth = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0)).getUTCDate();
  return Date.UTC(date.getUTCFullYear(), month, Math.min(date.getUTCDate(), lastOfMonth)) / MS_PER_DAY;
};

const later = (start: number, count: number, unit: Span['unit']): number => {
  switch (unit) {
    // By the calendar, a limit in hours is the whole days it touches: 24 hours is one day.
    case 'hours':
      return start + Math.ceil(count / 24);
    case 'days':
      return start + count;
    case 'weeks':
      return start + 7 * count;
    case 'months':
      return monthsLater(start, count);
    case 'years':
      return monthsLater(start, 12 * count);
  }
};

/** First and last end of a span counted from day number `start`. */
export const spanEnds = (start: number, span: Span): { readonly low: number; readonly high: number } => ({
  low: later(start, span.low, span.unit),
  high: later(start, span.high, span.unit),
});

/** From when to say "use it up": the low end, or the day before a single limit. */
export const useSoonFrom = (ends: { readonly low: number; readonly high: number }): number =>
  ends.low < ends.high ? ends.low : ends.high - 1;
