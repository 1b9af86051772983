/** How many, how much: the number first. */
import { itemsAt, placeUnder, totalOf } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { grouped } from '../describe/item.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, about, list, say } from '../handler.js';
import { findPlace } from '../refer/places.js';
import { askedItems } from './find.js';
import { nameOfGone, noneLeft } from '../refer/none-left.js';

const tellCount = (turn: Turn, items: readonly Item[], where: ReturnType<typeof placeAt> | null): Reply => {
  const { amounts, unknown } = totalOf(turn.kitchen, items);
  const names = [...new Set(items.map(({ name }) => name))];
  const memory = about(turn, items);
  const more = { memory, names, count: items.length };
  const at = where ? { at: where } : {};
  if (names.length > 1)
    return { parts: [say('count-kinds', { count: items.length, items: list(names), ...at })], ...more };
  const name = names[0]!;
  if (amounts.length === 0) {
    return { parts: [say('count-unmeasured', { count: items.length, name, ...at })], ...more };
  }
  const sums = amounts.map((amount) => ({ kind: 'amount', amount }) as const);
  const parts = [
    sums.length === 1
      ? say('count-total', { total: sums[0]!, name, ...at })
      : say('count-totals', { total: list(sums), name, ...at }),
  ];
  if (unknown > 0) parts.push(say('count-and-unknown', { count: unknown }));
  const spread = grouped(turn.kitchen, items);
  const places = new Set(spread.map(({ first }) => first.placeId));
  if (!where && places.size > 1) {
    const of = [...places].map((placeId) => {
      const here = items.filter((item) => item.placeId === placeId);
      const sum = totalOf(turn.kitchen, here).amounts[0];
      const at = placeAt(turn.kitchen, placeId);
      return sum
        ? say('count-at', { amount: { kind: 'amount', amount: sum }, at })
        : say('count-some-at', { at });
    });
    parts.push(say('count-spread', { places: list(of) }));
  } else if (!where) parts.push(say('count-where', { at: placeAt(turn.kitchen, spread[0]!.first.placeId) }));
  return { parts, ...more };
};

/** "How many things are in the freezer", where there are two: in all, and in each. */
const countEach = (turn: Turn, ids: readonly string[]): Reply => {
  const whole = ids.filter((id) => !ids.some((other) => other !== id && placeUnder(turn.kitchen, id, other)));
  const each = whole.map((id) => ({
    count: itemsAt(turn.kitchen, id).length,
    at: placeAt(turn.kitchen, id),
  }));
  const sum = each.reduce((total, one) => total + one.count, 0);
  return {
    parts: [say('count-each', { count: sum, places: list(each.map((one) => say('count-in', one))) })],
    count: sum,
    names: [],
  };
};

export const count: Handler = (act, turn) => {
  const { items, unknown, named } = askedItems(act, turn);
  const place = findPlace(turn, act.slots.place);
  if (place.found === 'one') {
    const at = placeAt(turn.kitchen, place.place.id);
    const here = named
      ? items.filter(({ placeId }) => placeUnder(turn.kitchen, placeId, place.place.id))
      : itemsAt(turn.kitchen, place.place.id);
    if (here.length === 0) return { parts: [say('count-none-at', { at })], count: 0, names: [] };
    if (!named) {
      return {
        parts: [say('count-things', { count: here.length, at })],
        count: here.length,
        memory: about(turn, here),
      };
    }
    return tellCount(turn, here, at);
  }
  if (place.found === 'several' && !named)
    return countEach(
      turn,
      place.choices.flatMap(({ ids }) => ids),
    );
  if (items.length > 0) return tellCount(turn, items, null);
  const gone = unknown ?? nameOfGone(turn, act.slots.item?.candidates.map(({ id }) => id) ?? []);
  if (gone) return noneLeft(turn, gone);
  return { parts: [], ask: { slot: 'item', question: say('ask-count'), expecting: 'item' } };
};
