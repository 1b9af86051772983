/** Power cuts: told, told more of, and what they came to for each food. */
import type { FoodEvent, Id, Item, Kitchen, Op, PowerCut } from '../model.js';
import { change, itemOp, op, refuse, type Doing, type Result } from '../doing.js';
import { withEvent } from '../history.js';
import { placeUnder } from '../places.js';

type PowerEvent = Extract<FoodEvent, { readonly kind: 'power' }>;

/** The one that was told of last; null when none was ever told of. */
export const lastPowerCut = ({ powerCuts }: Pick<Kitchen, 'powerCuts'>): PowerCut | null =>
  [...powerCuts.values()].reduce<PowerCut | null>(
    (last, one) => (last === null || one.toldAt >= last.toldAt ? one : last),
    null,
  );

/** Whether that cut reached a place: all cold places, or those in the appliances that were named. */
export const isInCut = (
  kitchen: Pick<Kitchen, 'places'>,
  { placeIds }: PowerCut,
  placeId: Id | null,
): boolean =>
  placeIds === null || (placeId !== null && placeIds.some((id) => placeUnder(kitchen, placeId, id)));

const isOf = (cut: PowerCut, event: FoodEvent): event is PowerEvent =>
  event.kind === 'power' && event.cutId === cut.id;

/** The item with what the cut came to for it in place of what it was thought to be; null when nothing differs. */
const afterCut = (
  item: Item,
  cut: PowerCut,
  before: PowerCut | null,
  came: PowerEvent['came'],
): Op | null => {
  const known = item.history ?? [];
  // What it came to where it lay earlier in the cut was written down as it left there, and stays.
  const others = known.filter((one) => !isOf(cut, one) || one.to !== before?.backAt);
  const event = { kind: 'power', cutId: cut.id, from: cut.since, to: cut.backAt ?? cut.since, came } as const;
  const history =
    came === 'kept' ? others : (withEvent({ ...item, history: others }, event).history ?? others);
  if (JSON.stringify(history) === JSON.stringify(known)) return null;
  return itemOp(item, { history });
};

/**
 * A cut as it is known now, new or told more of; `came` is what it cost the food that lies in it, once it is over.
 * Refused: nothing-changes.
 */
export const tellPowerCut = (
  { kitchen }: Doing,
  cut: PowerCut,
  came: ReadonlyMap<Id, PowerEvent['came']>,
): Result => {
  const before = kitchen.powerCuts.get(cut.id) ?? null;
  const same =
    before !== null && JSON.stringify(before) === JSON.stringify({ ...cut, toldAt: before.toldAt });
  const told = same ? [] : [op('powerCut', cut.id, before, cut)];
  const foods = [...came].flatMap(([id, verdict]) => {
    const item = kitchen.items.get(id);
    const made = item && item.gone === null ? afterCut(item, cut, before, verdict) : null;
    return made ? [made] : [];
  });
  const ops = [...told, ...foods];
  return ops.length === 0 ? refuse('nothing-changes') : change('told of a power cut', [], ops);
};

/** It leaves the place that has no power, and takes with it what the cut came to so far. */
export const leftInCut = (item: Item, cut: PowerCut, at: string, came: 'lost' | 'doubtful'): Item => ({
  ...item,
  ...withEvent(item, { kind: 'power', cutId: cut.id, from: cut.since, to: at, came }),
});
