/** Figures of a sentence: weights, lengths of time, bare numbers, and those that no fact took. */
import type { SemanticValue } from '../../grammar/api.js';
import { asAmount, asNumber } from '../meaning-parts.js';
import { isWord, spotsOf, type Sentence } from './sentence.js';
import { matchesIn, type Match } from './spots.js';

export const values = <T extends string>(sentence: Sentence, kind: string): readonly T[] => [
  ...new Set(spotsOf(sentence, kind).map(({ value }) => value as T)),
];

const gramsOf: Readonly<Record<string, number>> = {
  pound: 453.592,
  kilogram: 1000,
  kilo: 1000,
  gram: 1,
  ounce: 28.3495,
};
const gramsInPound = 453.592;

export const poundsIn = (sentence: Sentence): number | null => {
  const { tokens, rules } = sentence;
  for (const { from, to, value } of matchesIn(tokens, rules, 'builtin:grammar/amount')) {
    // "Minutes a pound" weighs nothing.
    if (spotsOf(sentence, 'ask').some((asked) => asked.from < to && from < asked.to)) continue;
    const amount = asAmount(value);
    const grams = gramsOf[amount.unit];
    if (grams) return (amount.value * grams) / gramsInPound;
  }
  return null;
};

/** "A week ago", "for two weeks", "ten days": seconds; days of the calendar go by dates. */
export const spansIn = ({ tokens, rules }: Sentence): readonly Match[] =>
  matchesIn(tokens, rules, 'builtin:grammar/duration');

/** A number and where it stands; "one sixty-three" is said for a hundred and sixty-three. */
export const figures = ({
  tokens,
  rules,
}: Sentence): readonly { value: number; from: number; to: number }[] => {
  const all = matchesIn(tokens, rules, 'builtin:grammar/number').flatMap(({ from, to, value }) =>
    typeof value === 'number' ? [{ from, to, value }] : [],
  );
  return all.map((one, at) => {
    const next = all[at + 1];
    return one.value < 3 && next?.from === one.to && next.value >= 10 && next.value < 100
      ? { from: one.from, to: next.to, value: one.value * 100 + next.value }
      : one;
  });
};

/** Amounts, temperatures and times of day: figures that are no name. */
export const figuresIn = ({ tokens, rules }: Sentence): readonly Match[] =>
  ['amount', 'temperature', 'time?lean=past', 'number'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`, 0.5),
  );

/** "Over two hours" is past two hours: a minute more than was said. */
export const secondsOf = (sentence: Sentence, span: Match): number =>
  asNumber(span.value, 'duration') +
  (spotsOf(sentence, 'morethan').some(({ from, to }) => to === span.from || from === span.from) ? 60 : 0);

/** A number that belongs to no day, time, temperature, weight or name: something was told that nobody took. */
export const leftIn = (
  sentence: Sentence,
  taken: readonly Match[],
  named: { readonly from: number; readonly to: number } | null,
): string | null => {
  const { tokens, rules } = sentence;
  const others = ['amount', 'temperature', 'time?lean=past', 'share'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`).filter(
      ({ from, to }) => to - from > 1 || rule === 'temperature',
    ),
  );
  const placed = [
    ...taken,
    ...others,
    ...(named ? [named] : []),
    ...sentence.spots.filter(({ kind }) => kind !== 'span'),
  ];
  const lost = matchesIn(tokens, rules, 'builtin:grammar/number').find(
    ({ from, to, value }) =>
      typeof value === 'number' && value > 1 && !placed.some((one) => one.from < to && from < one.to),
  );
  return lost ? tokens.slice(lost.from, lost.to).join(' ') : null;
};

/** "We live at four thousand feet". */
export const feetIn = (sentence: Sentence): number | null =>
  figures(sentence).find(({ to }) => isWord(sentence, 'feet', sentence.tokens[to]))?.value ?? null;

/** A date's own digits, and the two before them that say which date it is. */
const fewestDigits = 6;

/** "One seven two six one two three one", "seventeen twenty-six twelve thirty-one": digits read out one after another. */
export const codeIn = (sentence: Sentence): string | null => {
  const { tokens, rules } = sentence;
  const number = rules.get('builtin:grammar/number');
  const runs: string[] = [''];
  let many = 1;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at]!;
    if (isWord(sentence, 'twice', token)) {
      many = 2;
      at += 1;
      continue;
    }
    if (isWord(sentence, 'nought', token)) {
      runs[runs.length - 1] += '0'.repeat(many);
      many = 1;
      at += 1;
      continue;
    }
    // "Twenty-six" is two digits, "one seven" two of one each.
    const [read] = (number?.matchesAt(tokens, at) ?? [])
      .filter(({ value, length }) => isDigits(value, length))
      .sort((a, b) => b.length - a.length);
    if (read) {
      runs[runs.length - 1] += String(read.value).repeat(many);
      at += read.length;
    } else {
      if (runs.at(-1) !== '') runs.push('');
      at += 1;
    }
    many = 1;
  }
  return runs.find(({ length }) => length >= fewestDigits) ?? null;
};

/** One digit, a number below a hundred, or digits as they stand. */
const isDigits = (value: SemanticValue, length: number): boolean =>
  typeof value === 'number' &&
  Number.isInteger(value) &&
  value >= 0 &&
  (value < 10 ? length === 1 : value < 100 ? length <= 2 : length === 1);
