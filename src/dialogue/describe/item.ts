/** How an item is spoken of: its name, how many, how it feels, where it is. */
import type { Item, Kitchen } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import { type Reply, type Turn, about, say } from '../handler.js';
import { placeAt } from './place.js';
import { containerWords, itemFeel } from './touch.js';

/** Containers of one food in one place that a hand cannot tell apart. */
export interface Group {
  readonly items: readonly Item[];
  readonly first: Item;
}

/** What was told group by group: what it was about, its names, and how many. */
export const toldGroups = (
  turn: Turn,
  items: readonly Item[],
  groups: readonly Group[],
): Required<Pick<Reply, 'memory' | 'names' | 'count'>> => {
  const offered = groups.map(({ first }) => first);
  return {
    memory: about(turn, items, offered),
    names: offered.map(({ name }) => name),
    count: groups.length,
  };
};

/** How its marker feels: two that feel the same tell nothing apart. */
export const markerFeel = ({ markers }: Kitchen, { markerId }: Item): string => {
  const marker = markerId === null ? undefined : markers.get(markerId);
  return marker ? JSON.stringify(Object.entries(marker.touch).sort()) : '';
};

const groupKey = (kitchen: Kitchen, item: Item): string =>
  [
    item.name,
    item.placeId,
    item.spot,
    markerFeel(kitchen, item),
    containerWords(item.touch),
    item.maker,
    item.ownerId,
  ].join('|');

/** Like with like, in the order they came. */
export const grouped = (kitchen: Kitchen, items: readonly Item[]): Group[] => {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = groupKey(kitchen, item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()].map((of) => ({ items: of, first: of[0]! }));
};

/** "four tubs" of a group, or what is left of one. Null when nobody said. */
export const groupAmount = (group: Group): Value | null => {
  const { first, items } = group;
  if (items.length === 1) return first.amount ? { kind: 'amount', amount: first.amount } : null;
  const whole = items.every((item) => item.amount && item.amount.unit === first.amount?.unit);
  if (whole && first.amount) {
    const value = items.reduce((sum, item) => sum + (item.amount?.value ?? 0), 0);
    return { kind: 'amount', amount: { value, unit: first.amount.unit } };
  }
  return { kind: 'amount', amount: { value: items.length, unit: first.touch.container ?? 'container' } };
};

/** "lentil stew", or "six tubs of bean chilli" for a group. */
export const groupName = (group: Group): Say => {
  const amount = groupAmount(group);
  return group.items.length > 1 && amount
    ? say('item-amount', { amount, name: group.first.name })
    : say('item-name', { name: group.first.name });
};

/** "on the second shelf of the fridge, left side, large jar with the glass bead". */
export const whereAndFeel = (kitchen: Kitchen, group: Group): Say => {
  const at = placeAt(kitchen, group.first.placeId, group.first.spot);
  const feel = itemFeel(kitchen, group.first);
  return feel && group.items.length === 1 ? say('where-feel', { at, feel }) : say('where-only', { at });
};

/** One entry of a list that says where: "lentil stew on the second shelf of the fridge, large tub". */
export const itemWhere = (kitchen: Kitchen, group: Group): Say =>
  say('item-where', { item: groupName(group), where: whereAndFeel(kitchen, group) });
