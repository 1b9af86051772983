/** What every change builder is given, and what it gives back. */
import type { Amount } from '../terms/amount.js';
import type { Clock } from '../terms/dates.js';
import type { Change, Id, Item, JournalEntry, Kitchen, Op, RecordKind, Records, Verb } from './model.js';
import { joinChanges, applyChange } from './apply.js';

/** Who does it, when, in which kitchen. Dialogue's surroundings fit here as they are. */
export interface Doing {
  readonly kitchen: Kitchen;
  readonly clock: Clock;
  readonly speaker: { readonly personId: Id | null };
  readonly newId: () => Id;
}

/** Who did what an entry says: whoever it was told of, else whoever told it. */
export const doerOf = ({ doerId, personId }: JournalEntry): Id | null => doerId ?? personId;

/** Why a change cannot be made. Codes, not words: dialogue says them. */
export type Reason =
  /** No such record here. `ids` is what was asked for. */
  | 'unknown-item'
  | 'unknown-place'
  | 'unknown-marker'
  | 'unknown-person'
  | 'unknown-purchase'
  | 'unknown-reminder'
  | 'unknown-note'
  | 'unknown-stock-take'
  /** The item was used up or thrown out earlier. */
  | 'already-gone'
  /** It is not gone, so it cannot be brought back. */
  | 'still-here'
  /** The record would be as it is now. */
  | 'nothing-changes'
  | 'no-name'
  /** Nobody said how much there is, so nothing can be taken off. */
  | 'amount-unknown'
  /** `have` is what there is. */
  | 'more-than-there-is'
  /** "two tubs" of something kept in grams. `have` is what there is. */
  | 'unit-differs'
  | 'not-an-amount'
  /** `ids` is the living item it stands on. */
  | 'marker-in-use'
  | 'no-marker'
  /** `ids` are the markers that feel the same. */
  | 'looks-alike'
  /** Nothing was said of how it feels. */
  | 'no-touch'
  | 'not-a-freezer'
  /** More than one freezer, or none: `ids` are those there are. */
  | 'which-freezer'
  | 'already-frozen'
  | 'not-frozen'
  | 'not-out'
  /** Items with different names; `ids` are those that differ. */
  | 'different-foods'
  | 'too-few'
  /** Said to contain what it is now said to be free from. `about` names the allergens. */
  | 'contains-it'
  /** `ids` are the items in it. */
  | 'place-not-empty'
  | 'place-exists'
  | 'place-inside-itself'
  /** `ids` are the purchases. */
  | 'already-listed'
  | 'list-empty'
  | 'person-exists'
  /** Already being checked: `ids` is the stock-take to resume. */
  | 'check-open'
  | 'check-closed'
  | 'too-many'
  | 'in-the-past'
  /** Somebody changed it since: `ids` and `about` name what. */
  | 'changed-since'
  | 'nothing-to-undo'
  | 'not-a-date'
  | 'bad-setting';

export interface Refused {
  readonly refused: Reason;
  readonly ids?: readonly Id[];
  readonly about?: readonly string[];
  readonly have?: Amount;
}

/** A change ready to be journalled, or why not. */
export type Result = Change | Refused;

export const isRefused = (result: Result): result is Refused => 'refused' in result;

export const refuse = (refused: Reason, more: Omit<Refused, 'refused'> = {}): Refused => ({
  refused,
  ...more,
});

/** One op; null when nothing differs is for the caller to see. */
export const op = <K extends RecordKind>(
  kind: K,
  id: Id,
  before: Records[K] | null,
  after: Records[K] | null,
): Op => ({ kind, id, before, after }) as unknown as Op;

export const change = (verb: Verb, about: readonly string[], ops: readonly Op[]): Change => ({
  verb,
  about,
  ops,
});

/** A living item, or why not. */
export const livingItem = (kitchen: Kitchen, id: Id): Item | Refused => {
  const item = kitchen.items.get(id);
  if (!item) return refuse('unknown-item', { ids: [id] });
  if (item.gone) return refuse('already-gone', { ids: [id], about: [item.name] });
  return item;
};

/** Replaces some fields of an item. */
export const itemOp = (before: Item, fields: Partial<Item>): Op =>
  op('item', before.id, before, { ...before, ...fields });

/**
 * Steps made one after the other, each seeing the kitchen as the one before left it,
 * joined into one change that is undone together. The first refusal refuses all.
 */
export const together = (doing: Doing, steps: readonly ((doing: Doing) => Result)[]): Result => {
  const made: Change[] = [];
  let kitchen = doing.kitchen;
  for (const step of steps) {
    const result = step({ ...doing, kitchen });
    if (isRefused(result)) return result;
    made.push(result);
    kitchen = applyChange(kitchen, result);
  }
  const [first, ...rest] = made;
  return first ? joinChanges(first, ...rest) : refuse('too-few');
};
