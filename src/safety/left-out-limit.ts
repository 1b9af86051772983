/** How long a food may stand at room temperature, by its kind and region. */
import type { FoodKind } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import type { Citation } from './api.js';
import { cite } from './tables.js';
import type { SafetyTables } from './tables.js';

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
  if (kind.room === 'stable' || (region === 'uk' && kind.uk === 'uk-eggs')) return null;
  const id =
    kind.id === 'human-milk' && region === 'us'
      ? 'us-human-milk-room'
      : region === 'uk'
        ? /rice/.test(kind.id)
          ? 'uk-rice-one-hour'
          : 'uk-two-hours'
        : hot
          ? 'us-one-hour-hot'
          : 'us-two-hours';
  const rule = tables.timeRules.leftOut.find((row) => row.id === id);
  return rule === undefined ? null : { minutes: rule.minutes, source: cite(tables, rule) };
};
