/** Whether the household's quiet hours hold now: then nothing is said that was not asked. */
import type { Work } from '../turn/work.js';

export const isQuietNow = ({ kitchen, around: { clock } }: Work): boolean => {
  const { quietHours, timeZone } = kitchen.household;
  if (quietHours === null) return false;
  const now = new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone,
  }).format(new Date(clock.now));
  const { from, to } = quietHours;
  return from <= to ? now >= from && now < to : now >= from || now < to;
};
