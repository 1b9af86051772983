/**
 * The day something came in. The record holds one date for it; of what somebody made or brought nobody bought it,
 * and it is not called so.
 */
import type { DateKind, Item } from '../../kitchen/model.js';
import { isCookedFood } from '../../safety/index.js';

export type SaidKind = DateKind | 'came';

export const dateSaidAs = (kind: DateKind, { maker }: Pick<Item, 'maker'>): SaidKind =>
  kind === 'bought' && maker !== null ? 'came' : kind;

/** Cooked by somebody, and nobody said when: the day it came says only how old it is at least. */
export const madeUnknown = ({ name, dates, maker }: Item): boolean =>
  maker !== null && dates.bought !== undefined && dates.made === undefined && isCookedFood(name);
