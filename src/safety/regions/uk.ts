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
  fridgeThawAdvice: ['use-within-day'],
  refreezeRows: {
    fridge: 'uk-defrosted',
    'cold-water': 'uk-defrosted',
    microwave: 'uk-defrosted',
    unknown: 'uk-defrosted',
  },
  cookRow: 'uk-core',
  scale: 'celsius',
  thermometerRows: { fridge: 'uk-fridge', freezer: 'uk-freezer' },
  storageRows: {
    own: (kind) => kind.uk,
    opened: () => null,
    leftovers: 'uk-leftovers',
    undatedGivesWay: true,
  },
  allergenSource: (row) => row.source_uk,
};
