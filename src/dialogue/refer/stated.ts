/** "The opened sauerkraut", "the leftover chicken": a food by the state it is in, which is no part of its name. */
import { isFrozen } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { statedIn as stateIn, type SaidState } from '../../understanding/index.js';
import type { Turn } from '../handler.js';

type State = (turn: Turn, item: Item) => boolean;

const cooked: State = (_turn, { dates, maker }) => dates.made !== undefined || maker !== null;

/** What is true of the things that are said to be so. */
const states: Readonly<Record<SaidState, State>> = {
  any: () => true,
  cooked,
  opened: (_turn, { dates }) => dates.opened !== undefined,
  sealed: (_turn, { dates }) => dates.opened === undefined,
  frozen: (turn, item) => isFrozen(turn, item),
  thawed: (turn, item) => !isFrozen(turn, item),
  raw: (turn, item) => !cooked(turn, item),
};

/** A name without the state said before or after it, and what is in that state; null when none was said. */
export const statedIn = (
  turn: Turn,
  said: string,
): { readonly words: string; readonly is: (item: Item) => boolean } | null => {
  const stated = stateIn(said, turn.locale);
  return stated && { words: stated.words, is: (item) => states[stated.state](turn, item) };
};
