/** What a label says, as the cook wrote it down in a note or caution. */
import type { Item } from '../kitchen/model.js';

const NUMBERS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const WITHIN =
  /within (\d+|zero|one|two|three|four|five|six|seven|eight|nine|ten|a|the) (day|week)s? (?:of|after|once|from) open/i;

/** "Eat within three days of opening" is 3; null when nothing like it is noted. */
export const withinDaysOfOpening = (item: Pick<Item, 'notes' | 'cautions'>): number | null => {
  for (const text of [...item.cautions, ...item.notes]) {
    const [, count = '', unit = ''] = WITHIN.exec(text) ?? [];
    if (count === '') continue;
    const word = NUMBERS.indexOf(count.toLowerCase());
    const number = /^\d/.test(count) ? Number(count) : word === -1 ? 1 : word;
    return unit.toLowerCase() === 'week' ? number * 7 : number;
  }
  return null;
};
