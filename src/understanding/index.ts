/** Understanding's public door: utterances in, typed meanings out. Pure. */
export { CHANGING_INTENTS, DESTRUCTIVE_INTENTS, INTENTS } from './intents.js';
export type * from './intents.js';
export type { Understander } from './understand.js';
export { createUnderstander } from './guidance/understander.js';
export { accounted } from './account.js';
export { given } from './given.js';
export { withoutIntroduction } from './introduction.js';
export { movesOf } from './sequence.js';
export type { Move } from './sequence.js';
export { whyHeard } from './why.js';
export type { WhyHeard } from './why.js';
export {
  ageIn,
  headOf,
  heatMethodIn,
  deviceCalled,
  spotIn,
  isGoods,
  isLeftovers,
  oneIn,
  partedPlace,
  placesNamed,
  standsIn,
  statedIn,
  type SaidState,
} from './name-words.js';
export { saidDuration } from './said-duration.js';
export { thresholds } from './thresholds.js';
export { createHouseholdNames } from './names/index.js';
export type { HouseholdNames } from './names/index.js';
export { isRatherIn } from './languages/spoken.js';
