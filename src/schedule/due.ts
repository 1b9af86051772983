/** What is due to be told unasked: timers, reminders, the summary. Pure. */
import { deliverReminder, isRefused, openReminders, type Doing } from '../kitchen/index.js';
import type { Change, Id, Kitchen, Reminder } from '../kitchen/model.js';
import { SUMMARY_RECORD, summaryOptions, type Rank } from '../dialogue/summary/heard.js';
import { rankUseFirst } from '../safety/index.js';
import { nightlySummary } from '../dialogue/summary/nightly.js';
import type { Answer } from '../speech/index.js';
import type { PlannedTelling } from '../store/port.js';
import { dayOf, type Clock, type Instant } from '../terms/dates.js';
import { reminderAnswer } from './announcing.js';
import { isQuiet, lastSummaryAt, nextSummaryAt, quietUntil } from './summary-time.js';

/** Something to tell, with what is said. */
export interface DueTelling extends PlannedTelling {
  readonly answer: Answer;
  /** Whose it is: their own devices and shared ones. Null: everyone's. */
  readonly forPersonId: Id | null;
}

const HOUR = 3_600_000;
/** A summary nobody was there to hear is kept this long: to noon, from eight in the evening. */
const SUMMARY_KEPT = 16 * HOUR;
/** Later than this, a timer or reminder waits until the household's quiet hours are over. */
const RINGS_IN_QUIET = 15 * 60_000;

const millis = (at: Instant): number => Date.parse(at);

/** Timers and reminders due after `after` and at or before `until`, not heard yet, soonest first. */
export const dueBetween = (kitchen: Kitchen, after: Instant, until: Instant): readonly Reminder[] =>
  openReminders(kitchen).filter(
    (reminder) => millis(reminder.due) > millis(after) && millis(reminder.due) <= millis(until),
  );

/** The due moment is part of the id: a timer given more time after it rang is told again. */
const reminderTelling = ({ kind, id, due }: Reminder): PlannedTelling => ({
  id: `${kind}.${id}.${Math.floor(millis(due) / 1000)}`,
  kind,
  due,
});

const summaryTelling = (due: Instant, timeZone: string): PlannedTelling => ({
  id: `summary.${dayOf(due, timeZone)}`,
  kind: 'summary',
  due,
});

/** What a device has heard already still goes out by webhook and broker for so long. */
const STILL_SENT = HOUR;

const isSendable = (reminder: Reminder, clock: Clock): boolean =>
  reminder.id !== SUMMARY_RECORD &&
  (reminder.deliveredAt === null || millis(clock.now) - millis(reminder.due) < STILL_SENT);

/** The summary to send out: the one due and unheard, or heard within the last hour. */
const sendableSummary = (kitchen: Kitchen, clock: Clock): Instant | null => {
  const due = dueSummary(kitchen, clock);
  if (due !== null) return due;
  const heard = kitchen.reminders.get(SUMMARY_RECORD);
  return heard !== undefined && millis(clock.now) - millis(heard.due) < STILL_SENT ? heard.due : null;
};

/** Everything this kitchen will or should have told, for the store's leased rows. */
export const plannedTellings = (kitchen: Kitchen, clock: Clock): readonly PlannedTelling[] => {
  const summaries = [sendableSummary(kitchen, clock), nextSummaryAt(kitchen.household, clock)];
  const planned = [
    ...[...kitchen.reminders.values()].filter((one) => isSendable(one, clock)).map(reminderTelling),
    ...summaries.flatMap((due) => (due === null ? [] : [summaryTelling(due, clock.timeZone)])),
  ];
  return [...new Map(planned.map((one) => [one.id, one])).values()];
};

/** When the kitchen's first thing was recorded: no summary was missed before that. */
const beganAt = (kitchen: Kitchen): Instant | null => {
  let first: Instant | null = null;
  for (const { addedAt } of kitchen.items.values()) if (first === null || addedAt < first) first = addedAt;
  return first;
};

/** The summary that is due now and not heard yet, by the moment it was due. */
const dueSummary = (kitchen: Kitchen, clock: Clock): Instant | null => {
  const due = lastSummaryAt(kitchen.household, clock);
  const began = beganAt(kitchen);
  if (due === null || began === null || millis(due) < millis(began)) return null;
  if (millis(clock.now) - millis(due) > SUMMARY_KEPT) return null;
  const heard = kitchen.reminders.get(SUMMARY_RECORD);
  // By its day, not its minute: a summary moved from eight to nine is not told twice in one evening.
  if (heard === undefined) return due;
  const [heardOf, of] = [dayOf(heard.due, clock.timeZone), dayOf(due, clock.timeZone)];
  // One of a day still to come was told by a clock that was wrong, and says nothing of today's.
  const later = heardOf > of && millis(heard.due) <= millis(clock.now);
  return heardOf === of || later ? null : due;
};

const tellReminder = (kitchen: Kitchen, reminder: Reminder, clock: Clock): DueTelling => {
  const answer = reminderAnswer(kitchen, reminder, clock);
  return {
    ...reminderTelling(reminder),
    answer: isQuiet(kitchen.household, clock) ? { ...answer, whisper: true } : answer,
    forPersonId: reminder.setBy,
  };
};

const tellSummary = (kitchen: Kitchen, due: Instant, clock: Clock, rank: Rank): DueTelling => ({
  ...summaryTelling(due, clock.timeZone),
  answer: nightlySummary(kitchen, rank(kitchen, clock), clock, summaryOptions(due, clock)).answer,
  forPersonId: null,
});

/** In quiet hours timers and reminders are whispered at their time: they were asked for. What is older waits. */
const waitsForQuiet = (kitchen: Kitchen, reminder: Reminder, clock: Clock): boolean =>
  isQuiet(kitchen.household, clock) && millis(clock.now) - millis(reminder.due) > RINGS_IN_QUIET;

/**
 * All that is due now and was not heard yet, oldest first; late ones say so. In quiet hours
 * only what was asked for at that time, whispered.
 */
export const dueNow = (kitchen: Kitchen, clock: Clock, rank: Rank = rankUseFirst): readonly DueTelling[] => {
  const told = openReminders(kitchen)
    .filter(
      (reminder) => millis(reminder.due) <= millis(clock.now) && !waitsForQuiet(kitchen, reminder, clock),
    )
    .map((reminder) => tellReminder(kitchen, reminder, clock));
  const summary = isQuiet(kitchen.household, clock) ? null : dueSummary(kitchen, clock);
  if (summary !== null) told.push(tellSummary(kitchen, summary, clock, rank));
  return told.sort((a, b) => millis(a.due) - millis(b.due));
};

/** One telling to send out now; `wait` for the end of quiet hours; null when it is no longer wanted. */
export const tellingNow = (
  kitchen: Kitchen,
  clock: Clock,
  rank: Rank,
  id: Id,
): DueTelling | { readonly wait: Instant } | null => {
  const quiet = quietUntil(kitchen.household, clock);
  const reminder = [...kitchen.reminders.values()].find(
    (one) => isSendable(one, clock) && reminderTelling(one).id === id,
  );
  if (reminder !== undefined)
    return quiet !== null && waitsForQuiet(kitchen, reminder, clock)
      ? { wait: quiet }
      : tellReminder(kitchen, reminder, clock);
  const summary = sendableSummary(kitchen, clock);
  if (summary === null || summaryTelling(summary, clock.timeZone).id !== id) return null;
  return quiet === null ? tellSummary(kitchen, summary, clock, rank) : { wait: quiet };
};

/** When something may next be due that is not yet: the next reminder, summary, or end of quiet hours. */
export const nextDueAt = (kitchen: Kitchen, clock: Clock): Instant | null => {
  const ahead = [
    ...openReminders(kitchen).map((reminder) => reminder.due),
    nextSummaryAt(kitchen.household, clock),
    quietUntil(kitchen.household, clock),
  ].filter((at): at is Instant => at !== null && millis(at) > millis(clock.now));
  return ahead.sort((a, b) => millis(a) - millis(b))[0] ?? null;
};

/** The change that records a telling as heard; null when it was heard before, or is no longer. */
export const heardChange = (doing: Doing, tellingId: Id): Change | null => {
  const { kitchen, clock } = doing;
  const reminder = openReminders(kitchen).find((one) => reminderTelling(one).id === tellingId);
  if (reminder !== undefined) {
    const result = deliverReminder(doing, reminder.id);
    return isRefused(result) ? null : result;
  }
  const due = dueSummary(kitchen, clock);
  if (due === null || summaryTelling(due, clock.timeZone).id !== tellingId) return null;
  const before = kitchen.reminders.get(SUMMARY_RECORD) ?? null;
  const after: Reminder = {
    id: SUMMARY_RECORD,
    kind: 'reminder',
    label: null,
    due,
    setAt: due,
    setBy: null,
    itemId: null,
    deliveredAt: clock.now,
  };
  return { verb: 'told', about: [], ops: [{ kind: 'reminder', id: SUMMARY_RECORD, before, after }] };
};
