/** A baby's bottle: hours from its making, and from the start of the feed. */
import type { Instant } from '../../terms/dates.js';
import type { Citation } from '../api.js';
import { cite, safetyTables } from '../tables.js';

/** How long a baby's bottle may be gone on with once the feed began, in minutes; null where no rule is held. */
export const feedLimit = (
  milk: 'human' | 'formula',
  tables = safetyTables(),
): { readonly minutes: number; readonly source: Citation } | null => {
  const id = milk === 'human' ? 'us-human-milk-feed' : 'us-formula-feeding';
  const rule = tables.timeRules.leftOut.find((row) => row.id === id);
  return rule === undefined ? null : { minutes: rule.minutes, source: cite(tables, rule) };
};

/** A bottle of infant formula: two hours from making, one from the start of the feed; the earlier ends it. */
export const formulaUntil = (
  bottle: { readonly made: Instant; readonly feedBegan: Instant | null },
  tables = safetyTables(),
): { readonly until: Instant; readonly source: Citation } => {
  const rule = (id: string) => {
    const found = tables.timeRules.leftOut.find((row) => row.id === id);
    if (found === undefined) throw new Error(`time-rules.json has no "${id}"`);
    return found;
  };
  const [made, feeding] = [rule('us-formula-made'), rule('us-formula-feeding')];
  const ends = [Date.parse(bottle.made) + made.minutes * 60_000];
  if (bottle.feedBegan !== null) ends.push(Date.parse(bottle.feedBegan) + feeding.minutes * 60_000);
  return { until: new Date(Math.min(...ends)).toISOString(), source: cite(tables, made) };
};
