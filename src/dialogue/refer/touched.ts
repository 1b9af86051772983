/** The marker touched with a turn: its code leads to a marker or an item, and sets what "this" means. */
import { resolveCode } from '../../kitchen/index.js';
import { type Work, withMemory } from '../turn/work.js';

export const touchMarker = (work: Work, code: string): Work => {
  const { marker, items } = resolveCode(work.kitchen, code.trim(), work.around.clock);
  const item = items[0] ?? null;
  return withMemory(work, {
    touched: { code, markerId: marker?.id ?? null, itemId: item?.id ?? null, turn: work.state.turns },
    ...(marker ? { markerId: marker.id } : {}),
    ...(item ? { items: [item.id], before: work.state.memory.items } : {}),
  });
};
