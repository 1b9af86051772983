/** Whether the household's quiet hours hold now: then nothing is said that was not asked. */
import { wallTime } from '../../terms/dates.js';
import type { Work } from '../turn/work.js';

export const isQuietNow = ({ kitchen, around: { clock } }: Work): boolean => {
  const { quietHours } = kitchen.household;
  if (quietHours === null) return false;
  const now = wallTime(clock);
  const { from, to } = quietHours;
  return from <= to ? now >= from && now < to : now >= from || now < to;
};
