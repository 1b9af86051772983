import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseTable } from '../words/phrases.js';
import type { Reading } from './cardinals.js';

const tables = perLexicon(({ numbers }) => ({
  ordinals: new Map(Object.entries(numbers.ordinals)),
  tens: new Map(Object.entries(numbers.ordinalTens)),
  phrases: phraseTable(Object.entries(numbers.ordinalPhrases)),
}));

/** "third" is 3, "twenty first" is 21, "last" is -1, "second to last" is -2. */
export const ordinalAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const { ordinals, tens, phrases } = tables(lexicon);
  const token = tokens[from];
  if (token === undefined) return null;
  const phrase = phrases.longestAt(tokens, from);
  if (phrase) return { value: phrase.value, length: phrase.length };
  const written = /^(\d{1,2})(st|nd|rd|th)$/.exec(token);
  if (written) return { value: Number(written[1]), length: 1 };
  const ten = tens.get(token);
  const unit = ordinals.get(tokens[from + 1] ?? '');
  if (ten !== undefined && unit !== undefined && unit < 10) return { value: ten + unit, length: 2 };
  const whole = ordinals.get(token);
  return whole === undefined ? null : { value: whole, length: 1 };
};
