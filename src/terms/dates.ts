/**
 * Calendar days and instants, as the kitchen uses them.
 *
 * A day in the kitchen is a wall-calendar day in the household's time zone, never
 * an instant: food bought "on Friday" stays bought on Friday whatever the clocks do.
 */
import { tz } from '@date-fns/tz';
import { addDays, addMonths, format } from 'date-fns';

/** A calendar day, `YYYY-MM-DD`, without a time zone. */
export type PlainDate = string & { readonly __plainDate?: never };

/** A moment, ISO 8601 in UTC, e.g. `2026-05-14T17:00:00.000Z`. */
export type Instant = string & { readonly __instant?: never };

/** What "now" is, given by the edge. Nothing below the edge reads a clock. */
export interface Clock {
  readonly now: Instant;
  /** IANA zone name, e.g. `America/Chicago`. */
  readonly timeZone: string;
}

const utc = (day: PlainDate): Date => new Date(`${day}T00:00:00Z`);
const inUtc = { in: tz('UTC') };
const asPlain = (date: Date): PlainDate => format(date, 'yyyy-MM-dd', inUtc);

/** What clocks on the wall showed in minutes asked for lately: one turn asks for the same few many times over. */
const MINUTES_KEPT = 2_000;
const minutes = new Map<string, { readonly day: PlainDate; readonly time: string }>();

/** Zones differ from UTC by whole minutes, so what holds at one second of a minute holds at all. */
const shownAt = (instant: Instant, timeZone: string): { readonly day: PlainDate; readonly time: string } => {
  const at = new Date(instant);
  const key = `${Math.floor(at.getTime() / 60_000)} ${timeZone}`;
  const known = minutes.get(key);
  if (known !== undefined) return known;
  const [day = '', time = ''] = format(at, 'yyyy-MM-dd HH:mm', { in: tz(timeZone) }).split(' ');
  if (minutes.size >= MINUTES_KEPT) minutes.clear();
  const shown = { day, time };
  minutes.set(key, shown);
  return shown;
};

/** The household's calendar day at an instant. */
export const dayOf = (instant: Instant, timeZone: string): PlainDate => shownAt(instant, timeZone).day;

/** What the household's clocks show, `HH:mm` of 24 hours. */
export const wallTime = ({ now, timeZone }: Clock): string => shownAt(now, timeZone).time;

/** The household's calendar day now. */
export const today = (clock: Clock): PlainDate => dayOf(clock.now, clock.timeZone);

/** The day `days` calendar days later (earlier when negative). */
export const plusDays = (day: PlainDate, days: number): PlainDate => asPlain(addDays(utc(day), days, inUtc));

/** The day `months` calendar months later, clamped to the month's end (31 January + 1 = 28 February). */
export const plusMonths = (day: PlainDate, months: number): PlainDate =>
  asPlain(addMonths(utc(day), months, inUtc));

/** Whole calendar days from `from` to `to`; negative when `to` is earlier. */
export const daysBetween = (from: PlainDate, to: PlainDate): number =>
  // Days in UTC are all of one length, so this is exact, and it is asked very often.
  Math.round((utc(to).getTime() - utc(from).getTime()) / 86_400_000);

/** True for a day that exists: `2026-02-30` does not. */
export const isPlainDate = (text: string): text is PlainDate => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const date = utc(text);
  return !Number.isNaN(date.getTime()) && asPlain(date) === text;
};
