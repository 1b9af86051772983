/** What differs from one region to another and is no figure of a table. */
import type { Region } from '../../kitchen/model.js';

export interface RegionFacts {
  /** The number that brings an ambulance, digit by digit as it is dialled. Common knowledge, from memory. */
  readonly emergencyNumber: string;
}

const regions: Readonly<Record<Region, RegionFacts>> = {
  us: { emergencyNumber: 'nine-one-one' },
  uk: { emergencyNumber: 'nine-nine-nine' },
};

export const regionFacts = (region: Region): RegionFacts => regions[region];
