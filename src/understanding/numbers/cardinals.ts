/** Whole and decimal numbers in words or figures: "two hundred and twelve", "one point five". */
import { perLexicon, type Lexicon } from '../words/lexicon.js';

export interface Reading {
  readonly value: number;
  readonly length: number;
}

const tables = perLexicon(({ numbers }) => ({
  words: new Map(Object.entries(numbers.words)),
  scales: new Map(Object.entries(numbers.scales)),
  alone: new Set(numbers.scalesAlone),
  and: new Set([...numbers.and, ...(numbers.tensAnd === undefined ? [] : [numbers.tensAnd])]),
  point: new Set(numbers.point),
  one: new Set(numbers.one),
  nought: new Set(numbers.nought),
}));

/** What may come next: after "twenty" a unit below ten, after "hundred" anything below a hundred. */
const wholeAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const { words, scales, alone, and, one } = tables(lexicon);
  let total = 0;
  let current = 0;
  let room = 1000;
  let at = from;
  let length = 0;
  if (one.has(tokens[at] ?? '') && scales.has(tokens[at + 1] ?? '')) {
    current = 1;
    at += 1;
  }
  for (; at < tokens.length; at += 1) {
    const token = tokens[at]!;
    const value = words.get(token);
    const scale = scales.get(token);
    if (value !== undefined) {
      if (value >= room || (value === 0 && at > from)) break;
      current += value;
      // A hundred word of its own ("doscientos") leaves room below it, as "twenty" does for a unit.
      room = value >= 100 ? 100 : value >= 20 && value % 10 === 0 ? 10 : 0;
    } else if (scale !== undefined) {
      // "Mil" is a thousand by itself.
      if (current === 0 && length === 0 && alone.has(token)) current = 1;
      if (current === 0 || current >= scale) break;
      if (scale < 1000) {
        if (current >= 100) break;
        current *= scale;
        room = scale;
      } else {
        if (total > 0) break;
        total = current * scale;
        current = 0;
        room = scale;
      }
    } else if (and.has(token) && length > 0 && room > 0 && at > from) {
      const next = words.get(tokens[at + 1] ?? '');
      const previous = tokens[at - 1]!;
      const joins =
        scales.has(previous) || (words.get(previous) ?? 0) >= 100 || token === lexicon.numbers.tensAnd;
      if (!joins || next === undefined || next >= room || next === 0) break;
      continue;
    } else break;
    length = at - from + 1;
    if (value === 0) break;
  }
  return length > 0 ? { value: total + current, length } : null;
};

/** The longest number that starts at `from`. "1/2" and "two and a half" are in `quantities.ts`. */
export const cardinalAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const { words, point, nought } = tables(lexicon);
  const token = tokens[from];
  if (token === undefined) return null;
  if (/^\d+(\.\d+)?$/.test(token)) return { value: Number(token), length: 1 };
  const whole = wholeAt(tokens, from, lexicon);
  const pointAt = from + (whole?.length ?? 0);
  if (!point.has(tokens[pointAt] ?? '')) return whole;
  let decimals = '';
  for (let at = pointAt + 1; at < tokens.length; at += 1) {
    const digit = nought.has(tokens[at]!) ? 0 : words.get(tokens[at]!);
    if (digit === undefined || digit > 9) break;
    decimals += String(digit);
  }
  if (decimals === '') return whole;
  return { value: Number(`${whole?.value ?? 0}.${decimals}`), length: pointAt + 1 + decimals.length - from };
};

/** "three fifty" is 350 where hundreds are meant; null when the words are not said so. */
export const colloquialHundredsAt = (
  tokens: readonly string[],
  from: number,
  lexicon: Lexicon,
): Reading | null => {
  const { words } = tables(lexicon);
  const hundreds = words.get(tokens[from] ?? '');
  if (hundreds === undefined || hundreds < 1 || hundreds > 9) return null;
  const rest = wholeAt(tokens, from + 1, lexicon);
  if (!rest || rest.value < 10 || rest.value > 99) return null;
  return { value: hundreds * 100 + rest.value, length: 1 + rest.length };
};
