import type { DynamicRule } from '../../grammar/api.js';
import type { NamedMatch } from './api.js';

/** Below this a record is not what a food's plain name says: "chicken" is no chicken broth. */
const leastFit = 0.75;

/**
 * The rule for foods that everybody knows, with the household's own records behind the words:
 * "the stew" is a food, and the lentil stew too.
 */
export const foodsHeld = (foods: DynamicRule, items: DynamicRule): DynamicRule => ({
  matchesAt(tokens, from) {
    const found = foods.matchesAt(tokens, from);
    if (found.length === 0) return found;
    const held = items.matchesAt(tokens, from);
    if (held.length === 0) return found;
    return found.map((food) => {
      const item = held.find(({ length }) => length === food.length);
      if (!item) return food;
      const { candidates } = item.value as unknown as NamedMatch;
      const close = candidates.filter(({ fit }) => fit >= leastFit).map(({ id, fit }) => ({ id, fit }));
      return close.length === 0 ? food : { ...food, value: { ...(food.value as object), candidates: close } };
    });
  },
});
