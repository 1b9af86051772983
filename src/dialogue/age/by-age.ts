/** Things of one question that are of one age are told together. */
import { itMention } from '../../understanding/intents.js';
import type { DateKind, Item } from '../../kitchen/model.js';
import type { Group } from '../describe/item.js';
import type { Turn } from '../handler.js';

/** Things of one question that are of one age are told together. */
export const byAge = (items: readonly Item[]): Group[] => {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = `${item.name}|${JSON.stringify(item.dates)}`;
    groups.set(key, [...(groups.get(key) ?? []), item]);
  }
  return [...groups.values()].map((of) => ({ items: of, first: of[0]! }));
};

export const askedKind: Readonly<Record<string, DateKind>> = {
  made: 'made',
  bought: 'bought',
  opened: 'opened',
  frozen: 'frozen',
  thawed: 'thawed',
  useBy: 'useBy',
  bestBefore: 'bestBefore',
};

export const it = (turn: Turn) => (turn.memory.items.length > 0 ? itMention : undefined);
