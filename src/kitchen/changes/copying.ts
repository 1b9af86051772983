/** One description for more containers: of the same batch, or made or bought anew. */
import type { Id, Item } from '../model.js';
import { change, isRefused, op, refuse, together, type Doing, type Result } from '../doing.js';
import { bringBack, putAway, type Draft } from './putting-away.js';
import { finish } from './using-up.js';

/** What is true of the food whichever container it is in. "Free from" is of the pack or the pot it came from. */
const described = (item: Item, alike: boolean): Draft => ({
  name: item.name,
  amount: item.amountAtFirst,
  touch: item.touch,
  placeId: item.placeId,
  maker: item.maker,
  ownerId: item.ownerId,
  diets: item.diets,
  contains: item.contains,
  cautions: item.cautions,
  preparations: item.preparations,
  notes: item.notes,
  ...(item.codes ? { codes: item.codes } : {}),
  ...(alike ? { dates: item.dates, freeFrom: item.freeFrom, timesReheated: item.timesReheated } : {}),
});

const chosen = (said: Partial<Draft>): Partial<Draft> =>
  Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));

/**
 * "Two more tubs like it": more containers of the same batch, with all its facts and dates; `said` wins.
 * Refused: unknown-item, and what `putAway` refuses.
 */
export const copyItem = (doing: Doing, itemId: Id, said: Partial<Draft> = {}): Result => {
  const item = doing.kitchen.items.get(itemId);
  if (!item) return refuse('unknown-item', { ids: [itemId] });
  const draft = { ...described(item, true), ...chosen(said) };
  const made = putAway(doing, { ...draft, dates: { ...item.dates, ...said.dates } });
  if (isRefused(made)) return made;
  const batchId = item.batchId ?? doing.newId();
  const joined = made.ops.map((each) =>
    each.kind === 'item' && each.after && !each.before
      ? op('item', each.id, null, { ...each.after, batchId })
      : each,
  );
  const first = item.batchId === null ? [op('item', item.id, item, { ...item, batchId })] : [];
  return change('put away', [item.name], [...first, ...joined]);
};

/**
 * "The same again, made today", of food that is here: another, described alike, with dates of its own.
 * Refused: unknown-item, and what `putAway` refuses.
 */
export const anotherLike = (doing: Doing, itemId: Id, said: Partial<Draft> = {}): Result => {
  const item = doing.kitchen.items.get(itemId);
  if (!item) return refuse('unknown-item', { ids: [itemId] });
  return item.gone
    ? bringBack(doing, itemId, { notes: item.notes, ...chosen(said) })
    : putAway(doing, { ...described(item, false), ...chosen(said) });
};

/**
 * "I refilled the jar": what was in it is used up, and the container has its description with new dates.
 * Refused: unknown-item, and what `putAway` refuses.
 */
export const refill = (doing: Doing, itemId: Id, said: Partial<Draft> = {}): Result => {
  const item = doing.kitchen.items.get(itemId);
  if (!item) return refuse('unknown-item', { ids: [itemId] });
  if (item.gone) return anotherLike(doing, itemId, said);
  return together(doing, [
    (now) => finish(now, itemId, 'used'),
    (now) => anotherLike(now, itemId, { placeId: item.placeId, spot: item.spot, ...said }),
  ]);
};
