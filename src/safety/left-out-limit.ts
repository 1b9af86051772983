/** How long a food may stand at room temperature, by its kind and region. */
import type { FoodKind } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import type { Citation } from './api.js';
import { cite } from './tables.js';
import type { SafetyTables } from './tables.js';
import { eggsByDate, regionFacts } from './regions/index.js';

/**
 * The limit in minutes; null for food that needs no cold.
 * @param hot above ninety degrees Fahrenheit (US only): one hour.
 */
export const leftOutLimit = (
  kind: FoodKind,
  region: Region,
  hot: boolean,
  tables: SafetyTables,
): { readonly minutes: number; readonly source: Citation } | null => {
  // Eggs are sold and kept uncooled in the UK; their best-before counts.
  if (kind.room === 'stable' || eggsByDate(kind, region)) return null;
  const rows = regionFacts(region).leftOutRows;
  const id =
    rows.humanMilk !== null && kind.id === 'human-milk'
      ? rows.humanMilk
      : rows.rice !== null && /rice/.test(kind.id)
        ? rows.rice
        : hot
          ? rows.hot
          : rows.usual;
  const rule = tables.timeRules.leftOut.find((row) => row.id === id);
  return rule === undefined ? null : { minutes: rule.minutes, source: cite(tables, rule) };
};
