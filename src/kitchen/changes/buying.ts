/** The list to buy. */
import type { Amount } from '../../terms/amount.js';
import type { Id, Kitchen, Purchase } from '../model.js';
import { change, op, refuse, type Doing, type Refused, type Result } from '../doing.js';
import { foodKey } from '../names.js';

/** The line for that food, or null. */
export const purchaseOf = (kitchen: Kitchen, name: string): Purchase | null =>
  [...kitchen.purchases.values()].find((purchase) => foodKey(purchase.name) === foodKey(name)) ?? null;

/** The list by section of a shop, lines without one last; in the order they were put on. */
export const shoppingList = (kitchen: Kitchen): readonly Purchase[] =>
  [...kitchen.purchases.values()].sort(
    (a, b) =>
      Number(a.section === null) - Number(b.section === null) ||
      (a.section ?? '').localeCompare(b.section ?? '', 'en') ||
      a.addedAt.localeCompare(b.addedAt),
  );

/** Only what was said of it stands in a line. */
const kept = <K extends 'shop' | 'note' | 'forPersonId'>(
  key: K,
  wanted: SaidOfLine,
  listed: Purchase | null,
): Partial<Pick<Purchase, K>> => {
  const value = wanted[key] ?? listed?.[key] ?? null;
  return value === null ? {} : ({ [key]: value } as Pick<Purchase, K>);
};

/** What may be said of a line beside its name. */
export interface SaidOfLine {
  readonly amount?: Amount | null;
  readonly section?: string | null;
  readonly replaces?: Id | null;
  readonly shop?: string | null;
  readonly note?: string | null;
  readonly forPersonId?: Id | null;
}

/**
 * Puts a line on the list. A line for the same food is refused (already-listed) unless something new
 * is said of it; then it is changed. Refused: no-name, unknown-person, already-listed.
 */
export const buyAdd = (doing: Doing, wanted: SaidOfLine & { readonly name: string }): Result => {
  const name = wanted.name.trim();
  if (foodKey(name) === '') return refuse('no-name');
  const { forPersonId } = wanted;
  if (forPersonId && !doing.kitchen.people.has(forPersonId))
    return refuse('unknown-person', { ids: [forPersonId] });
  const listed = purchaseOf(doing.kitchen, name);
  const after: Purchase = {
    id: listed?.id ?? doing.newId(),
    name: listed?.name ?? name,
    amount: wanted.amount ?? listed?.amount ?? null,
    section: wanted.section ?? listed?.section ?? null,
    addedAt: listed?.addedAt ?? doing.clock.now,
    addedBy: listed ? listed.addedBy : doing.speaker.personId,
    replaces: wanted.replaces ?? listed?.replaces ?? null,
    ...kept('shop', wanted, listed),
    ...kept('note', wanted, listed),
    ...kept('forPersonId', wanted, listed),
  };
  if (listed && JSON.stringify(listed) === JSON.stringify(after)) {
    return refuse('already-listed', { ids: [listed.id], about: [listed.name] });
  }
  return change('put on the list', [after.name], [op('purchase', after.id, listed, after)]);
};

const linesOf = (kitchen: Kitchen, ids: readonly Id[]): readonly Purchase[] | Refused => {
  const lines: Purchase[] = [];
  for (const id of new Set(ids)) {
    const line = kitchen.purchases.get(id);
    if (!line) return refuse('unknown-purchase', { ids: [id] });
    lines.push(line);
  }
  return lines.length === 0 ? refuse('list-empty') : lines;
};

const off = (verb: 'took off the list' | 'bought', lines: readonly Purchase[] | Refused): Result =>
  'refused' in lines
    ? lines
    : change(
        verb,
        lines.map(({ name }) => name),
        lines.map((line) => op('purchase', line.id, line, null)),
      );

/** Takes lines off the list. Refused: unknown-purchase, list-empty. */
export const buyRemove = (doing: Doing, purchaseIds: readonly Id[]): Result =>
  off('took off the list', linesOf(doing.kitchen, purchaseIds));

/** Empties the list. Refused: list-empty. */
export const buyClear = (doing: Doing): Result => buyRemove(doing, [...doing.kitchen.purchases.keys()]);

/** Lines that were bought; putting them away comes next. Refused: unknown-purchase, list-empty. */
export const buyGot = (doing: Doing, purchaseIds: readonly Id[]): Result =>
  off('bought', linesOf(doing.kitchen, purchaseIds));

/**
 * Part of a line was bought: so much of it stays on the list. Refused: unknown-purchase, list-empty.
 */
export const buySome = (doing: Doing, purchaseId: Id, left: Amount): Result => {
  const lines = linesOf(doing.kitchen, [purchaseId]);
  if ('refused' in lines) return lines;
  const [line] = lines;
  return change('bought', [line!.name], [op('purchase', line!.id, line!, { ...line!, amount: left })]);
};
