/** How old things are: how many items of each age. */
import type { Item } from '../kitchen/model.js';
import { daysBetween, type PlainDate } from '../terms/dates.js';
import { say, type Plot } from './plot.js';

/** Upper ends of the groups in days, each included; the last group has none. */
const ends = [1, 3, 7, 14, 30, 90, 180, 365] as const;

/** The earliest day known of an item: it is at least that old. Null when no day is known. */
const since = (item: Item): PlainDate | null => {
  const { made, bought, opened, frozen, thawed } = item.dates;
  const known = [made, bought, opened, frozen, thawed].filter((day) => day !== undefined).sort();
  return known[0] ?? null;
};

/** Living items by age on a day. Items without a date have a group of their own. */
export const agesPlot = (items: readonly Item[], day: PlainDate): Plot => {
  const counts = Array.from({ length: ends.length + 2 }, () => 0);
  const unknown = ends.length + 1;
  for (const item of items) {
    const start = since(item);
    const age = start === null ? null : Math.max(0, daysBetween(start, day));
    const group = age === null ? unknown : ends.findIndex((end) => age <= end);
    const index = group === -1 ? ends.length : group;
    counts[index] = (counts[index] ?? 0) + 1;
  }
  const groups = [
    ...ends.map((end, at) => say('plot-age-group', { from: (ends[at - 1] ?? -1) + 1, to: end })),
    say('plot-age-over', { days: { kind: 'days', days: ends[ends.length - 1] ?? 0 } }),
    say('plot-age-unknown'),
  ];
  const fresh = counts.slice(0, 3).reduce((sum, count) => sum + count, 0);
  return {
    id: 'ages',
    title: say('plot-ages-title'),
    groups,
    series: [{ name: say('plot-items'), counts }],
    sentence: say('plot-ages-sentence', { count: items.length, fresh, unknown: counts[unknown] ?? 0 }),
  };
};
