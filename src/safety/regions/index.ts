/** The regions whose guidance is held: one file each. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { Region } from '../../kitchen/model.js';
import type { RegionFacts } from './facts.js';
import { unitedKingdom } from './uk.js';
import { unitedStates } from './us.js';

const regions: Readonly<Record<Region, RegionFacts>> = { us: unitedStates, uk: unitedKingdom };

export const regionFacts = (region: Region): RegionFacts => regions[region];

/** Eggs that go by their best-before and need no cold, in this region. */
export const eggsByDate = (kind: FoodKind, region: Region): boolean =>
  regionFacts(region).eggsByBestBefore && kind.uk === 'uk-eggs';
