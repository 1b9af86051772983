/** When the summary is told, and the hours in which nothing is said unasked. */
import type { Household } from '../kitchen/model.js';
import type { Clock, Instant } from '../terms/dates.js';
import { lastAt, minutesOf, nextAt, wallMinutes } from './wall-time.js';

/** The next time the household's summary is due, strictly after now; null when it wants none. */
export const nextSummaryAt = (household: Pick<Household, 'summaryAt'>, clock: Clock): Instant | null =>
  household.summaryAt === null ? null : nextAt(household.summaryAt, clock.now, clock.timeZone);

/** The last time it was due, at or before now. */
export const lastSummaryAt = (household: Pick<Household, 'summaryAt'>, clock: Clock): Instant | null =>
  household.summaryAt === null ? null : lastAt(household.summaryAt, clock.now, clock.timeZone);

/** Whether an instant falls in quiet hours: from the first minute, up to but not with the last. */
export const isQuiet = (household: Pick<Household, 'quietHours'>, clock: Clock): boolean => {
  if (household.quietHours === null) return false;
  const from = minutesOf(household.quietHours.from);
  const to = minutesOf(household.quietHours.to);
  const now = wallMinutes(clock.now, clock.timeZone);
  return from <= to ? now >= from && now < to : now >= from || now < to;
};

/** When the quiet hours that hold now are over; null when it is not quiet. */
export const quietUntil = (household: Pick<Household, 'quietHours'>, clock: Clock): Instant | null =>
  household.quietHours === null || !isQuiet(household, clock)
    ? null
    : nextAt(household.quietHours.to, clock.now, clock.timeZone);
