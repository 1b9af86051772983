/** "Can it go back in the freezer?" by how it was thawed. */
import type { Region } from '../../kitchen/model.js';
import type { RefreezeAnswer, ThawedIn } from '../api.js';
import { regionFacts } from '../regions/index.js';
import { cite, type SafetyTables } from '../tables.js';

/** @param family The kind of food: a mother's own milk is never frozen again, however it thawed. */
export const refreezing = (
  family: string,
  thawedIn: ThawedIn | null,
  region: Region | null,
  tables: SafetyTables,
): RefreezeAnswer => {
  const id =
    family === 'human-milk'
      ? 'us-human-milk'
      : thawedIn === 'left-out'
        ? 'us-left-out'
        : regionFacts(region).refreezeRows[thawedIn ?? 'unknown'];
  const rule = tables.timeRules.refreezing.find((row) => row.id === id);
  return rule === undefined
    ? { may: 'unknown', source: null }
    : { may: rule.may, source: cite(tables, rule) };
};
