/** What is no longer here: what was thrown out, or used up, newest first, whether or not the journal has it. */
import type { Item } from '../../kitchen/model.js';
import { dayOf } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { andMore, inGroups } from '../describe/lists.js';
import { type Reply, type Turn, ago, list, say } from '../handler.js';

export type GoneHow = 'thrown out' | 'used';

/** In the days that were said; where nothing went then, the last that did is told. Null where nothing ever went so. */
export const goneLately = (turn: Turn, how: GoneHow, { when }: Slots): Reply | null => {
  const days = when && when !== 'unknown' ? when : null;
  const inside = ({ gone }: Item): boolean => {
    const at = dayOf(gone!.at, turn.clock.timeZone);
    return days === null || (at >= days.day && at <= (days.until ?? days.day));
  };
  const all = [...turn.kitchen.items.values()]
    .filter(({ gone }) => gone?.how === how)
    .sort((a, b) => (a.gone!.at < b.gone!.at ? 1 : -1));
  if (all.length === 0) return null;
  const then = all.filter(inside);
  const items = then.length > 0 ? then : all.slice(0, 1);
  const entries = items.map(({ name, gone }) => say('gone-entry', { name, when: ago(gone!.at) }));
  const { first, more, left } = inGroups(entries);
  return {
    parts: [
      ...(then.length > 0 ? [] : [say('nothing-gone-then')]),
      say('gone-list', { how: how.replace(' ', '-'), items: list(first) }),
      ...andMore(left),
    ],
    more,
    names: items.map(({ name }) => name),
    count: items.length,
  };
};
