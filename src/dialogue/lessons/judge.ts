/** Whether a task of a lesson is done: by what holds now, in any wording. */
import { foodKey, livingItems, pathOf } from '../../kitchen/index.js';
import type { Item, Kitchen } from '../../kitchen/model.js';
import { stateOf } from '../state.js';
import type { Work } from '../turn/work.js';
import type { Condition } from './files.js';
import { cutTalkedOf } from '../outages/the-cut.js';

const named = (kitchen: Kitchen, name: string): readonly Item[] =>
  livingItems(kitchen).filter((item) => foodKey(item.name) === foodKey(name));

const isIn = (kitchen: Kitchen, { placeId }: Item, place: string): boolean =>
  pathOf(kitchen, placeId).some(({ name, aliases }) => [name, ...aliases].includes(place));

const there = (
  kitchen: Kitchen,
  { name, in: place, date, marked }: Extract<Condition, { there: unknown }>['there'],
): boolean =>
  named(kitchen, name).some(
    (item) =>
      (place === undefined || isIn(kitchen, item, place)) &&
      (date === undefined || date in item.dates) &&
      (marked === undefined || (item.markerId !== null) === marked),
  );

/** `meant`: what was asked or done in this turn. */
export const holds = (work: Work, condition: Condition, meant: readonly string[]): boolean => {
  const { kitchen, state } = work;
  const before = stateOf(work.before);
  const told = (name: string): boolean =>
    state.memory.items.some((id) => {
      const item = kitchen.items.get(id);
      return item !== undefined && foodKey(item.name) === foodKey(name);
    }) || work.names.some((one) => foodKey(one) === foodKey(name));
  if ('told' in condition) return meant.length > 0 && [condition.told, ...condition.also].every(told);
  if ('there' in condition) return there(kitchen, condition.there);
  if ('gone' in condition) return named(kitchen, condition.gone).length === 0;
  if ('listed' in condition)
    return [...kitchen.purchases.values()].some(({ name }) => foodKey(name) === foodKey(condition.listed));
  if ('act' in condition) return meant.some((intent) => condition.act.includes(intent));
  if ('procedure' in condition) return state.procedure?.kind === condition.procedure;
  if ('step' in condition) return state.procedure === null || state.procedure.at >= condition.step;
  if ('session' in condition) return state.session?.kind === condition.session;
  if ('doors' in condition) return cutTalkedOf(work)?.doors === condition.doors;
  return condition.ended === 'procedure'
    ? before.procedure !== null && state.procedure === null
    : before.session?.kind === 'count' && (state.session?.kind !== 'count' || state.session.paused);
};
