export { createHouseholdNames, splitMaker } from './household-names.js';
export { alternativesFor } from './confusables.js';
export { soundsLike } from './sounds.js';
export type { HouseholdNames, MarkerMatch, NamedKind, NamedMatch, NamedRecords, PlaceMatch } from './api.js';
