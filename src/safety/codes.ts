/**
 * Every code this room can give. Phrase files hold one phrase for each:
 * `safety-<code>` for reasons, `caution-<code>`, `step-<code>`, and so on as speech names them.
 */

/** Args beside each: what the phrase may use. */
export const REASON_CODES = [
  // where a verdict comes from
  'within-guidance', // food, type, age (days), low, high, unit
  'use-up', // food, type, age, low, high, unit, left (days)
  'last-day', // food, type, age, low, high, unit
  'over-limit', // food, type, age, low, high, unit, over (days)
  'over-limit-hours', // hours, limit (hours)
  'keeps', // food, type, low, high, unit: no age was asked
  'not-for-freezing', // food, type: the table says do not freeze
  'frozen-quality', // from, to (dates): best quality until
  'past-quality', // from, to
  'frozen-keeps', // frozen all along, the time is for quality only
  'frozen-unknown-date',
  'use-by-passed', // day
  'use-by-today', // day
  'use-by-sooner', // day: the printed date ends it before the table does
  'use-by-quality', // day (US: the date is quality, except infant formula)
  'best-before-passed', // day
  'best-before-eggs', // day, days (UK)
  'within-days-of-opening', // days, day
  'days-used-before-freezing', // days
  'clock-stopped', // frozen, thawed (dates)
  'thawed-undated', // thawed (date)
  'after-thaw', // low, high, unit
  'over-before-freezing', // days
  'refrozen',
  'reheated-times', // times
  'reheat-once', // UK: once only
  'left-out-over', // minutes, limit (minutes)
  'left-out-within', // minutes, limit
  'left-out-unknown',
  'left-out-long', // nobody knows how long, and longer than allowed
  'power-lost', // a power cut cost it, and nothing gives it back
  'power-doubtful', // to be felt and measured after a power cut
  'power-holds', // until (time): the power is out, and its door shut
  'power-out', // the power is out, and nobody knows how cold it is
  'left-out-hot', // one hour above ninety Fahrenheit
  'room-temperature', // perishable kept where it is not cold
  'date-unknown',
  'pantry-quality', // low, high, unit: best so long on a shelf, and no matter of safety
  'at-least-days', // days
  'future-date', // day
  'label-decides',
  'opened-label-decides',
  'shelf-stable',
  'sealed-only', // only if it is a sealed tin or carton
  'produce-no-figure',
  'no-uk-figure',
  'general-answer', // name: not in the table
  'raw-assumed',
  'older-guidance',
  'guide-only',
  'memory-only',
  'stricter-region',
  'other-table',
  'shorter-of-two', // charts disagree; the shorter is given
  'earliest-part', // made from something older: the oldest date counts
  'home-canned',
  'infant-food',
  // ranking
  'days-left', // days
  'hazard-high',
  'opened-already',
  'lots-of-it', // amount
  // microwave and temperature
  'energy-equal',
  'first-check',
  'ratio-capped',
  'watts-unknown',
  'printed-column',
  'doubled-portions',
  'portions-beyond',
  'not-yet-hot', // reached, wanted (temperature)
  'hot-enough',
  'rest-more', // minutes
  'held-too-short', // seconds, wanted
  'boil-wanted',
  'look-unusable', // the published sign is to be looked at; a temperature is given instead
  'fridge-too-warm',
  'fridge-in-range',
  'cooled-in-time',
  'cooled-too-slowly',
] as const;
export type ReasonCode = (typeof REASON_CODES)[number];

export const CAUTION_CODES = [
  'look-and-smell', // looks, smell and taste do not show it
  'do-not-taste',
  'botulism-home-canned',
  'botulism-garlic-oil',
  'botulism-foil-potato',
  'damaged-can',
  'at-risk-deli', // heat to 165 °F or steaming
  'at-risk-soft-cheese',
  'at-risk-queso-fresco',
  'at-risk-deli-salad',
  'at-risk-sprouts',
  'at-risk-fermented-sausage',
  'at-risk-smoked-fish',
  'at-risk-pate',
  'at-risk-raw-milk',
  'at-risk-honey',
  'at-risk-raw-eggs', // cooked until firm
  'at-risk-raw-seafood', // cooked through
  'raw-dough', // nobody tastes it
  'at-risk-general',
  'ask-clinician',
  'infant-no-microwave',
  'infant-use-by',
  'allergen', // allergens: list as text
  'allergen-usual', // such food usually holds it
  'allergens-unknown',
  'recorded', // words: the cook's own caution
  'spicy', // words
  'hot-steam',
  'hot-dish',
  'hot-oil',
  'superheated', // liquids may boil up suddenly
  'follow-label',
  'rice',
  'mould',
] as const;
export type CautionCode = (typeof CAUTION_CODES)[number];

export const MATCH_CODES = [
  'riskiest-part', // the part of the name that spoils soonest decided
  'taken-as', // said which food it was taken for
  'raw-assumed', // nobody said; raw is the shorter time
  'cooked-assumed', // it has a maker or a made date
  'not-in-table',
  'several-fit', // the shorter row was taken
] as const;
export type MatchCode = (typeof MATCH_CODES)[number];

export const STEP_CODES = [
  'own-words',
  'move-to-dish',
  'break-up',
  'cover-vent',
  'cover-foil',
  'set-microwave', // watts; seconds is the timer
  'set-microwave-short', // no known time: a minute at a time
  'stir',
  'turn',
  'heat-again', // seconds
  'stand', // seconds
  'probe', // temperature: your talking thermometer, in several spots
  'probe-hold', // temperature, hold seconds (UK)
  'more-time', // not there yet
  'preheat', // temperature
  'into-oven', // seconds or none
  'into-air-fryer',
  'shake-basket',
  'into-pan',
  'add-splash',
  'bring-to-boil', // rolling boil
  'simmer',
  'into-steamer',
  'into-toaster',
  'serve',
  // power cut
  'keep-doors-shut',
  'note-time',
  'move-perishables',
  'read-thermometer',
  'feel-ice-crystals',
  'go-item-by-item',
  'never-taste',
  'raw-juice-discard',
  'no-snow',
  'dry-ice',
  'when-in-doubt',
  'clean-up',
] as const;
export type StepCode = (typeof STEP_CODES)[number];

export const REFUSAL_CODES = [
  'past-guidance', // the record says throw out
  'reheated-already', // UK: once only
  'takeaway-rice', // UK
  'slow-cooker', // not for reheating
  'no-microwave-for-infants',
  'method-unknown',
  'not-for-reheating',
  'age-unknown',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

export const THAW_ADVICE_CODES = [
  'start-fridge', // move it to the fridge now
  'low-shelf-on-tray',
  'start-cold-water',
  'change-water',
  'leak-proof-bag',
  'cook-at-once',
  'keeps-days-after', // one to two days more (or three to five) in the fridge
  'check-thawed',
  'microwave-book',
  'cook-from-frozen', // about half as long again
  'never-on-counter',
  'weight-unknown',
  'refreeze-raw-ok',
  'cook-before-refreezing',
  'use-within-day', // UK: within twenty-four hours
] as const;
export type ThawAdviceCode = (typeof THAW_ADVICE_CODES)[number];

export const POWER_REASON_CODES = [
  'door-shut-within-hours', // fridge about four hours, freezer by its fullness
  'still-cold', // the thermometer reads forty Fahrenheit or less
  'table-keep',
  'table-discard',
  'table-refreeze',
  'table-refreeze-loss',
  'hours-not-over', // some rows allow six or eight hours
  'hours-over',
  'check-signs', // discard if mould, yeasty smell or sliminess
  'past-hours-check',
  'not-in-table',
  'unknown-temperature',
  'opened-within-hours', // a door was opened, and the hours for shut doors are not over
  'not-affected', // shelf-stable
] as const;
export type PowerReasonCode = (typeof POWER_REASON_CODES)[number];
