/** The length of time told in a sentence that is kept as it was said: "heat it for two minutes". */
import { cardinalAt } from './numbers/cardinals.js';
import { durationsAt } from './numbers/durations.js';
import { lexiconFor } from './words/lexicon.js';
import { normalise } from './words/normalise.js';

/** A time after one of these is no length: "stir every two minutes", "within two hours". */
const NO_LENGTH_AFTER: ReadonlySet<string> = new Set(['every', 'each', 'within', 'after', 'cada']);
const BETWEEN: ReadonlySet<string> = new Set(['to', 'or', 'a', 'o']);

/**
 * Seconds of the first length of time in a sentence; null when it tells none.
 * Of "three to four minutes" the shorter: one looks early.
 * `locale` is BCP 47; its language must have word lists under `grammars/`.
 */
export const saidDuration = (sentence: string, locale: string): number | null => {
  const { tokens } = normalise(sentence, locale);
  const lexicon = lexiconFor(locale);
  for (let at = 0; at < tokens.length; at += 1) {
    const [longest] = durationsAt(tokens, at, lexicon);
    if (!longest) continue;
    if (NO_LENGTH_AFTER.has(tokens[at - 1] ?? '')) {
      at += longest.length - 1;
      continue;
    }
    const upper = cardinalAt(tokens, at, lexicon);
    const lower = BETWEEN.has(tokens[at - 1] ?? '') ? cardinalAt(tokens, at - 2, lexicon) : null;
    return upper && lower && lower.length === 1 && lower.value < upper.value
      ? Math.round((longest.value * lower.value) / upper.value)
      : longest.value;
  }
  return null;
};
