/** The regions whose guidance is held: one file each. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { Region } from '../../kitchen/model.js';
import type { RegionFacts } from './facts.js';
import { unchosen } from './unchosen.js';
import { unitedKingdom } from './uk.js';
import { unitedStates } from './us.js';

const regions: Readonly<Record<Region, RegionFacts>> = { us: unitedStates, uk: unitedKingdom };

/** @param region Null where none was chosen. */
export const regionFacts = (region: Region | null): RegionFacts =>
  region === null ? unchosen : regions[region];

/** Whose guidance is asked: the one chosen, or every one that is held, of which the strictest holds. */
export const regionsFor = (region: Region | null): readonly Region[] =>
  region === null ? (Object.keys(regions) as Region[]) : [region];

/** Whose chart says what freezes badly. */
export const chartOnFreezing: Region = 'us';

/** Eggs that go by their best-before and need no cold, in this region. */
export const eggsByDate = (kind: FoodKind, region: Region): boolean =>
  regionFacts(region).eggsByBestBefore && kind.uk === 'uk-eggs';
