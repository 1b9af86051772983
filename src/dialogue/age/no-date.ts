/** What nobody said a date of. */
import { livingItems } from '../../kitchen/index.js';
import { withoutDate } from '../../safety/index.js';
import { groupName, grouped, toldGroups } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, list, say } from '../handler.js';
import type { Item } from '../../kitchen/model.js';
import { findPlace, insidePlace } from '../refer/places.js';

export const noDate: Handler = (act, turn) => {
  const place = findPlace(turn, act.slots.place);
  const all = withoutDate(livingItems(turn.kitchen)).filter(insidePlace(turn, place));
  return all.length === 0 ? { parts: [say('all-dated')], count: 0, names: [] } : undated(turn, all);
};

/** These have none, and where they are. */
export const undated = (turn: Turn, all: readonly Item[]): Reply => {
  const groups = grouped(turn.kitchen, all);
  const entries = groups.map((group) =>
    say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) }),
  );
  const { first, more, left } = inGroups(entries);
  return {
    parts: [say('undated', { count: groups.length, items: list(first) }), ...andMore(left)],
    more,
    ...toldGroups(turn, all, groups),
  };
};
