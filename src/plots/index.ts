export { agesPlot } from './ages.js';
export { calendarPlot, type LastDay } from './calendar.js';
export type { Plot } from './plot.js';
export { useAndWastePlot } from './use-and-waste.js';
