/** What a food is by its name, as far as another room may ask: what guidance says of it is the gate's alone. */
import { FILLERS, kindOf, matchFood } from './match.js';
import { safetyTables } from './tables.js';
import { foodWords } from './words.js';
import type { FoodMatch } from './api.js';

/** True of what keeps on a shelf, whole or dry, by its name alone. */
export const keptWithoutCold = (name: string, tables = safetyTables()): boolean => {
  const match = matchFood(name, { where: 'pantry' }, tables);
  return match.sure !== 'unknown' && kindOf(match, tables).room === 'stable';
};

/** Raw as it is sold, and as risky: meat, poultry, fish of which nothing in the name says that it was cooked. */
export const isSoldRaw = (name: string, tables = safetyTables()): boolean => {
  const kind = kindOf(matchFood(name, { bought: true }, tables), tables);
  return kind.state === 'raw' && kind.hazard === 'high' && kind.id.startsWith('raw-');
};

/** What a tin or carton holds keeps out of the cold while it is sealed. */
export const keptSealed = (name: string, tables = safetyTables()): boolean => {
  const match = matchFood(name, { where: 'pantry' }, tables);
  return match.sure !== 'unknown' && kindOf(match, tables).room === 'tin';
};

/**
 * True where both names are known, and are of different kinds of food: "boiled eggs" and "eggs", "deli turkey"
 * and "whole turkey". A name that only says less ("chicken" of "roast chicken") is no other food.
 */
export const otherFood = (said: string, recorded: string, tables = safetyTables()): boolean => {
  const [one, other] = [said, recorded].map((name) => matchFood(name, {}, tables)) as [FoodMatch, FoodMatch];
  if (one.sure === 'unknown' || other.sure === 'unknown' || one.family === other.family) return false;
  const words = new Set(foodWords(recorded));
  return !foodWords(said).every((word) => words.has(word) || FILLERS.has(word));
};

/** The tables know it by its name. */
export const isKnownFood = (name: string, tables = safetyTables()): boolean =>
  matchFood(name, {}, tables).sure !== 'unknown';

/** What sort of food it is, in one word of the tables': "stew", "milk". */
export const sortOf = (name: string, tables = safetyTables()): string =>
  matchFood(name, {}, tables).family.split('-').at(-1) ?? '';

/** Cooked: by its name, or because it was made here. */
export const isCookedFood = (
  name: string,
  how: { readonly homeMade?: boolean } = {},
  tables = safetyTables(),
): boolean => matchFood(name, how, tables).state === 'cooked';

/** Families of `food-kinds.csv` sold from a cold shelf and kept on one. Common practice. */
const CHILLED: ReadonlySet<string> = new Set([
  'milk',
  'raw-milk',
  'cream',
  'yogurt',
  'soft-cheese',
  'queso-fresco',
  'cottage-cheese',
  'low-fat-cheese',
  'grated-cheese',
  'hard-cheese',
  'butter',
  'margarine',
  'eggs-shell',
  'dip',
  'tofu',
  'deli-sliced',
  'ham-slices',
  'luncheon-meat',
  'packaged-greens',
  'fresh-pasta',
]);

export const isSoldCold = (name: string, tables = safetyTables()): boolean => {
  const { family, sure } = matchFood(name, {}, tables);
  return sure !== 'unknown' && CHILLED.has(family);
};

/** A dish that spoils once it is cooked: a stew, not a loaf or a plain cake. */
export const isCookedDish = (name: string, tables = safetyTables()): boolean => {
  const { hazard } = kindOf(matchFood(name, { state: 'cooked', homeMade: true }, tables), tables);
  return hazard === 'high' || hazard === 'medium';
};
