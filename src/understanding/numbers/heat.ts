/** Degrees and watts: "one hundred sixty five degrees", "three fifty degrees", "eight hundred watts". */
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { cardinalAt, colloquialHundredsAt, type Reading } from './cardinals.js';

interface Degrees {
  readonly value: number;
  readonly scale: 'fahrenheit' | 'celsius' | null;
  readonly length: number;
}

const tables = perLexicon(({ units }) => ({
  degrees: new Set(units.degrees),
  watts: new Set(units.watts),
  scales: new Map<string, 'fahrenheit' | 'celsius'>([
    ...units.scales.fahrenheit.map((word) => [word, 'fahrenheit'] as const),
    ...units.scales.celsius.map((word) => [word, 'celsius'] as const),
  ]),
}));

const numbersAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading[] =>
  [colloquialHundredsAt(tokens, from, lexicon), cardinalAt(tokens, from, lexicon)].filter(
    (read) => read !== null,
  );

export const degreesAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Degrees[] => {
  const { degrees, scales } = tables(lexicon);
  for (const { value, length } of numbersAt(tokens, from, lexicon)) {
    const next = from + length;
    const word = degrees.has(tokens[next] ?? '');
    const scale = scales.get(tokens[next + (word ? 1 : 0)] ?? '') ?? null;
    if (!word && scale === null) continue;
    const whole: Degrees = { value, scale, length: length + (word ? 1 : 0) + (scale ? 1 : 0) };
    return word && scale ? [whole, { value, scale: null, length: length + 1 }] : [whole];
  }
  return [];
};

export const wattsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const { watts } = tables(lexicon);
  for (const { value, length } of numbersAt(tokens, from, lexicon)) {
    if (watts.has(tokens[from + length] ?? '')) return { value, length: length + 1 };
  }
  return null;
};
