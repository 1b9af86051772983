/** What became of things: how many were used, thrown out and given away in each month. */
import type { Item } from '../kitchen/model.js';
import { dayOf, plusMonths, type PlainDate } from '../terms/dates.js';
import { say, type Plot } from './plot.js';

const months = 12;

/** The last twelve months, this one last, by the household's calendar. */
export const useAndWastePlot = (items: readonly Item[], day: PlainDate, timeZone: string): Plot => {
  const first = plusMonths(`${day.slice(0, 7)}-01`, 1 - months);
  const starts = Array.from({ length: months }, (_, index) => plusMonths(first, index));
  const index = new Map(starts.map((start, at) => [start.slice(0, 7), at]));
  const count = (how: NonNullable<Item['gone']>['how']): number[] => {
    const counts = Array.from({ length: months }, () => 0);
    for (const { gone } of items) {
      const at = gone?.how === how ? index.get(dayOf(gone.at, timeZone).slice(0, 7)) : undefined;
      if (at !== undefined) counts[at] = (counts[at] ?? 0) + 1;
    }
    return counts;
  };
  const used = count('used');
  const thrown = count('thrown out');
  const given = count('given away');
  return {
    id: 'use-and-waste',
    title: say('plot-use-title'),
    groups: starts.map((start) => ({ kind: 'date', day: start, monthOnly: true }) as const),
    series: [
      { name: say('plot-used'), counts: used },
      { name: say('plot-thrown-out'), counts: thrown },
      { name: say('plot-given-away'), counts: given },
    ],
    sentence: say('plot-use-sentence', {
      used: used.at(-1) ?? 0,
      thrown: thrown.at(-1) ?? 0,
      given: given.at(-1) ?? 0,
      thrownBefore: thrown.at(-2) ?? 0,
    }),
  };
};
