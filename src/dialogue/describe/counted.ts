/** From which day a verdict of guidance counts: what is asked when somebody wonders where "five days over" comes from. */
import type { Item } from '../../kitchen/model.js';
import type { Assessment, Reason } from '../../safety/api.js';
import type { Say } from '../../speech/answer.js';
import { plusDays, today, type Clock } from '../../terms/dates.js';
import { day, say } from '../handler.js';
import { dateSaidAs } from './came.js';

/** Reasons that are days counted; a printed date, a heat or an hour tells its own. */
const byDays: ReadonlySet<Reason['code']> = new Set<Reason['code']>([
  ...(['over-limit', 'last-day', 'use-up', 'within-guidance'] as const),
]);
const kinds = ['made', 'bought', 'thawed', 'opened', 'frozen'] as const;

/** Nothing where no day on record is the one it counts from. */
export const countedFrom = (item: Item, found: Assessment, clock: Clock): readonly Say[] => {
  const counts = found.reasons.some(({ code }) => byDays.has(code));
  if (!counts || found.daysUsed === null) return [];
  const from = plusDays(today(clock), -found.daysUsed);
  const kind = kinds.find((one) => item.dates[one] === from);
  return kind ? [say('counted-from', { what: dateSaidAs(kind, item), date: day(from) })] : [];
};
