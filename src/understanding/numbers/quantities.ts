/** How many or how much, before any unit: "two and a half", "half a dozen", "a couple", "about 3/4". */
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet } from '../words/phrases.js';
import { cardinalAt, type Reading } from './cardinals.js';

export interface Quantity extends Reading {
  readonly rough: boolean;
  /** True for "a" and "an", which count only before a unit. */
  readonly article?: boolean;
  /** Of "half", "a third": may take an article before its unit ("half a jar"). */
  readonly fraction?: boolean;
}

export const numberTables = perLexicon(({ numbers }) => ({
  one: new Set(numbers.one),
  and: new Set(numbers.and),
  of: new Set(numbers.of),
  fractions: new Map(Object.entries(numbers.fractions)),
  groups: new Map(
    Object.entries(numbers.groups).flatMap(([word, value]) => [
      [word, value] as const,
      [`${word}s`, value] as const,
    ]),
  ),
  vague: new Map(Object.entries(numbers.vague)),
  rough: phraseSet(numbers.rough),
  more: new Set(numbers.more),
}));

/** Thirds to the precision of a double, so that three of them make one. */
const exact = (fraction: number): number => {
  const parts = Math.round(1 / fraction);
  return Math.abs(1 / parts - fraction) < 1e-6 ? 1 / parts : fraction;
};

const writtenFraction = (token: string | undefined): number | null => {
  const parts = /^(\d{1,2})\/(\d{1,2})$/.exec(token ?? '');
  if (!parts) return null;
  const [over, under] = [Number(parts[1]), Number(parts[2])];
  return under >= 2 && over >= 1 && over < under ? over / under : null;
};

/** "half", "a third", "one quarter", "three quarters", "1/2". */
export const fractionAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const { one, fractions } = numberTables(lexicon);
  const written = writtenFraction(tokens[from]);
  if (written !== null) return { value: written, length: 1 };
  const many = one.has(tokens[from] ?? '') ? { value: 1, length: 1 } : cardinalAt(tokens, from, lexicon);
  const start = from + (many?.length ?? 0);
  const part = fractions.get(tokens[start] ?? '');
  if (part === undefined) return null;
  // Without a count only "half" and "quarter" are fractions: "third" alone is an ordinal.
  if (!many && part !== 0.5 && part !== 0.25) return null;
  // "second third shelf": a fraction said with a count is less than one, or it is no fraction.
  const value = (many?.value ?? 1) * exact(part);
  if (value > 1 || !Number.isInteger(many?.value ?? 1)) return null;
  return { value, length: start - from + 1 };
};

const withFractionAt = (
  tokens: readonly string[],
  from: number,
  whole: Reading,
  lexicon: Lexicon,
): Reading => {
  const { and } = numberTables(lexicon);
  const next = from + whole.length;
  const written = writtenFraction(tokens[next]);
  if (written !== null) return { value: whole.value + written, length: whole.length + 1 };
  if (!and.has(tokens[next] ?? '')) return whole;
  const part = fractionAt(tokens, next + 1, lexicon);
  return part && part.value < 1
    ? { value: whole.value + part.value, length: whole.length + 1 + part.length }
    : whole;
};

const plainAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Quantity | null => {
  const { one, of, groups, vague } = numberTables(lexicon);
  const article = one.has(tokens[from] ?? '');
  const fraction = fractionAt(tokens, from, lexicon);
  const cardinal = fraction ? null : cardinalAt(tokens, from, lexicon);
  const head = fraction ?? cardinal ?? (article ? { value: 1, length: 1 } : null);
  const vagueWord = vague.get(tokens[from + (article ? 1 : 0)] ?? '');
  if (vagueWord !== undefined) return { value: vagueWord, length: article ? 2 : 1, rough: true };
  // "half a dozen", "two dozen", "a couple", "couple".
  let groupAt = from + (head?.length ?? 0);
  if (fraction && one.has(tokens[groupAt] ?? '')) groupAt += 1;
  const group = groups.get(tokens[groupAt] ?? '');
  if (group !== undefined) {
    const whole = { value: (head?.value ?? 1) * group, length: groupAt + 1 - from };
    const next = groupAt + 1;
    // "a dozen and a half" counts in dozens.
    const more = numberTables(lexicon).and.has(tokens[next] ?? '')
      ? fractionAt(tokens, next + 1, lexicon)
      : null;
    if (more && group > 2) {
      return {
        value: whole.value + more.value * group,
        length: whole.length + 1 + more.length,
        rough: false,
      };
    }
    const tail = of.has(tokens[next] ?? '') && group === 2 ? 1 : 0;
    return { ...whole, length: whole.length + tail, rough: false };
  }
  if (fraction) return { ...fraction, rough: false, fraction: true };
  if (cardinal) return { ...withFractionAt(tokens, from, cardinal, lexicon), rough: false };
  return article ? { value: 1, length: 1, rough: false, article: true } : null;
};

/** The longest quantity at `from`, with "about" and its like marked rough. */
export const quantityAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Quantity | null => {
  const hedge = numberTables(lexicon).rough.longestAt(tokens, from);
  const start = from + (hedge?.length ?? 0);
  const plain = plainAt(tokens, start, lexicon);
  if (!plain || !hedge) return plain;
  return { ...plain, rough: true, length: plain.length + hedge.length };
};
