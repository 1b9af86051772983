/** What nobody said a date of. */
import { livingItems } from '../../kitchen/index.js';
import { withoutDate } from '../../safety/index.js';
import { groupName, grouped, toldGroups } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { type Handler, list, say } from '../handler.js';
import { findPlace, insidePlace } from '../refer/places.js';

export const noDate: Handler = (act, turn) => {
  const place = findPlace(turn, act.slots.place);
  const all = withoutDate(livingItems(turn.kitchen)).filter(insidePlace(turn, place));
  if (all.length === 0) return { parts: [say('all-dated')], count: 0, names: [] };
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
