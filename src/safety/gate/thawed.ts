/** How long food keeps once it thawed. */
import { countsFrom } from '../clock.js';
import { dayNumber, spanEnds } from '../days.js';
import { regionFacts } from '../regions/index.js';
import { anchorOf } from '../storage.js';
import { cite } from '../tables.js';
import { days, onDay, reason, type Case, type Limit } from './case.js';

/** The limits that thawed food has; the earliest holds. */
export const thawedLimits = ({ kind, chosen, clock, region, tables }: Case): Limit[] => {
  if (clock.thawedOn === null) return [];
  const thawed = dayNumber(clock.thawedOn);
  const after = (id: string): Limit[] => {
    const row = tables.storage[region].get(id);
    if (row?.fridge === null || row?.fridge === undefined) return [];
    const source = cite(tables, row);
    return [
      {
        ...spanEnds(thawed, row.fridge),
        chosen: { row, fromOpening: false, general: false },
        reason: reason(
          'after-thaw',
          { low: row.fridge.low, high: row.fridge.high, unit: row.fridge.unit, thawed: onDay(thawed) },
          source,
        ),
      },
    ];
  };
  const { thawedRow } = regionFacts(region);
  if (thawedRow !== null) return after(thawedRow);
  const limits: Limit[] = [];
  const anchor = chosen === null ? null : anchorOf(chosen, clock);
  const from = countsFrom(clock, anchor);
  if (
    chosen?.row.fridge !== null &&
    chosen?.row.fridge !== undefined &&
    from !== null &&
    chosen.row.counts_from !== 'thawed'
  ) {
    limits.push({
      ...spanEnds(from, chosen.row.fridge),
      chosen,
      reason: reason(
        'days-used-before-freezing',
        { days: days(thawed - from) },
        cite(tables, tables.timeRules.fridgeAfterFreezing),
      ),
    });
  }
  if (chosen?.row.counts_from === 'thawed' && chosen.row.fridge !== null) {
    const { row } = chosen;
    const { low, high, unit } = row.fridge!;
    limits.push({
      ...spanEnds(thawed, row.fridge!),
      chosen,
      reason: reason('after-thaw', { low, high, unit, thawed: onDay(thawed) }, cite(tables, row)),
    });
  }
  if (kind.after_thaw !== null && kind.after_thaw !== 'eggs-frozen-in-shell')
    limits.push(...after(kind.after_thaw));
  if (kind.after_thaw === 'eggs-frozen-in-shell' && clock.frozenOn !== null)
    limits.push(...after(kind.after_thaw));
  if (limits.length === 0 && kind.room !== 'stable') {
    limits.push(
      ...after('after-thaw-undated').map((limit) => ({
        ...limit,
        reason: reason('thawed-undated', { thawed: onDay(thawed) }, limit.reason?.source ?? null),
      })),
    );
  }
  return limits;
};
