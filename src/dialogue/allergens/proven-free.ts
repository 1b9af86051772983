/** "Free from" is recorded only after a plain yes to a plain question: somebody may rest her life on it. */
import { type Handler, list, say } from '../handler.js';

/** Asks before a fact that frees a food from an allergen is noted. */
export const askingFree =
  (amend: Handler): Handler =>
  (act, turn) => {
    const reply = amend(act, turn);
    const { allergens = [], free, negated } = act.slots;
    if (turn.sure || allergens.length === 0 || !(free || negated) || !reply.changes?.length) return reply;
    const names = [...new Set(reply.changes.flatMap(({ about }) => about))];
    return {
      ...reply,
      confirm: say('confirm-said-free', { name: list(names), allergens: list(allergens, true) }),
    };
  };
