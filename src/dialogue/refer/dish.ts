/** The dish whose steps are followed: "the stew", said meanwhile, is that one. */
import type { Item } from '../../kitchen/model.js';
import type { Turn } from '../handler.js';

/** It, where it is one of those that a name fits; null where no steps of it are read. */
export const dishAmong = ({ state: { procedure } }: Turn, items: readonly Item[]): Item | null =>
  (procedure?.itemId ? items.find(({ id }) => id === procedure.itemId) : undefined) ?? null;
