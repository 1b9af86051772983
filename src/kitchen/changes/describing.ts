/** Facts told later: what an item is called, contains, when it was made, how it is got ready. */
import { ingredientIn } from '../ingredients.js';
import type { Amount } from '../../terms/amount.js';
import { isPlainDate, type PlainDate } from '../../terms/dates.js';
import type { Touch } from '../../terms/touch.js';
import type { DateKind, Id, Item, Op, Preparation } from '../model.js';
import { change, itemOp, livingItem, refuse, type Doing, type Result } from '../doing.js';
import { isSome } from '../amounts.js';
import { batchOf } from '../items.js';

interface ListEdit {
  readonly add?: readonly string[];
  readonly remove?: readonly string[];
}

/** What is told of an item. Left out: unchanged. Null: not known any more. */
export interface Facts {
  readonly name?: string;
  readonly amount?: Amount | null;
  /** Parts replace those recorded; the rest stays. */
  readonly touch?: Touch;
  readonly spot?: string | null;
  readonly dates?: Readonly<Partial<Record<DateKind, PlainDate | null>>>;
  readonly maker?: string | null;
  readonly ownerId?: Id | null;
  readonly diets?: ListEdit;
  readonly contains?: ListEdit;
  readonly freeFrom?: ListEdit;
  readonly cautions?: ListEdit;
  readonly notes?: ListEdit;
  readonly codes?: ListEdit;
  /** Replaces the one with the same method and start, else is added. */
  readonly preparation?: Preparation;
  /** Also for the other containers of its batch: for facts about the dish, not about the container. */
  readonly wholeBatch?: boolean;
  /** The cook was asked and is sure that it no longer contains what it was said to contain. */
  readonly sure?: boolean;
}

const edited = (list: readonly string[], edit: ListEdit | undefined): readonly string[] => {
  if (!edit) return list;
  const kept = list.filter((entry) => !edit.remove?.includes(entry));
  return [...kept, ...(edit.add ?? []).filter((entry) => !kept.includes(entry))];
};

const datesWith = (dates: Item['dates'], told: Facts['dates']): Item['dates'] =>
  Object.fromEntries(
    Object.entries({ ...dates, ...told }).filter(([, day]) => day !== null && day !== undefined),
  );

const preparationsWith = (
  old: readonly Preparation[],
  told: Preparation | undefined,
): readonly Preparation[] =>
  told ? [...old.filter(({ method, from }) => method !== told.method || from !== told.from), told] : old;

/** What is in it is kept as a note, and is of the dish; any other note is of the one container. */
const inDish = ({ notes }: Facts): Pick<Facts, 'notes'> => {
  const add = notes?.add?.filter((note) => ingredientIn(note) !== null) ?? [];
  return add.length > 0 ? { notes: { add } } : {};
};

/** Facts about the dish hold for every container of it; how much, where and how it feels do not. */
const forOthers = (facts: Facts): Facts => {
  const { name, dates, maker, diets, contains, freeFrom, cautions, preparation } = facts;
  return {
    ...inDish(facts),
    name,
    dates: dates?.made === undefined ? undefined : { made: dates.made },
    maker,
    diets,
    contains,
    freeFrom,
    cautions,
    preparation,
  } as Facts;
};

/** Told open, since nobody knows when; with a day it needs no mark of its own. */
const openWith = ({ open, ...item }: Item, opened: PlainDate | null | undefined): Item =>
  opened === null || (open && opened === undefined) ? { ...item, open: true } : item;

const withFacts = (known: Item, facts: Facts): Item => {
  const item = openWith(known, facts.dates?.opened);
  const contains = edited(item.contains, facts.contains);
  const newlyFree = facts.freeFrom?.add ?? [];
  return {
    ...item,
    name: facts.name?.trim() ?? item.name,
    amount: facts.amount === undefined ? item.amount : facts.amount,
    amountAtFirst:
      facts.amount && (item.amountAtFirst === null || item.amountAtFirst.unit !== facts.amount.unit)
        ? facts.amount
        : item.amountAtFirst,
    touch: { ...item.touch, ...facts.touch },
    spot: facts.spot === undefined ? item.spot : facts.spot,
    dates: datesWith(item.dates, facts.dates),
    maker: facts.maker === undefined ? item.maker : facts.maker,
    ownerId: facts.ownerId === undefined ? item.ownerId : facts.ownerId,
    diets: edited(item.diets, facts.diets),
    contains: contains.filter((allergen) => !newlyFree.includes(allergen)),
    // Told to contain it, it is no longer told to be free from it.
    freeFrom: edited(item.freeFrom, facts.freeFrom).filter(
      (allergen) => !facts.contains?.add?.includes(allergen),
    ),
    cautions: edited(item.cautions, facts.cautions),
    notes: edited(item.notes, facts.notes),
    ...(facts.codes ? { codes: edited(item.codes ?? [], facts.codes) } : {}),
    preparations: preparationsWith(item.preparations, facts.preparation),
  };
};

/**
 * Records facts about an item, or about every container of its batch.
 * Refused: unknown-item, already-gone, no-name, not-an-amount, not-a-date, unknown-person,
 * contains-it (told free from what it is recorded to contain, and not `sure`), nothing-changes.
 */
export const amend = (doing: Doing, itemId: Id, facts: Facts): Result => {
  const item = livingItem(doing.kitchen, itemId);
  if ('refused' in item) return item;
  if (facts.name !== undefined && facts.name.trim() === '') return refuse('no-name');
  // None left is finishing it, not a fact about it.
  if (facts.amount && !isSome(facts.amount)) return refuse('not-an-amount');
  if (facts.ownerId && !doing.kitchen.people.has(facts.ownerId)) {
    return refuse('unknown-person', { ids: [facts.ownerId] });
  }
  if (Object.values(facts.dates ?? {}).some((day) => day !== null && !isPlainDate(day)))
    return refuse('not-a-date');
  const others = facts.wholeBatch ? batchOf(doing.kitchen, item).filter(({ id }) => id !== itemId) : [];
  if (!facts.sure) {
    const against = (facts.freeFrom?.add ?? []).filter((allergen) =>
      [item, ...others].some((one) => one.contains.includes(allergen)),
    );
    if (against.length > 0) return refuse('contains-it', { ids: [itemId], about: against });
  }
  const pairs: readonly (readonly [Item, Item])[] = [
    [item, withFacts(item, facts)],
    ...others.map((other) => [other, withFacts(other, forOthers(facts))] as const),
  ];
  const ops: readonly Op[] = pairs
    .filter(([before, after]) => JSON.stringify(before) !== JSON.stringify(after))
    .map(([before, after]) => itemOp(before, after));
  return ops.length === 0
    ? refuse('nothing-changes', { ids: [itemId], about: [item.name] })
    : change('amended', [item.name], ops);
};
