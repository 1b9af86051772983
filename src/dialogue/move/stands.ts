/** "The milk is in the door", of milk that nobody told of: it has come in, and that is where it is. */
import { type Handler } from '../handler.js';
import { putAway } from '../put-away/put-away.js';
import { findItems } from '../refer/items.js';

export const standsThere =
  (move: Handler): Handler =>
  (act, turn) => {
    const { item, asked, place } = act.slots;
    if (asked !== 'stands' || !place || !item?.words || item.pointer) return move(act, turn);
    const found = findItems(turn, item);
    if (found.items.length > 0 || found.near) return move(act, turn);
    const { asked: _asked, ...slots } = act.slots;
    return putAway({ intent: 'put-away', slots }, turn);
  };
