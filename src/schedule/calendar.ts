/** What a household's own calendar holds: last days by guidance, and reminders still to come. Pure. */
import { say } from '../dialogue/handler.js';
import { placeAt } from '../dialogue/describe/place.js';
import { openReminders } from '../kitchen/index.js';
import type { Id, Kitchen, Reminder } from '../kitchen/model.js';
import { rankUseFirst } from '../safety/index.js';
import type { Citation } from '../safety/index.js';
import type { Answer, Say } from '../speech/index.js';
import type { Clock, Instant, PlainDate } from '../terms/dates.js';
import { reminderAnswer } from './announcing.js';

export type CalendarEntry = {
  /** The same for as long as it is about the same thing. */
  readonly id: string;
  /** Its first sentence is the title, what follows the description. */
  readonly answer: Answer;
  /** Where the food stands, outermost first; empty where nobody said. */
  readonly placeId: Id | null;
} & (
  { readonly kind: 'last-day'; readonly day: PlainDate } | { readonly kind: 'reminder'; readonly at: Instant }
);

const named = ({ agency, document, year }: Citation): string =>
  [agency, document, year].filter((part) => part !== null).join(', ');

/** Nobody's own, or set by or for this person; null: everybody. */
export const concerns = ({ setBy, forPersonId }: Reminder, personId: Id | null): boolean =>
  personId === null || setBy === null || setBy === personId || forPersonId === personId;

/**
 * `personId`: whose calendar it is, who does not see what others asked to be reminded of; null: everybody's.
 * Days that only say when quality goes off are left out.
 */
export const calendarOf = (kitchen: Kitchen, clock: Clock, personId: Id | null): readonly CalendarEntry[] => {
  const days = rankUseFirst(kitchen, clock).flatMap(({ item, assessment }): CalendarEntry[] => {
    if (assessment.lastDay === null) return [];
    const parts: Say[] = [
      say('calendar-last-day', { item: item.name }),
      ...(item.placeId === null
        ? []
        : [say('calendar-where', { at: placeAt(kitchen, item.placeId, item.spot) })]),
      ...(assessment.row === null ? [] : [say('calendar-source', { source: named(assessment.row.source) })]),
      say('calendar-in-doubt'),
    ];
    const about = { id: `${item.id}.last-day`, answer: { parts }, placeId: item.placeId };
    return [{ kind: 'last-day', day: assessment.lastDay, ...about }];
  });
  const reminders = openReminders(kitchen)
    .filter((reminder) => reminder.kind === 'reminder' && concerns(reminder, personId))
    .map((reminder): CalendarEntry => ({
      kind: 'reminder',
      id: reminder.id,
      at: reminder.due,
      // As it will be said at its time.
      answer: reminderAnswer(kitchen, reminder, { ...clock, now: reminder.due }),
      placeId: null,
    }));
  return [...days, ...reminders];
};
