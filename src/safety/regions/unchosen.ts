/**
 * No region was chosen: of what differs, the stricter, and it is said so. Times and dates are judged by every
 * region and the strictest verdict is taken (`regionsFor`); these are for what is asked once.
 */
import type { RegionFacts } from './facts.js';
import { unitedKingdom } from './uk.js';
import { unitedStates } from './us.js';

export const unchosen: RegionFacts = {
  // The hotter temperatures and the chart are the United States'; both ways of thawing are told.
  ...unitedStates,
  useByIsSafety: true,
  reheatOnce: true,
  riceByItself: true,
  fridgeThawAdvice: unitedKingdom.fridgeThawAdvice,
  refreezeRows: unitedKingdom.refreezeRows,
};
