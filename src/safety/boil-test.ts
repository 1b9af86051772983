/** A microwave whose watts nobody knows: how long a cup of water takes to boil says roughly. */
import type { Citation } from './api.js';
import { cite, safetyTables } from './tables.js';

/**
 * About how many watts, from the seconds one cup of water takes to boil. The published test names the two
 * ends only; between them nothing is said, and null is given.
 */
export const wattsByBoiling = (
  seconds: number,
  tables = safetyTables(),
): { readonly watts: number; readonly source: Citation } | null => {
  const row = tables.microwave.boilTest.find(
    (each) =>
      (each.boilsWithinSeconds !== undefined && seconds <= each.boilsWithinSeconds) ||
      (each.boilsAfterSeconds !== undefined && seconds >= each.boilsAfterSeconds),
  );
  return row === undefined ? null : { watts: row.about, source: cite(tables, row) };
};
