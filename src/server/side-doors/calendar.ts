/** A household's days as iCalendar (RFC 5545). */
import ical, { ICalAlarmType, ICalEventTransparency } from 'ical-generator';
import type { Spoken } from '../../speech/index.js';
import type { Instant } from '../../terms/dates.js';
import type { CalendarEntry } from '../../schedule/index.js';

export interface Day {
  readonly entry: CalendarEntry;
  readonly spoken: Spoken;
  /** Places from the outside in; empty where nobody said. */
  readonly where: readonly string[];
}

/** How often a calendar may ask again, in seconds. */
const ASK_AGAIN = 3_600;

/** Days have no hour and no zone, reminders are instants in UTC: no client has to know our zones. */
export const asICalendar = (
  name: string,
  householdId: string,
  days: readonly Day[],
  now: Instant,
): string => {
  const calendar = ical({
    name,
    prodId: { company: 'Tellshelf', product: 'Kitchen record', language: 'EN' },
    ttl: ASK_AGAIN,
  });
  for (const { entry, spoken, where } of days) {
    const [title = '', ...more] = spoken.sentences;
    const whole = entry.kind === 'last-day';
    const event = calendar.createEvent({
      id: `${entry.id}@${householdId}.tellshelf`,
      stamp: new Date(now),
      start: new Date(whole ? `${entry.day}T00:00:00Z` : entry.at),
      allDay: whole,
      summary: title.replace(/\.$/, ''),
      ...(more.length === 0 ? {} : { description: more.join(' ') }),
      // Nobody is kept from anything else by it.
      transparency: ICalEventTransparency.TRANSPARENT,
      ...(where.length === 0 ? {} : { location: where.join(', ') }),
    });
    if (!whole) event.createAlarm({ type: ICalAlarmType.display, trigger: 0, description: title });
  }
  // The library leaves the last line open; RFC 5545 (3.1) ends every one.
  return `${calendar.toString()}\r\n`;
};
