/** The marker touched with a turn: its code leads to a marker or an item, and sets what "this" means. */
import { itemWithMarker } from '../../kitchen/index.js';
import { type Work, withMemory } from '../turn/work.js';

/** Codes that name a record of ours directly, for markers without a record of their own. */
const codeFits = (codes: readonly string[], code: string): boolean => {
  const plain = code.trim();
  return codes.some((known) => known === plain || known.toLowerCase() === plain.toLowerCase());
};

export const touchMarker = (work: Work, code: string): Work => {
  const marker = [...work.kitchen.markers.values()].find(({ codes }) => codeFits(codes, code));
  const item = marker ? itemWithMarker(work.kitchen, marker.id) : null;
  return withMemory(work, {
    touched: { code, markerId: marker?.id ?? null, itemId: item?.id ?? null },
    ...(marker ? { markerId: marker.id } : {}),
    ...(item ? { items: [item.id], before: work.state.memory.items } : {}),
  });
};
