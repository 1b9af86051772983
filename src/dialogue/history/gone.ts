/** What is no longer here: what was thrown out, or used up, newest first, whether or not the journal has it. */
import type { Item } from '../../kitchen/model.js';
import { dayOf } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { andMore, inGroups } from '../describe/lists.js';
import { type Reply, type Turn, ago, list, say } from '../handler.js';

export type GoneHow = 'thrown out' | 'used';

/** Null where nothing went so in the days that were said. */
export const goneLately = (turn: Turn, how: GoneHow, { when }: Slots): Reply | null => {
  const days = when && when !== 'unknown' ? when : null;
  const inside = ({ gone }: Item): boolean => {
    if (gone?.how !== how) return false;
    const at = dayOf(gone.at, turn.clock.timeZone);
    return days === null || (at >= days.day && at <= (days.until ?? days.day));
  };
  const items = [...turn.kitchen.items.values()]
    .filter(inside)
    .sort((a, b) => (a.gone!.at < b.gone!.at ? 1 : -1));
  if (items.length === 0) return null;
  const entries = items.map(({ name, gone }) => say('gone-entry', { name, when: ago(gone!.at) }));
  const { first, more, left } = inGroups(entries);
  return {
    parts: [say('gone-list', { how: how.replace(' ', '-'), items: list(first) }), ...andMore(left)],
    more,
    names: items.map(({ name }) => name),
    count: items.length,
  };
};
