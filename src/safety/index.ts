/**
 * What guidance says: how long food keeps, what to use first, how to heat and thaw it, what a power cut
 * did to it. Reports published figures with their sources; never says that food is safe.
 */
export type * from './api.js';
export {
  CAUTION_CODES,
  MATCH_CODES,
  POWER_REASON_CODES,
  REASON_CODES,
  REFUSAL_CODES,
  STEP_CODES,
  THAW_ADVICE_CODES,
} from './codes.js';
export {
  allergenIn,
  allergenNamed,
  allergensOf,
  allergenWarnings,
  eatingCautions,
  usualAllergens,
  watchesFor,
} from './allergens.js';
export { allergenWord, dietIn, dietMarks, speaksOfDiet, warnsOfAllergen } from './diets.js';
export { wattsByBoiling } from './boil-test.js';
export { checkClaim, claimNamed, claimsOf } from './claims.js';
export { advance, clockOf, eventsOf } from './clock.js';
export {
  checkCooling,
  chillingHot,
  coolingFrom,
  cooledSoFar,
  checkHotHoldReheat,
  coolingStages,
  dateMark,
  isHumanMilk,
} from './food-service.js';
export { mayFreeze } from './freeze.js';
export { homeCannedBoil } from './home-canned.js';
export { dailyValue, eggCarton, frontOfPack, labelDate } from './labels.js';
export { feedLimit, formulaUntil, guidanceFor, isHot, mayRefreeze, powerCutFor } from './guidance.js';
export { exposureOf, worstPowerCut } from './exposure.js';
export { hazardNamed, mouldCut } from './cautions.js';
export { regionFacts } from './regions/index.js';
export { anyoneAtRisk, assessFor, assessIn } from './items.js';
export { isHomeMade, whereKept } from './where-kept.js';
export { leftOut } from './left-out.js';
export {
  isCookedDish,
  isCookedFood,
  isKnownFood,
  isSoldCold,
  isSoldRaw,
  keptSealed,
  keptWithoutCold,
  otherFood,
  sortOf,
} from './what-food.js';
export { printedTime, scalePortions, scaleTime } from './microwave.js';
export { cameOf, holdingHours, powerCut, warmHours } from './power-cut.js';
export { judgedUntold, powerNow, questionOf } from './power-now.js';
export { reheatPlan } from './reheat.js';
export { packageDates, readTables, storageRows } from './published.js';
export { checkProbe, cookTemperature, fridgeReading, inScale, thermometerReading } from './temperature.js';
export { fridgeThawHours, isTurkey, thawing, thawPlan, wallTime, waterThawHours } from './thaw.js';
export { goTogether } from './together.js';
export { roastingTime } from './roasting.js';
export { rankUseFirst, withoutDate } from './use-first.js';
