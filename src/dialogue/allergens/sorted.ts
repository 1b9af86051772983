/** What of some food holds what somebody watches for, as far as anybody knows. Every thing is in one pile. */
import type { Item } from '../../kitchen/model.js';
import { allergenIn } from '../../safety/index.js';
import type { AllergenAnswer } from '../../safety/api.js';

export type Pile = 'onRecord' | 'byName' | 'inDoubt' | 'unknown' | 'free';

/** Worst first: what must be warned of most decides. */
const piles: readonly (readonly [Pile, AllergenAnswer['answer']])[] = [
  ['onRecord', 'said-to-contain'],
  ['byName', 'usually-contains'],
  ['inDoubt', 'conflict'],
  ['unknown', 'unknown'],
];

export const pileOf = (item: Item, allergens: readonly string[]): Pile => {
  const answers = allergens.map((allergen) => allergenIn(item, allergen).answer);
  return piles.find(([, answer]) => answers.includes(answer))?.[0] ?? 'free';
};

export type Sorted = Readonly<Record<Pile, readonly Item[]>>;

export const sortedBy = (pool: readonly Item[], allergens: readonly string[]): Sorted => {
  const of = (pile: Pile): readonly Item[] => pool.filter((item) => pileOf(item, allergens) === pile);
  return {
    onRecord: of('onRecord'),
    byName: of('byName'),
    inDoubt: of('inDoubt'),
    unknown: of('unknown'),
    free: of('free'),
  };
};
