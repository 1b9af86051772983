/**
 * Whether a food fits a diet. Only a mark on the food says yes; what it is said to contain, or what such
 * food usually is, says no. All else is unknown.
 */
import type { Item } from '../kitchen/model.js';
import { allergenIn, allergenNamed } from './allergens.js';
import { reviewedFood } from './match.js';
import { safetyTables } from './tables.js';

export type DietAnswer =
  | { readonly answer: 'marked' }
  /** Said to contain what the diet leaves out. */
  | { readonly answer: 'contains'; readonly what: readonly string[] }
  /** Not recorded, but such food usually does. */
  | { readonly answer: 'usually'; readonly what: readonly string[] }
  | { readonly answer: 'unknown' };

/** What the word itself leaves out, by the allergen groups of the tables: a definition, no guidance. */
const leavesOut: Readonly<Record<string, readonly string[]>> = {
  vegan: ['milk', 'eggs', 'fish', 'crustaceans', 'molluscs'],
  vegetarian: ['fish', 'crustaceans', 'molluscs'],
  'gluten free': ['gluten'],
  'dairy free': ['milk'],
  'lactose free': ['milk'],
  'nut free': ['tree nuts', 'peanuts'],
  'peanut free': ['peanuts'],
  'egg free': ['eggs'],
  'soy free': ['soy'],
};

/** What is vegan is vegetarian, and so on. */
const alsoMeans: Readonly<Record<string, readonly string[]>> = {
  vegetarian: ['vegan'],
  'dairy free': ['vegan'],
  'lactose free': ['vegan', 'dairy free'],
  'egg free': ['vegan'],
  'low salt': ['low sodium', 'salt free'],
  'low sodium': ['low salt', 'salt free'],
  'low sugar': ['sugar free'],
  'low fat': ['fat free', 'nonfat'],
};

const meatless: ReadonlySet<string> = new Set(['vegan', 'vegetarian']);

/** Kinds of food-kinds.csv that are meat, poultry or fish by their names. */
const animalKind =
  /(^|-)(meat|poultry|steak|chop|giblets|deer|rabbit|duck|sausage|ham|bacon|dogs|beef|chicken|nuggets|links|fish|crab|lobster|molluscs|shrimp|squid)(-|$)/;

/** Kinds that say nothing of what is in them. */
const mixedKind =
  /(^|-)(soup|soups|stew|stews|casserole|casseroles|leftovers|curry|pie|pizza|stock|broth|dish|dishes)(-|$)/;

/** True when such food is meat, poultry or fish by its name alone. */
export const isAnimalFood = (name: string, tables = safetyTables()): boolean => {
  const animal = (words: string): boolean => {
    const row = reviewedFood(words, tables);
    return row !== null && [row.bought, row.cooked].some((kind) => kind !== null && animalKind.test(kind));
  };
  const dish = reviewedFood(name, tables);
  if (dish === null || animal(name)) return dish !== null;
  // "Beef stew", "chicken soup": a dish of many things, named after what is in it.
  const mixed = [dish.bought, dish.cooked].some((kind) => kind !== null && mixedKind.test(kind));
  return mixed && name.split(' ').some(animal);
};

/** The marks that say a food fits: its own, and those that mean more. */
export const dietMarks = (diet: string): readonly string[] => [diet, ...(alsoMeans[diet] ?? [])];

const diets: ReadonlySet<string> = new Set([
  ...Object.keys(leavesOut),
  ...Object.entries(alsoMeans).flatMap(([diet, marks]) => [diet, ...marks]),
  'halal',
  'kosher',
]);

/** Whether words speak of a diet, or of what somebody must not have: "gluten free, for Ruth", "no nuts". */
export const speaksOfDiet = (said: string, tables = safetyTables()): boolean => {
  const words = said
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
  const runs = words.flatMap((_, at) => [1, 2, 3].map((many) => words.slice(at, at + many).join(' ')));
  return runs.some(
    (run) => diets.has(run) || run.startsWith('allerg') || allergenNamed(run, tables).length > 0,
  );
};

/** What a mark means warns of an allergen: whoever relies on it by touch would else eat what she must not. */
export const warnsOfAllergen = (meaning: string, tables = safetyTables()): boolean => {
  const named = meaning.replace(/^(contains|has|with|no|free from|without) /i, '');
  return allergenNamed(named, tables).length > 0 || /\b(contains|allerg)/i.test(meaning);
};

export const dietIn = (
  item: Pick<Item, 'name' | 'diets' | 'contains' | 'freeFrom'>,
  diet: string,
  tables = safetyTables(),
): DietAnswer => {
  const left = leavesOut[diet] ?? [];
  const answers = left.map((allergen) => allergenIn(item, allergen, tables));
  const said = answers.filter(({ answer }) => answer === 'said-to-contain');
  if (said.length > 0) return { answer: 'contains', what: said.map(({ allergen }) => allergen) };
  const marks = dietMarks(diet);
  if (item.diets.some((mark) => marks.includes(mark.toLowerCase()))) return { answer: 'marked' };
  // "Gluten free" is a mark of its own; of meat, being free from milk and eggs says nothing.
  const free = answers.length > 0 && answers.every(({ answer }) => answer === 'said-free-from');
  if (free && !meatless.has(diet)) return { answer: 'marked' };
  if (meatless.has(diet) && isAnimalFood(item.name, tables)) return { answer: 'usually', what: [] };
  const usual = answers.filter(({ answer }) => answer === 'usually-contains' || answer === 'conflict');
  return usual.length > 0
    ? { answer: 'usually', what: usual.map(({ allergen }) => allergen) }
    : { answer: 'unknown' };
};

/** The name cooks use for a group of the table. */
const spoken: Readonly<Record<string, string>> = { nuts: 'tree nuts', egg: 'eggs' };
export const allergenWord = (id: string): string => spoken[id] ?? id;
