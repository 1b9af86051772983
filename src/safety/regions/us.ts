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
};
