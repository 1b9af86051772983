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
  reminder: {
    readonly due: Instant;
    readonly label: string;
    readonly itemId?: Id | null;
    readonly forPersonId?: Id | null;
  },
): Result => {
  if (reminder.label.trim() === '') return refuse('no-name');
  if (!(Date.parse(reminder.due) > Date.parse(doing.clock.now))) return refuse('in-the-past');
  return set(doing, {
    kind: 'reminder',
    label: reminder.label.trim(),
    due: reminder.due,
    itemId: reminder.itemId ?? null,
    ...(reminder.forPersonId ? { forPersonId: reminder.forPersonId } : {}),
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
  // More or less of one that stands still is of what is left of it.
  if (reminder.heldLeft !== undefined) {
    const heldLeft = 'addSeconds' in by ? reminder.heldLeft + by.addSeconds : by.seconds;
    if (heldLeft <= 0) return refuse('in-the-past');
    return change('set', reminder.label === null ? [] : [reminder.label], [
      op('reminder', reminderId, reminder, { ...reminder, heldLeft }),
    ]);
  }
  const due = 'addSeconds' in by ? later(reminder.due, by.addSeconds) : later(doing.clock.now, by.seconds);
  if (due <= doing.clock.now) return refuse('in-the-past');
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...reminder, due }),
  ]);
};

/** A timer stands still, with what is left of it. Refused: unknown-reminder. */
export const holdTimer = (doing: Doing, reminderId: Id): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  const heldLeft =
    reminder.heldLeft ??
    Math.max(1, Math.round((Date.parse(reminder.due) - Date.parse(doing.clock.now)) / 1000));
  const due = later(doing.clock.now, FURTHEST);
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...reminder, due, heldLeft }),
  ]);
};

/** And goes on. Refused: unknown-reminder. */
export const resumeTimer = (doing: Doing, reminderId: Id): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null || reminder.heldLeft === undefined)
    return refuse('unknown-reminder', { ids: [reminderId] });
  const { heldLeft, ...running } = reminder;
  return change('set', reminder.label === null ? [] : [reminder.label], [
    op('reminder', reminderId, reminder, { ...running, due: later(doing.clock.now, heldLeft) }),
  ]);
};

/** What a timer is called. Refused: unknown-reminder, no-name. */
export const nameTimer = (doing: Doing, reminderId: Id, label: string): Result => {
  const reminder = doing.kitchen.reminders.get(reminderId);
  if (!reminder || reminder.deliveredAt !== null) return refuse('unknown-reminder', { ids: [reminderId] });
  if (label.trim() === '') return refuse('no-name');
  return change(
    'set',
    [label.trim()],
    [op('reminder', reminderId, reminder, { ...reminder, label: label.trim() })],
  );
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
