/** What of some food holds what somebody watches for, as far as anybody knows. Every thing is in one pile. */
import type { Item } from '../../kitchen/model.js';
import { allergenIn } from '../../safety/index.js';
import type { AllergenAnswer } from '../../safety/api.js';

export type Pile = 'onRecord' | 'byName' | 'inDoubt' | 'unknown' | 'free';

type Answer = AllergenAnswer['answer'];

/** Worst first: what must be warned of most decides. The one ranking there is. */
const piles: readonly (readonly [Pile, Answer])[] = [
  ['onRecord', 'said-to-contain'],
  ['byName', 'usually-contains'],
  ['inDoubt', 'conflict'],
  ['unknown', 'unknown'],
  ['free', 'said-free-from'],
];
const rankOf = (answer: Answer): number => piles.findIndex(([, one]) => one === answer);
/** For sorting answers, the worst first. */
export const worse = (one: Answer, other: Answer): number => rankOf(one) - rankOf(other);
/** For sorting piles, the worst first. */
export const worsePile = (one: Pile, other: Pile): number =>
  piles.findIndex(([pile]) => pile === one) - piles.findIndex(([pile]) => pile === other);

export const pileOf = (item: Item, allergens: readonly string[]): Pile => {
  const answers = allergens.map((allergen) => allergenIn(item, allergen).answer);
  return piles.find(([, answer]) => answers.includes(answer))?.[0] ?? 'free';
};

/** Of several things of one name, the one that must be warned of most. */
export const worstOf = (items: readonly Item[], allergens: readonly string[]): Item =>
  items.reduce((worst, item) =>
    worsePile(pileOf(item, allergens), pileOf(worst, allergens)) < 0 ? item : worst,
  );

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
