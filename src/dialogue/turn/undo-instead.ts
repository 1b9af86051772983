/** "Put it back", right after something was done and with nothing standing out: that is taken back. */
import type { Act } from '../../understanding/intents.js';
import { findItems } from '../refer/items.js';
import { itJustGone } from '../refer/none-left.js';
import { topFrame } from './frames.js';
import { type Work, turnOf } from './work.js';

export const ofUndoInstead = (work: Work, act: Act): Act => {
  const { done, turns } = work.state;
  if (act.intent !== 'put-back' || done?.turn !== turns - 1 || act.slots.place || topFrame(work)) return act;
  const { item } = act.slots;
  if (item && item.pointer === null) return act;
  // What was thrown out comes back by name, where it was.
  if (itJustGone(turnOf(work), item) !== null) return act;
  const out = findItems(turnOf(work), item).items.some(({ outSince }) => outSince !== null);
  return out ? act : { intent: 'undo', slots: {} };
};
