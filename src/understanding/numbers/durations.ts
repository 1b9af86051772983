/** "ten minutes", "an hour and a half", "two minutes thirty", "half an hour": in seconds. */
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { fractionAt, numberTables, quantityAt, type Quantity } from './quantities.js';
import { cardinalAt, type Reading } from './cardinals.js';

const tables = perLexicon(({ units }) => ({
  units: new Map(
    Object.values(units.durations).flatMap(({ seconds, words }) =>
      words.map((word) => [word, seconds] as const),
    ),
  ),
}));

interface Part {
  readonly seconds: number;
  readonly unit: number;
  readonly end: number;
}

const partAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Part | null => {
  const { one, of, and } = numberTables(lexicon);
  const { units } = tables(lexicon);
  // "Hora y media": one, where a fraction follows.
  const alone =
    units.has(tokens[from] ?? '') &&
    and.has(tokens[from + 1] ?? '') &&
    fractionAt(tokens, from + 2, lexicon) !== null;
  const quantity: Quantity | null = alone
    ? { value: 1, length: 0, rough: false }
    : quantityAt(tokens, from, lexicon);
  if (!quantity) return null;
  let at = from + quantity.length;
  if (quantity.fraction) {
    if (of.has(tokens[at] ?? '')) at += 1;
    if (one.has(tokens[at] ?? '')) at += 1;
  }
  const unit = units.get(tokens[at] ?? '');
  if (unit === undefined) return null;
  at += 1;
  const more =
    Number.isInteger(quantity.value) && and.has(tokens[at] ?? '')
      ? fractionAt(tokens, at + 1, lexicon)
      : null;
  // "an hour and a quarter of an hour" is said by nobody; "an hour and a half minute" neither.
  const part = more && !units.has(tokens[at + 1 + more.length] ?? '') ? more : null;
  return {
    seconds: (quantity.value + (part?.value ?? 0)) * unit,
    unit,
    end: at + (part ? 1 + part.length : 0),
  };
};

/** Smaller parts after a larger: "and ten minutes", and a bare number of the next unit down: "two minutes thirty". */
const restAt = (tokens: readonly string[], from: number, unit: number, lexicon: Lexicon): Part | null => {
  const at = numberTables(lexicon).and.has(tokens[from] ?? '') ? from + 1 : from;
  const part = partAt(tokens, at, lexicon);
  if (part && part.unit < unit) return part;
  if (at !== from || (unit !== 60 && unit !== 3600)) return null;
  const bare = cardinalAt(tokens, at, lexicon);
  if (!bare || bare.value >= 60 || bare.value < 5 || !Number.isInteger(bare.value)) return null;
  return { seconds: (bare.value * unit) / 60, unit: unit / 60, end: at + bare.length };
};

/** Every duration that starts at `from`, longest first: each part said makes it longer. */
export const durationsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading[] => {
  const readings: Reading[] = [];
  let part = partAt(tokens, from, lexicon);
  let seconds = 0;
  while (part) {
    seconds += part.seconds;
    readings.unshift({ value: Math.round(seconds), length: part.end - from });
    part = restAt(tokens, part.end, part.unit, lexicon);
  }
  return readings;
};
