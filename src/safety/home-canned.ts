/** Home-canned low-acid or tomato food of doubtful process: how long to boil it before tasting. */
import type { Citation } from './api.js';
import { cite, safetyTables } from './tables.js';

/** Minutes of boiling by altitude: ten below a thousand feet, one more for each thousand, begun ones counted. */
export const homeCannedBoil = (
  feet: number,
  tables = safetyTables(),
): { readonly minutes: number; readonly source: Citation } => {
  const rule = tables.timeRules.homeCanned;
  // The longer reading of "each additional thousand feet": a thousand begun counts.
  const further = feet < rule.belowFeet ? 0 : Math.ceil(feet / rule.perFeet);
  return { minutes: rule.boilMinutes + further * rule.moreMinutes, source: cite(tables, rule) };
};
