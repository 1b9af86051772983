/** What an answer still had to say when it was cut off by another request. */
import type { State, Unsaid } from '../state.js';

/** Index of the sentence a mark stands before: "s3" is 2. */
export const cutIndex = (mark: string | null): number | null => {
  const n = mark ? Number(/\d+$/.exec(mark)?.[0]) : Number.NaN;
  return Number.isInteger(n) && n > 0 ? n - 1 : null;
};

/** Turns of other talk after which it is not gone on with any more. */
const turnsKept = 2;

/**
 * The rest of the answer before, now that another is given. Nothing when a question was open: what
 * came was its answer.
 */
export const brokenOff = (
  { told, frames, turns }: State,
  cutAt: string | null,
  lastSentences: readonly string[],
): Unsaid | null => {
  if (!told || frames.some(({ kind, passing }) => kind !== 'offer' && !passing)) return null;
  const at = cutIndex(cutAt);
  const sentences = at === null ? told.cut : lastSentences.slice(at);
  const fresh = told.turn === turns - 1 || at !== null;
  if (fresh && (sentences.length > 0 || told.rest.length > 0))
    return { sentences, rest: told.rest, turn: turns };
  return told.earlier && turns - told.earlier.turn < turnsKept ? told.earlier : null;
};
