/** What stands between two things, by the sides of the shelf that are recorded for them. */
import { itemsRightAt } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { spotIn } from '../../understanding/index.js';
import type { Say } from '../../speech/answer.js';
import { placeAt } from '../describe/place.js';
import { itemFeel } from '../describe/touch.js';
import { type Handler, type Turn, about, list, say } from '../handler.js';
import { findItems } from '../refer/items.js';
import { insidePlace, findPlace } from '../refer/places.js';

/** Of all that each may be, two that stand on one shelf. */
const pairOf = (ones: readonly Item[], others: readonly Item[]): readonly [Item, Item] | null => {
  for (const one of ones)
    for (const other of others)
      if (one.id !== other.id && one.placeId !== null && one.placeId === other.placeId) return [one, other];
  return null;
};

/** The record's sides, in order from one end of a shelf to the other, and from the front to the back. */
const ways = [
  ['left', 'middle', 'right'],
  ['front', 'middle', 'back'],
] as const;

const sideOf = (turn: Turn, { spot }: Item): string =>
  spot === null ? '' : spotIn(spot, turn.kitchen.household.locale).side;

/** Those whose side lies between the sides of the two; null where their sides are not recorded, or the same. */
const inBetween = (
  turn: Turn,
  [one, other]: readonly [Item, Item],
  shelf: readonly Item[],
): readonly Item[] | null => {
  for (const way of ways) {
    const at = (item: Item): number => (way as readonly string[]).indexOf(sideOf(turn, item));
    const ends = [at(one), at(other)];
    const [from, to] = [Math.min(...ends), Math.max(...ends)];
    if (from < 0 || from === to) continue;
    return shelf.filter((item) => at(item) > from && at(item) < to);
  }
  return null;
};

const neighbour = (turn: Turn, item: Item): Say => {
  const feel = itemFeel(turn.kitchen, item);
  return say('reach-neighbour', { name: item.name, ...(feel ? { feel } : {}) });
};

/** "What is between the rice and the barley?" */
export const tellBetween: Handler = ({ slots }, turn) => {
  const { item, items = [] } = slots;
  const there = insidePlace(turn, findPlace(turn, item?.at ?? undefined));
  const meant = (one: typeof item): readonly Item[] => {
    const all = findItems(turn, one ? { ...one, at: null } : undefined).items;
    const here = all.filter(there);
    return here.length > 0 ? here : all;
  };
  const [ones, others] = [meant(item), meant(items[0])];
  const pair = pairOf(ones, others);
  const [one, other] = pair ?? [ones[0], others[0]];
  if (!one || !other) {
    const words = (one ? items[0] : item)?.words ?? '';
    return { parts: [say('no-such-item', { name: words })] };
  }
  const args = { one: one.name, other: other.name, at: placeAt(turn.kitchen, one.placeId) };
  if (!pair)
    return {
      parts: [say('between-apart', { ...args, there: placeAt(turn.kitchen, other.placeId) })],
      memory: about(turn, [one, other]),
    };
  const shelf = itemsRightAt(turn.kitchen, one.placeId!).filter(({ id }) => id !== one.id && id !== other.id);
  const between = inBetween(turn, pair, shelf);
  const told = (between ?? shelf).slice(0, 4);
  const phrase = between === null ? 'between-unknown' : told.length > 0 ? 'between-told' : 'between-nothing';
  return {
    parts: [
      say(phrase, { ...args, items: list(told.map((each) => neighbour(turn, each))), count: told.length }),
    ],
    memory: about(turn, told.length > 0 ? told : [one, other]),
    names: told.map(({ name }) => name),
    count: told.length,
  };
};
