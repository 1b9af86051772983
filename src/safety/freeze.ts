/** "Shall I freeze it?" */
import type { Region } from '../kitchen/model.js';
import { today } from '../terms/dates.js';
import type { Clock, PlainDate } from '../terms/dates.js';
import type { Reason } from './api.js';
import { guidanceFor } from './guidance.js';
import { chartOnFreezing, regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';

export interface FreezeAnswer {
  /** `poorly`: the table says it does not freeze well. */
  readonly may: 'yes' | 'no' | 'poorly';
  readonly reasons: readonly Reason[];
}

/**
 * Whether it may still be frozen. Where a use-by is of safety: up to the end of that day, never after. Where it is
 * of quality it stops nothing, and how long the food was kept decides, which is asked of the gate.
 */
export const mayFreeze = (
  question: {
    readonly food: string;
    readonly region: Region | null;
    readonly useBy: PlainDate | null;
    readonly clock: Clock;
    readonly homeMade?: boolean;
  },
  tables = safetyTables(),
): FreezeAnswer => {
  const facts = regionFacts(question.region);
  const day = today(question.clock);
  const useBy = facts.useByIsSafety ? question.useBy : null;
  const byDate = (
    may: 'yes' | 'no',
    code: 'use-by-passed' | 'use-by-today',
    on: PlainDate,
  ): FreezeAnswer => ({
    may,
    reasons: [
      {
        code,
        args: { day: { kind: 'date', day: on } },
        source: cite(tables, tables.timeRules.ukUseByFreeze),
      },
    ],
  });
  if (useBy !== null && day > useBy) return byDate('no', 'use-by-passed', useBy);
  if (facts.chartOnFreezing) {
    const state = question.homeMade === true ? ('cooked' as const) : null;
    const frozen = { where: 'freezer', state, opened: true, region: chartOnFreezing } as const;
    const found = guidanceFor({ ...frozen, food: question.food, clock: question.clock }, tables);
    const against = found.reasons.find(({ code }) => code === 'not-for-freezing');
    if (against) return { may: 'poorly', reasons: [against] };
  }
  if (useBy === day) return byDate('yes', 'use-by-today', day);
  return { may: 'yes', reasons: [{ code: 'frozen-keeps', args: {}, source: null }] };
};
