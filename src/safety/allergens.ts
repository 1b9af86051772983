/**
 * Allergen groups by law, and what can be said of an item. What is not recorded is unknown: a food is
 * never taken to be free from anything. That such a food usually holds something is a caution only.
 */
import { ingredientIn } from '../kitchen/ingredients.js';
import type { Item, Kitchen, Person, Region } from '../kitchen/model.js';
import type { AllergenRow } from '../../shared/tables/schema.js';
import type { Allergen, AllergenAnswer, Caution } from './api.js';
import { caution } from './cautions.js';
import { besideKind, namedParts } from './match.js';
import { regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { foodWords } from './words.js';

const show = (row: AllergenRow, region: Region, tables: SafetyTables): Allergen => ({
  id: row.id,
  name: row.name,
  also: row.also,
  regions: row.regions,
  source: cite(tables, {
    source: regionFacts(region).allergenSource(row) ?? row.source_us ?? row.source_uk ?? 'common-practice',
    section: null,
    basis: row.basis,
  }),
});

/** The groups a region's law names: nine in the US, fourteen in the UK. */
export const allergensOf = (region: Region, tables = safetyTables()): readonly Allergen[] =>
  tables.allergens.filter((row) => row.regions.includes(region)).map((row) => show(row, region, tables));

const key = (word: string): string => foodWords(word).join(' ');
const indexes = new WeakMap<SafetyTables, ReadonlyMap<string, readonly string[]>>();
const indexOf = (tables: SafetyTables): ReadonlyMap<string, readonly string[]> => {
  const known = indexes.get(tables);
  if (known !== undefined) return known;
  const index = new Map<string, string[]>();
  for (const row of tables.allergens) {
    for (const name of [row.id, row.name, ...row.also]) {
      const ids = index.get(key(name)) ?? [];
      if (!ids.includes(row.id)) ids.push(row.id);
      index.set(key(name), ids);
    }
  }
  indexes.set(tables, index);
  return index;
};

/** The groups a word belongs to: "prawns" is crustaceans; "wheat" is wheat and, in the UK, gluten. */
export const allergenNamed = (word: string, tables = safetyTables()): readonly string[] =>
  indexOf(tables).get(key(word)) ?? [];

/** True when one word names the other's group, or both are the same word that no law lists. */
const sameAllergen = (one: string, other: string, tables: SafetyTables): boolean => {
  if (key(one) === key(other)) return true;
  const [a, b] = [allergenNamed(one, tables), allergenNamed(other, tables)];
  // A person who avoids "nuts" is warned of almonds; one who avoids almonds is warned of "nuts".
  return (
    a.some((id) => b.includes(id)) ||
    (a.includes('gluten') && b.includes('wheat')) ||
    (a.includes('wheat') && b.includes('gluten'))
  );
};

/** The same group by another word: who watches for "crustacean shellfish" watches for crustaceans. */
export const watchesFor = (
  { allergens }: Pick<Person, 'allergens'>,
  one: string,
  tables = safetyTables(),
): boolean => {
  const ids = allergenNamed(one, tables);
  return allergens.some(
    (kept) => ids.length > 0 && ids.every((id) => allergenNamed(kept, tables).includes(id)),
  );
};

/** What is known of one allergen in one item. */
export const allergenIn = (
  item: Pick<Item, 'name' | 'contains' | 'freeFrom'> & Partial<Pick<Item, 'notes'>>,
  allergen: string,
  tables = safetyTables(),
): AllergenAnswer => {
  // "There's celery in it", where celery is no allergen of the region: somebody may watch for it all the same.
  const told = (item.notes ?? []).flatMap((note) => ingredientIn(note) ?? []);
  const said =
    [...item.contains, ...told].some((word) => sameAllergen(word, allergen, tables)) ||
    isThatFood(item.name, allergen, tables);
  const frees = (word: string): boolean => key(word) === key(allergen) || freesFrom(word, allergen, tables);
  const free = item.freeFrom.some(frees);
  const usual = usualAllergens(item.name, tables).some((id) => sameAllergen(id, allergen, tables));
  if (said) return { allergen, answer: 'said-to-contain' };
  if (free) return { allergen, answer: usual ? 'conflict' : 'said-free-from' };
  // "Dairy-free cheese": a claim of whoever named it, worth less than one told, and no reason to call it milk.
  const claimed = claimsIn(item.name).some(({ of }) => frees(of));
  return { allergen, answer: !usual ? 'unknown' : claimed ? 'conflict' : 'usually-contains' };
};

/** Somebody watches for strawberries, or for the peanut stew: what goes by that name holds it. */
const isThatFood = (name: string, watched: string, tables: SafetyTables): boolean => {
  const words = new Set(foodWords(withoutClaims(name)));
  const of = foodWords(watched);
  return of.length > 0 && allergenNamed(watched, tables).length === 0 && of.every((word) => words.has(word));
};

/** "Nut-free granola", "cheese free from dairy": what a name says is not in it, and the name without that. */
const claimsIn = (name: string): readonly { readonly of: string; readonly words: string }[] =>
  [
    ...name.toLowerCase().matchAll(/\b((?:tree )?[a-z]+)[- ]free\b|\bfree (?:from|of) ((?:tree )?[a-z]+)/g),
  ].map(([words, before, after]) => ({ of: before ?? after ?? '', words }));
/** Foods named after another that is not in them. Common practice. */
const NAMED_AFTER =
  /\b(butter (bean|lettuce)|cream (cracker|soda|of tartar)|oyster mushroom|crab apple|cocoa butter)\b/;
const withoutClaims = (name: string): string =>
  claimsIn(name)
    .reduce((rest, { words }) => rest.replace(words, ' '), name.toLowerCase())
    .trim();

/** "Free from gluten" does not free from wheat (21 CFR 101.91), nor "free from almonds" from nuts. */
const freesFrom = (said: string, asked: string, tables: SafetyTables): boolean => {
  const group = tables.allergens.find(
    (row) => row.id === said || key(row.name) === key(said) || groupNoun(row, said),
  );
  // "Shellfish" is of two groups: what is free from one of them is not free from it.
  const wanted = allergenNamed(asked, tables).filter((id) => id !== 'gluten');
  return (
    group !== undefined && group.id !== 'gluten' && wanted.length > 0 && wanted.every((id) => id === group.id)
  );
};
const GROUP_NOUNS: Readonly<Record<string, readonly string[]>> = {
  milk: ['dairy'],
  egg: ['egg'],
  nuts: ['nuts', 'nut'],
  peanuts: ['peanut'],
  soy: ['soy', 'soya'],
  crustaceans: ['crustacean', 'shellfish'],
};
const groupNoun = (row: AllergenRow, said: string): boolean =>
  (GROUP_NOUNS[row.id] ?? []).some((noun) => key(noun) === key(said));

/**
 * Groups such a food usually holds, by its name alone: what its kind does, and each food and group that the name
 * names ("cream of leek soup", "prawn and walnut salad"). Never complete.
 */
export const usualAllergens = (name: string, tables = safetyTables()): readonly string[] => {
  const plain = withoutClaims(name);
  const groups = NAMED_AFTER.test(foodWords(plain).join(' '))
    ? []
    : besideKind(plain, tables).flatMap((word) => allergenNamed(word, tables));
  return [...new Set([...namedParts(plain, tables).flatMap(({ contains }) => contains), ...groups])];
};

export interface AllergenWarning extends AllergenAnswer {
  readonly personId: string;
}

/** What the people who eat here must be told of an item: contained, usually contained, or in conflict. */
export const allergenWarnings = (
  item: Pick<Item, 'name' | 'contains' | 'freeFrom'>,
  people: Iterable<Person>,
  tables = safetyTables(),
): readonly AllergenWarning[] => {
  const warnings: AllergenWarning[] = [];
  for (const person of people) {
    for (const allergen of person.allergens) {
      const found = allergenIn(item, allergen, tables);
      if (found.answer !== 'said-free-from' && found.answer !== 'unknown')
        warnings.push({ ...found, personId: person.id });
    }
  }
  return warnings;
};

/** Cautions to say before a dish is heated or eaten: allergens, spice, what the cook recorded. */
export const eatingCautions = (
  kitchen: Pick<Kitchen, 'people'>,
  item: Item,
  tables = safetyTables(),
): readonly Caution[] => {
  const cautions: Caution[] = [];
  if (item.contains.length > 0) cautions.push(caution('allergen', { allergens: item.contains.join(', ') }));
  const watched = allergenWarnings(item, kitchen.people.values(), tables).filter(
    (each) => each.answer !== 'said-to-contain',
  );
  const usual = [...new Set(watched.map((each) => each.allergen))];
  if (usual.length > 0) cautions.push(caution('allergen-usual', { allergens: usual.join(', ') }));
  const watching = [...kitchen.people.values()].some((each) => each.eatsHere && each.allergens.length > 0);
  if (watching && item.contains.length === 0 && usual.length === 0)
    cautions.push(caution('allergens-unknown'));
  for (const words of item.cautions) {
    cautions.push(
      caution(/\b(spicy|spice|hot|chilli|chili|pepper)\b/i.test(words) ? 'spicy' : 'recorded', { words }),
    );
  }
  return cautions;
};
