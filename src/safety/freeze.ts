/** "Shall I freeze it?" and what reheating once already means. */
import type { Region } from '../kitchen/model.js';
import { today } from '../terms/dates.js';
import type { Clock, PlainDate } from '../terms/dates.js';
import type { Reason } from './api.js';
import { chartOnFreezing, regionFacts } from './regions/index.js';
import { chooseRow } from './storage.js';
import { kindOf, matchFood } from './match.js';
import { cite, safetyTables } from './tables.js';

export interface FreezeAnswer {
  /** `poorly`: the table says it does not freeze well. */
  readonly may: 'yes' | 'no' | 'poorly';
  readonly reasons: readonly Reason[];
}

/** Whether it may still be frozen. UK: up to the end of the use-by day, never after. */
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
  const day = today(question.clock);
  const rule = cite(tables, tables.timeRules.ukUseByFreeze);
  if (question.useBy !== null && day > question.useBy) {
    return {
      may: 'no',
      reasons: [
        { code: 'use-by-passed', args: { day: { kind: 'date', day: question.useBy } }, source: rule },
      ],
    };
  }
  const match = matchFood(question.food, { where: 'fridge', homeMade: question.homeMade === true }, tables);
  const kind = kindOf(match, tables);
  const row = chooseRow(
    kind,
    chartOnFreezing,
    { opened: true, homeMade: question.homeMade === true },
    tables,
  )?.row;
  if (
    regionFacts(question.region).chartOnFreezing &&
    row !== null &&
    row !== undefined &&
    row.freezer === null &&
    row.freezer_note !== null
  ) {
    return {
      may: 'poorly',
      reasons: [
        { code: 'not-for-freezing', args: { food: row.food, type: row.type }, source: cite(tables, row) },
      ],
    };
  }
  if (question.useBy === day) {
    return {
      may: 'yes',
      reasons: [{ code: 'use-by-today', args: { day: { kind: 'date', day } }, source: rule }],
    };
  }
  return { may: 'yes', reasons: [{ code: 'frozen-keeps', args: {}, source: null }] };
};
