/** The United States: FoodSafety.gov, FSIS, FDA. */
import type { RegionFacts } from './facts.js';

export const unitedStates: RegionFacts = {
  emergencyNumber: 'nine-one-one',
  useByIsSafety: false,
  eggsByBestBefore: false,
  daysToTheHour: false,
  riceByItself: false,
  thawedRow: null,
  storageData: true,
  noFigure: 'label-decides',
  reheatOnce: false,
  clockStopped: true,
  leftOutRows: { usual: 'us-two-hours', hot: 'us-one-hour-hot', rice: null, humanMilk: 'us-human-milk-room' },
  waterThaw: true,
  chartOnFreezing: true,
  fridgeThawAdvice: ['keeps-days-after', 'refreeze-raw-ok'],
  refreezeRows: {
    fridge: 'us-fridge-thawed',
    'cold-water': 'us-water-thawed',
    microwave: 'us-microwave-thawed',
    unknown: null,
  },
  cookRow: null,
  scale: 'fahrenheit',
  thermometerRows: { fridge: 'us-fridge', freezer: 'us-freezer' },
  storageRows: {
    own: (kind) => kind.us,
    opened: (kind) => kind.us_opened,
    leftovers: 'leftovers-general',
    undatedGivesWay: false,
  },
  allergenSource: (row) => row.source_us,
};
