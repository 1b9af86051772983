/**
 * "The milk is in the door", "the milk in the door is use by Sunday", of milk that nobody told of: it has
 * come in, and that is where it is.
 */
import { type Handler } from '../handler.js';
import { putAway } from '../put-away/put-away.js';
import { findItems } from '../refer/items.js';

export const standsThere =
  (handler: Handler): Handler =>
  (act, turn) => {
    const { item, asked, place = item?.at ?? undefined } = act.slots;
    const told = act.intent === 'amend' || asked === 'stands';
    if (!told || !place || !item?.words || item.pointer || turn.picked['item']) return handler(act, turn);
    const found = findItems(turn, { ...item, at: null });
    if (found.items.length > 0 || found.near) return handler(act, turn);
    const { asked: _asked, ...slots } = act.slots;
    return putAway({ intent: 'put-away', slots: { ...slots, place, item: { ...item, at: null } } }, turn);
  };
