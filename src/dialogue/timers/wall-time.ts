/** From what a household's clock shows to an instant. */
import { wallTime } from '../../safety/index.js';
import { type Clock, type Instant, type PlainDate, plusDays, today } from '../../terms/dates.js';

/** A wall time on a day. */
export const instantAt = (day: PlainDate, time: string, timeZone: string): Instant =>
  wallTime(day, time, timeZone);

/** The next time the clock shows it: today if that is still to come, else tomorrow. */
export const nextAt = (time: string, clock: Clock): Instant => {
  const now = today(clock);
  const here = instantAt(now, time, clock.timeZone);
  return here > clock.now ? here : instantAt(plusDays(now, 1), time, clock.timeZone);
};

/** The last time the clock showed it. */
export const lastAt = (time: string, clock: Clock): Instant => {
  const now = today(clock);
  const here = instantAt(now, time, clock.timeZone);
  return here <= clock.now ? here : instantAt(plusDays(now, -1), time, clock.timeZone);
};

/** `seconds` from now; negative for the past. */
export const fromNow = (clock: Clock, seconds: number): Instant =>
  new Date(Date.parse(clock.now) + seconds * 1000).toISOString();
