/** The United Kingdom: Food Standards Agency, Food Standards Scotland, NHS. */
import type { RegionFacts } from './facts.js';

export const unitedKingdom: RegionFacts = {
  emergencyNumber: 'nine-nine-nine',
  useByIsSafety: true,
  eggsByBestBefore: true,
  daysToTheHour: true,
  riceByItself: true,
  thawedRow: 'uk-thawed',
  storageData: false,
  noFigure: 'no-uk-figure',
  reheatOnce: true,
  clockStopped: false,
  leftOutRows: { usual: 'uk-two-hours', hot: 'uk-two-hours', rice: 'uk-rice-one-hour', humanMilk: null },
  waterThaw: false,
  chartOnFreezing: false,
};
