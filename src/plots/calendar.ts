/** What runs out when: how many items reach their last day on each of the coming days. */
import { daysBetween, plusDays, type PlainDate } from '../terms/dates.js';
import { say, type Plot } from './plot.js';

/** An item's last day by guidance or by its printed use-by; null when none is known. */
export interface LastDay {
  readonly lastDay: PlainDate | null;
}

const span = 14;

/** A group for what is past, then one for each of the next fourteen days, today first. */
export const calendarPlot = (items: readonly LastDay[], day: PlainDate): Plot => {
  const counts = Array.from({ length: span + 1 }, () => 0);
  for (const { lastDay } of items) {
    if (lastDay === null) continue;
    const left = daysBetween(day, lastDay);
    if (left >= span) continue;
    const index = left < 0 ? 0 : left + 1;
    counts[index] = (counts[index] ?? 0) + 1;
  }
  const days = Array.from({ length: span }, (_, ahead) => plusDays(day, ahead));
  return {
    id: 'calendar',
    title: say('plot-calendar-title'),
    groups: [say('plot-calendar-past'), ...days.map((each) => ({ kind: 'date', day: each }) as const)],
    series: [{ name: say('plot-items'), counts }],
    sentence: say('plot-calendar-sentence', {
      past: counts[0] ?? 0,
      today: counts[1] ?? 0,
      week: counts.slice(1, 8).reduce((sum, count) => sum + count, 0),
    }),
  };
};
