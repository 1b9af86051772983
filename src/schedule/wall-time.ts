/**
 * Household wall time and instants. On the night the clocks go forward a time that does not
 * exist is taken as much later as the gap is long; on the night they go back a time that comes
 * twice means its first coming.
 */
import { tz, TZDate } from '@date-fns/tz';
import { getHours, getMinutes } from 'date-fns';
import { dayOf, plusDays, type Instant, type PlainDate } from '../terms/dates.js';

/** `HH:MM`, household wall time. */
export type WallTime = string;

const parts = (time: WallTime): { hour: number; minute: number } => {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(time);
  if (!match) throw new RangeError(`not a wall time: ${time}`);
  return { hour: Number(match[1]), minute: Number(match[2]) };
};

/** Minutes since midnight on the wall. */
export const minutesOf = (time: WallTime): number => {
  const { hour, minute } = parts(time);
  return hour * 60 + minute;
};

/** Minutes since midnight that the household's clock shows at an instant. */
export const wallMinutes = (at: Instant, timeZone: string): number => {
  const zone = { in: tz(timeZone) };
  return getHours(new Date(at), zone) * 60 + getMinutes(new Date(at), zone);
};

/** Milliseconds to add to UTC for the zone's wall time at that moment. */
const offsetAt = (ms: number, timeZone: string): number =>
  -new TZDate(ms, timeZone).getTimezoneOffset() * 60_000;

/**
 * The instant at which a household's clock first shows `time` on `day`.
 *
 * @throws RangeError for a time that is not `HH:MM`
 */
export const instantOf = (day: PlainDate, time: WallTime, timeZone: string): Instant => {
  const { hour, minute } = parts(time);
  const wall = Date.parse(`${day}T00:00:00Z`) + (hour * 60 + minute) * 60_000;
  // The offsets a day before and after bracket any change of clocks near it.
  const before = offsetAt(wall - 86_400_000, timeZone);
  const after = offsetAt(wall + 86_400_000, timeZone);
  const shown = [wall - before, wall - after]
    .filter((ms) => ms + offsetAt(ms, timeZone) === wall)
    .sort((a, b) => a - b);
  // In a gap neither shows it: the offset before the change carries on past it.
  return new Date(shown[0] ?? wall - before).toISOString();
};

/** The next instant strictly after `after` at which the clock shows `time`. */
export const nextAt = (time: WallTime, after: Instant, timeZone: string): Instant => {
  const day = dayOf(after, timeZone);
  for (const ahead of [-1, 0, 1, 2]) {
    const at = instantOf(plusDays(day, ahead), time, timeZone);
    if (at > after) return at;
  }
  throw new RangeError(`no ${time} within three days of ${after} in ${timeZone}`);
};

/** The latest instant at or before `until` at which the clock showed `time`. */
export const lastAt = (time: WallTime, until: Instant, timeZone: string): Instant => {
  const day = dayOf(until, timeZone);
  for (const ahead of [1, 0, -1, -2]) {
    const at = instantOf(plusDays(day, ahead), time, timeZone);
    if (at <= until) return at;
  }
  throw new RangeError(`no ${time} within three days before ${until} in ${timeZone}`);
};
