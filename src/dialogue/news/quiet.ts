/** Whether the household's quiet hours hold now: then nothing is said that was not asked. */
import type { Work } from '../turn/work.js';

// Making a format takes longer than all else that is asked of a turn's clock; there are only so many zones.
const formats = new Map<string, Intl.DateTimeFormat>();

const wallTime = (now: string, timeZone: string): string => {
  const format =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone });
  formats.set(timeZone, format);
  return format.format(new Date(now));
};

export const isQuietNow = ({ kitchen, around: { clock } }: Work): boolean => {
  const { quietHours, timeZone } = kitchen.household;
  if (quietHours === null) return false;
  const now = wallTime(clock.now, timeZone);
  const { from, to } = quietHours;
  return from <= to ? now >= from && now < to : now >= from || now < to;
};
