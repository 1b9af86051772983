/** A printed best-before: of quality, and never milder than what was found. */
import { dayNumber } from '../days.js';
import { eggsByDate } from '../regions/index.js';
import { cite } from '../tables.js';
import { draftOf, onDay, reason, SEVERITY, type Rule } from './case.js';

export const bestBefore: Rule = ({ subject, kind, region, today, tables }, before) => {
  const work = draftOf(before);
  const { bestBefore: printed } = subject.dates;
  if (printed === undefined || eggsByDate(kind, region)) return work;
  const best = dayNumber(printed);
  work.quality ??= { from: best, to: best };
  if (today.number <= best) {
    // Open, the label's days after opening count, which nobody noted.
    if (work.verdict === 'no-figure' && (!subject.opened || kind.room === 'stable')) work.verdict = 'fine';
    return work;
  }
  const meaning = tables.packageDates.find((row) => row.id === `${region}-best-before`);
  work.reasons.push(
    reason('best-before-passed', { day: onDay(best) }, meaning === undefined ? null : cite(tables, meaning)),
  );
  if (SEVERITY[work.verdict] < SEVERITY['past-best-quality']) work.verdict = 'past-best-quality';
  return work;
};
