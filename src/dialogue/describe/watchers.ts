/** Whom what is in a food concerns. */
import type { Item } from '../../kitchen/model.js';
import { allergenIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { type Turn, list, say } from '../handler.js';

/** Whoever watches for what was just told to be in it. */
export const watchers = (turn: Turn, item: Item, contains: readonly string[]): Say[] => {
  const told = { ...item, contains };
  return [...turn.kitchen.people.values()].flatMap((person) => {
    const against = person.allergens.filter(
      (allergen) => allergenIn(told, allergen).answer === 'said-to-contain',
    );
    return against.length > 0 ? [say('watched-by', { name: person.name, allergens: list(against) })] : [];
  });
};
