/** The evening's summary, on request. */
import { rankUseFirst } from '../../safety/index.js';
import type { Handler } from '../handler.js';
import { nightlySummary } from './nightly.js';

export const summary: Handler = (act, turn) => {
  const weekly = act.slots.setting === 'weekly' || act.slots.asked === 'week';
  const { answer, about } = nightlySummary(turn.kitchen, rankUseFirst(turn.kitchen, turn.clock), turn.clock, {
    weekly,
  });
  const [first] = about;
  const names = about.flatMap((id) => turn.kitchen.items.get(id)?.name ?? []);
  return {
    parts: answer.parts,
    more: answer.more ?? [],
    memory: { ...(first ? { items: [first], before: turn.memory.items } : {}), offered: about },
    names: [...new Set(names)],
    count: new Set(names).size,
  };
};
