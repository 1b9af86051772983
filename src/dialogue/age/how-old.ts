/** "How old is the stew": its age, and what guidance makes of it. */
import { assessIn } from '../../safety/index.js';
import { ageFrom, ageWords } from './age-parts.js';
import { dateSaidAs } from '../describe/came.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import type { Group } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { askedItems } from '../find/find.js';
import { nameOfGone, noneLeft } from '../refer/none-left.js';
import { type Handler, type Reply, type Turn, about, day, list, say } from '../handler.js';
import { oldestFirst } from '../refer/tell-apart.js';
import { needItem } from '../refer/need.js';
import { byAge } from './by-age.js';

const aboutGroup = (turn: Turn, group: Group): Reply => {
  const item = oldestFirst(group.items)[0]!;
  const found = assessIn(turn.kitchen, item, turn.clock);
  const told = found.reasons.filter(({ code }) => code !== 'at-least-days');
  const { first, rest, sources } = reasonsOf({ ...found, reasons: told });
  return {
    parts: [
      ...(found.verdict === 'unknown'
        ? [verdictWords(found, item.name)]
        : [ageWords(turn, item, item.name), verdictWords(found, null)]),
      ...(found.verdict === 'throw-out' ? first : []),
    ],
    details: [...(found.verdict === 'throw-out' ? [] : first), ...rest],
    sources,
    memory: about(turn, group.items),
    names: [item.name],
    count: group.items.length,
  };
};

export const howOld: Handler = (act, turn) => {
  const { items, unknown } = askedItems(act, turn);
  const gone = nameOfGone(turn, act.slots.item?.candidates.map(({ id }) => id) ?? []);
  if (items.length === 0 && (unknown ?? gone)) return noneLeft(turn, (unknown ?? gone)!);
  if (items.length === 0) {
    const found = needItem(turn, act.slots.item, { question: say('ask-how-old') });
    return 'reply' in found ? found.reply : aboutGroup(turn, { items: [found.got], first: found.got });
  }
  const groups = byAge(oldestFirst(items));
  if (groups.length === 1) return aboutGroup(turn, groups[0]!);
  const entries = groups.map(({ first }) => {
    const from = ageFrom(first);
    const at = placeAt(turn.kitchen, first.placeId);
    return from
      ? say('age-entry', { name: first.name, at, what: dateSaidAs(from.kind, first), date: day(from.at) })
      : say('age-entry-unknown', { name: first.name, at });
  });
  const { first, more, left } = inGroups(entries);
  const offered = groups.map((group) => group.first);
  return {
    parts: [say('ages', { count: groups.length, entries: list(first) }), ...andMore(left)],
    more,
    memory: about(turn, items, offered),
    names: offered.map(({ name }) => name),
    count: groups.length,
  };
};
