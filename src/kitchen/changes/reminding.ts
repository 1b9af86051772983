/** Timers and reminders. */
import type { Instant } from '../../terms/dates.js';
import type { Id, Kitchen, Reminder } from '../model.js';
import { change, op, refuse, type Doing, type Result } from '../doing.js';

/** Not yet delivered, soonest first. */
export const openReminders = (kitchen: Kitchen, kind?: Reminder['kind']): readonly Reminder[] =>
  [...kitchen.reminders.values()]
    .filter((reminder) => reminder.deliveredAt === null && (kind === undefined || reminder.kind === kind))
    .sort((a, b) => a.due.localeCompare(b.due));

const later = (at: Instant, seconds: number): Instant =>
  new Date(Date.parse(at) + seconds * 1000).toISOString();

/** More at once than a cook can follow; also a bound on what a fault can fill. */
const MOST_OPEN = 200;
/** Seconds in a year: further off is a mishearing. */
const FURTHEST = 366 * 86_400;

const set = (doing: Doing, reminder: Omit<Reminder, 'id' | 'setAt' | 'setBy' | 'deliveredAt'>): Result => {
  if (openReminders(doing.kitchen).length >= MOST_OPEN) return refuse('too-many');
  const made: Reminder = {
    ...reminder,
    id: doing.newId(),
    setAt: doing.clock.now,
    setBy: doing.speaker.personId,
    deliveredAt: null,
  };
  return change('set', made.label === null ? [] : [made.label], [op('reminder', made.id, null, made)]);
};

/** A timer of so many seconds. Refused: bad-setting (not between 1 second and a year), too-many. */
export const setTimer = (
  doing: Doing,
  timer: { readonly seconds: number; readonly label?: string | null; readonly itemId?: Id | null },
): Result => {
  if (!(timer.seconds >= 1 && timer.seconds <= FURTHEST)) return refuse('bad-setting');
  return set(doing, {
    kind: 'timer',
    label: timer.label ?? null,
    due: later(doing.clock.now, timer.seconds),
    itemId: timer.itemId ?? null,
  });
};

/** A reminder at an instant. Refused: no-name, in-the-past, too-many. */
export const setReminder = (
  doing: Doing,
  reminder: { readonly due: Instant; readonly label: string; readonly itemId?: Id | null },
): Result => {
  if (reminder.label.trim() === '') return refuse('no-name');
  if (!(Date.parse(reminder.due) > Date.parse(doing.clock.now))) return refuse('in-the-past');
  return set(doing, {
    kind: 'reminder',
    label: reminder.label.trim(),
    due: reminder.due,
    itemId: reminder.itemId ?? null,
  });
};

/**
 * More or less time for a running timer (`addSeconds` may be negative), or a new time from now.
 * Refused: unknown-reminder, in-the-past.
 */
export const changeTimer = (
  doing: Doing,
  reminderId: Id,
  by: { readonly addSeconds: number } | { readonly seconds: number },
): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  const due = 'addSeconds' in by ? later(reminder.due, by.addSeconds) : later(doing.clock.now, by.seconds);
  if (due <= doing.clock.now) return refuse('in-the-past');
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...reminder, due }),
  ]);
};

/** Another instant for a reminder. Refused: unknown-reminder, in-the-past. */
export const changeReminder = (doing: Doing, reminderId: Id, due: Instant): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  if (due <= doing.clock.now) return refuse('in-the-past');
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...reminder, due }),
  ]);
};

/** Refused: unknown-reminder. */
export const cancelReminder = (doing: Doing, reminderId: Id): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, null),
  ]);
};

/** Said aloud now. Refused: unknown-reminder (also when it was delivered already). */
export const deliverReminder = (doing: Doing, reminderId: Id): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  return change('told', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...reminder, deliveredAt: doing.clock.now }),
  ]);
};
