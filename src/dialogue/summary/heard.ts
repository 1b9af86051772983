/** Which summary a household heard last, and what it spoke of. */
import type { Kitchen } from '../../kitchen/model.js';
import { dayOf, type Clock, type Instant } from '../../terms/dates.js';
import { nightlySummary, type Ranked, type Summary, type SummaryOptions } from './nightly.js';

/** Assesses what is in the kitchen: `rankUseFirst` of the safety room. */
export type Rank = (kitchen: Kitchen, clock: Clock) => readonly Ranked[];

/** Record of the summary last heard: a reminder of this id, delivered already, never told itself. */
export const SUMMARY_RECORD = 'summary';

/** Day of the week on which the summary looks at the whole week: Sunday is 0. */
const WEEKLY_ON = 0;
/** A summary this late says so. */
const LATE_MS = 30 * 60_000;

/** How the summary due at `due` is made when it is told now: the weekly one on Sundays, late when late. */
export const summaryOptions = (due: Instant, clock: Clock): SummaryOptions => ({
  weekly: new Date(`${dayOf(due, clock.timeZone)}T00:00:00Z`).getUTCDay() === WEEKLY_ON,
  ...(Date.parse(clock.now) - Date.parse(due) > LATE_MS ? { lateSince: due } : {}),
});

/** So long after it "it" means what the summary spoke of. */
const RECALLED_MS = 30 * 60_000;

/**
 * What the summary spoke of, line by line, when one was heard within the last half hour and since
 * this conversation last spoke (null: never). After it "freeze it" and "the second" mean these.
 */
export const summaryHeardSince = (
  kitchen: Kitchen,
  lastSpoke: Instant | null,
  clock: Clock,
  rank: Rank,
): Summary | null => {
  const heard = kitchen.reminders.get(SUMMARY_RECORD);
  if (!heard?.deliveredAt) return null;
  const at = Date.parse(heard.deliveredAt);
  if (Date.parse(clock.now) - at > RECALLED_MS) return null;
  if (lastSpoke !== null && at < Date.parse(lastSpoke)) return null;
  return nightlySummary(kitchen, rank(kitchen, clock), clock, summaryOptions(heard.due, clock));
};
