/** "The opened sauerkraut", "the leftover chicken": a food by the state it is in, which is no part of its name. */
import { isFrozen } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Turn } from '../handler.js';

type State = (turn: Turn, item: Item) => boolean;

const any: State = () => true;
const cooked: State = (_turn, { dates, maker }) => dates.made !== undefined || maker !== null;
const opened: State = (_turn, { dates }) => dates.opened !== undefined;
const sealed: State = (_turn, { dates }) => dates.opened === undefined;
const frozen: State = (turn, item) => isFrozen(turn, item);
const thawed: State = (turn, item) => !isFrozen(turn, item);

/** Words before a name, and what is true of the things they are said of. */
const states: readonly (readonly [words: RegExp, is: State])[] = [
  [/^left ?over( |$)/, cooked],
  [/^(remaining|rest of (the|my|our)|other half of (the|my|our)|end of (the|my|our))( |$)/, any],
  [/^(opened|open|half used|started)( |$)/, opened],
  [/^(unopened|sealed|unstarted)( |$)/, sealed],
  [/^frozen( |$)/, frozen],
  [/^(thawed|defrosted|chilled|cold)( |$)/, thawed],
  [/^(raw|uncooked|fresh)( |$)/, (turn, item) => !cooked(turn, item)],
  [/^(cooked|home ?made|made)( |$)/, cooked],
];

export interface Stated {
  readonly words: string;
  readonly is: State;
}

/** A name without the state said before or after it; null when none was said. */
export const statedIn = (words: string): Stated | null => {
  const after = words.replace(/ (left ?overs?|left over|remains)$/, '');
  if (after !== words && after !== '') return { words: after, is: cooked };
  for (const [said, is] of states) {
    const rest = words.replace(said, '');
    if (rest !== words && rest !== '') return { words: rest, is };
  }
  return null;
};
