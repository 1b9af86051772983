/**
 * Which form a day, a time or a span takes when spoken. The words of each form are in
 * `phrases/values.ftl`; this file only chooses the form and fills in names and numbers.
 */
import { tz } from '@date-fns/tz';
import { getHours, getMinutes } from 'date-fns';
import { dayOf, daysBetween, today, type Clock, type Instant, type PlainDate } from '../terms/dates.js';
import type { NumberWords } from './language.js';

/** A message of `values.ftl` and its arguments, which are words already. */
export interface Form {
  readonly id: string;
  readonly args: Readonly<Record<string, string>>;
}
const form = (id: string, args: Record<string, string> = {}): Form => ({ id, args });

const namers = new Map<string, Intl.DateTimeFormat>();
const nameOf = (part: 'weekday' | 'month', day: PlainDate, locale: string): string => {
  const key = `${locale} ${part}`;
  const namer = namers.get(key) ?? new Intl.DateTimeFormat(locale, { [part]: 'long', timeZone: 'UTC' });
  namers.set(key, namer);
  return namer.format(new Date(`${day}T12:00:00Z`));
};

/** A date this close is the nearest of its name, so that its year need not be said. */
const NEAR_DAYS = 182;
const NEAR_MONTHS = 5;
/** A month to come needs no year until its name comes round again. */
const AHEAD_MONTHS = 11;

/**
 * "yesterday", "last Friday", "May twelfth" — or with its year when another year's day of that
 * name is nearer: a jar past its date by ten months must not sound as if it had two to go.
 */
export const dateForm = (day: PlainDate, clock: Clock, locale: string, numbers: NumberWords): Form => {
  const away = daysBetween(today(clock), day);
  const weekday = (): string => nameOf('weekday', day, locale);
  if (away === 0) return form('date-today');
  if (away === -1) return form('date-yesterday');
  if (away === 1) return form('date-tomorrow');
  if (away === -7) return form('date-week-ago');
  if (away === 7) return form('date-week-ahead', { weekday: weekday() });
  if (away < 0 && away > -7) return form('date-last-weekday', { weekday: weekday() });
  if (away > 0 && away < 7) return form('date-coming-weekday', { weekday: weekday() });
  const month = nameOf('month', day, locale);
  const ordinal = numbers.dayOfMonth(Number(day.slice(8, 10)));
  if (Math.abs(away) <= NEAR_DAYS) return form('date-day-month', { ordinal, month });
  return form('date-day-month-year', { ordinal, month, year: numbers.year(Number(day.slice(0, 4))) });
};

/** "this month", "May", "May twenty twenty-five". */
export const monthForm = (day: PlainDate, clock: Clock, locale: string, numbers: NumberWords): Form => {
  const month = nameOf('month', day, locale);
  const index = (date: PlainDate): number => Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7));
  const away = index(day) - index(today(clock));
  if (away === 0) return form('date-this-month');
  if (away >= -NEAR_MONTHS && away <= AHEAD_MONTHS) return form('date-month', { month });
  return form('date-month-year', { month, year: numbers.year(Number(day.slice(0, 4))) });
};

/**
 * How long, in days, as said of food: exact to two weeks and in whole weeks to eight, then
 * "about" in weeks, months, years. Nothing is negative: the phrase says which way.
 */
export const daysForm = (days: number, numbers: NumberWords): Form => {
  const whole = Math.round(Math.abs(days));
  const words = (n: number): string => numbers.number(n);
  const counted = (unit: string, n: number, about: boolean): Form =>
    form(`${about ? 'about-' : 'days-'}${n === 1 ? 'one-' : ''}${unit}`, { number: words(n) });
  if (whole === 0) return form('days-none');
  if (whole >= 14 && whole <= 56 && whole % 7 === 0) return counted('week', whole / 7, false);
  if (whole === 7) return counted('week', 1, false);
  if (whole < 30) return counted('day', whole, false);
  if (whole < 60) return counted('week', Math.round(whole / 7), true);
  const months = Math.round(whole / 30.44);
  if (months < 12) return counted('month', months, true);
  const halves = Math.round((whole / 365.25) * 2);
  if (halves <= 2) return counted('year', 1, true);
  if (halves === 3) return form('about-year-and-half');
  return counted('year', halves / 2, true);
};

const wallTime = (at: Instant, timeZone: string): { hour: number; minute: number } => {
  const zone = { in: tz(timeZone) };
  const date = new Date(at);
  return { hour: getHours(date, zone), minute: getMinutes(date, zone) };
};

/** Message of `values.ftl` that says which part of the day an hour is in. */
export const partOfDay = (hour: number): 'morning' | 'afternoon' | 'evening' | 'night' =>
  hour < 12 ? 'morning' : hour < 17 ? 'afternoon' : hour < 21 ? 'evening' : 'night';

/** "noon", "six in the evening", "six thirty in the evening", "ten oh five at night". Household wall time. */
export const timeForm = (at: Instant, timeZone: string, numbers: NumberWords): Form => {
  const { hour, minute } = wallTime(at, timeZone);
  if (minute === 0 && hour === 12) return form('time-noon');
  if (minute === 0 && hour === 0) return form('time-midnight');
  const part = partOfDay(hour);
  const spokenHour = numbers.number(hour % 12 === 0 ? 12 : hour % 12);
  if (minute === 0) return form('time-hour', { hour: spokenHour, part });
  return form('time-hour-minute', { hour: spokenHour, minute: numbers.minute(minute), part });
};

/** "forty seconds", "three and a half minutes", "an hour and a half", "two hours and ten minutes". */
export const durationForm = (seconds: number, numbers: NumberWords): Form => {
  const total = Math.max(0, Math.round(seconds));
  const words = (n: number): string => numbers.number(n);
  const unit = (name: 'second' | 'minute' | 'hour' | 'day', n: number): Form =>
    form(n === 1 ? `span-one-${name}` : `span-${name}s`, { number: words(n) });
  const both = (first: Form, second: Form): Form => ({
    id: 'span-and',
    args: {
      first: first.id,
      firstNumber: first.args['number'] ?? '',
      second: second.id,
      secondNumber: second.args['number'] ?? '',
    },
  });
  if (total < 60) return unit('second', total);
  if (total === 90) return form('span-minute-and-half');
  if (total < 3600) {
    const minutes = Math.floor(total / 60);
    const rest = total % 60;
    if (rest === 0) return unit('minute', minutes);
    if (rest === 30) return form('span-minutes', { number: words(minutes + 0.5) });
    return both(unit('minute', minutes), unit('second', rest));
  }
  const allMinutes = Math.round(total / 60);
  const hours = Math.floor(allMinutes / 60);
  const minutes = allMinutes % 60;
  if (hours >= 48) return unit('day', Math.round(hours / 24));
  if (minutes === 0) return unit('hour', hours);
  if (minutes === 30)
    return hours === 1 ? form('span-hour-and-half') : form('span-hours', { number: words(hours + 0.5) });
  return both(unit('hour', hours), unit('minute', minutes));
};

/** "just now", "ten minutes ago", "this morning", "last night", "yesterday evening", else by its day. */
export const agoForm = (
  at: Instant,
  clock: Clock,
): Form | { readonly day: PlainDate } | { readonly seconds: number; readonly ahead: boolean } => {
  const seconds = (Date.parse(clock.now) - Date.parse(at)) / 1000;
  if (Math.abs(seconds) < 45) return form('ago-now');
  if (seconds < 0) return { seconds: roundSpan(-seconds), ahead: true };
  const day = dayOf(at, clock.timeZone);
  const daysAgo = daysBetween(day, today(clock));
  const part = partOfDay(wallTime(at, clock.timeZone).hour);
  if (seconds < 3.5 * 3600) return { seconds: roundSpan(seconds), ahead: false };
  if (daysAgo === 0) return form('ago-today', { part });
  if (daysAgo === 1) return form('ago-yesterday', { part });
  return { day };
};

/** To whole minutes under an hour, to the half hour above: nobody says "an hour and seven minutes ago". */
const roundSpan = (seconds: number): number => {
  if (seconds < 90) return 60;
  if (seconds < 3600) return Math.min(3600, Math.round(seconds / 60) * 60);
  return Math.round(seconds / 1800) * 1800;
};
