/** What each move of a turn was heard as, with its words: for whoever tells it, and not for whoever decides. */
import type { DecidedMove } from '../dialogue/index.js';
import type { Understanding } from '../understanding/intents.js';

export interface HeardMove {
  readonly words: string;
  readonly understanding: Understanding;
}

/** Both, for who is told what was understood. */
const together = (one: Understanding, other: Understanding): Understanding => {
  const [first, second] = [one.readings[0], other.readings[0]];
  if (!first || !second) return first ? one : other;
  const reading = {
    ...second,
    acts: [...first.acts, ...second.acts],
    confidence: Math.min(first.confidence, second.confidence),
    heard: `${first.heard} ${second.heard}`,
  };
  return { ...other, readings: [reading, ...other.readings.slice(1)] };
};

/** All that something came of, as one; as it was heard whole where nothing did. */
export const heardInAll = (each: readonly DecidedMove<HeardMove>[], whole: Understanding): Understanding =>
  each
    .filter(({ passedOver }) => !passedOver)
    .map(({ heard }) => heard.understanding)
    .reduce<Understanding | null>((all, one) => (all ? together(all, one) : one), null) ?? whole;
