/** Numbers as English words. British English says "and" after the hundreds. */
import { toCardinal as britishCardinal } from 'n2words/en-GB';
import { toCardinal as americanCardinal, toOrdinal } from 'n2words/en-US';

export type Regional = 'us' | 'gb';

const cardinal = (n: number, region: Regional): string =>
  region === 'gb' ? britishCardinal(n) : americanCardinal(n);

/** Fractions a cook says, nearest first; within half a hundredth counts as the same. */
const FRACTIONS: readonly { readonly value: number; readonly words: string; readonly many: string }[] = [
  { value: 1 / 2, words: 'half', many: 'a half' },
  { value: 1 / 4, words: 'a quarter', many: 'a quarter' },
  { value: 3 / 4, words: 'three quarters', many: 'three quarters' },
  { value: 1 / 3, words: 'a third', many: 'a third' },
  { value: 2 / 3, words: 'two thirds', many: 'two thirds' },
  { value: 1 / 8, words: 'an eighth', many: 'an eighth' },
];

/** The whole part and the spoken fraction of a number, when it has one that is said as such. */
export const splitFraction = (
  value: number,
): {
  readonly whole: number;
  readonly fraction: { readonly words: string; readonly many: string } | null;
} | null => {
  const whole = Math.floor(value + 0.005);
  const rest = value - whole;
  if (Math.abs(rest) <= 0.005) return { whole, fraction: null };
  const fraction = FRACTIONS.find((known) => Math.abs(known.value - rest) <= 0.005);
  return fraction === undefined ? null : { whole, fraction };
};

/** "twelve", "two and a half", "one point two", "minus eighteen". At most two decimals are said. */
export const numberWords = (value: number, region: Regional): string => {
  if (!Number.isFinite(value)) return 'an unknown number';
  if (value < 0) return `minus ${numberWords(-value, region)}`;
  if (value >= 1e15) return 'a very large number';
  const split = splitFraction(value);
  if (split !== null) {
    if (split.fraction === null) return cardinal(split.whole, region);
    return split.whole === 0
      ? split.fraction.many
      : `${cardinal(split.whole, region)} and ${split.fraction.many}`;
  }
  const [whole = '0', decimals = ''] = String(Math.round(value * 100) / 100).split('.');
  if (decimals === '') return cardinal(Number(whole), region);
  const digits = [...decimals].map((digit) => cardinal(Number(digit), region)).join(' ');
  return `${cardinal(Number(whole), region)} point ${digits}`;
};

/** "first", "twenty-first", "one hundred and twelfth"; negative counts from the end: -1 is "last". */
export const ordinalWords = (n: number, region: Regional): string => {
  if (n === -1) return 'last';
  if (n < 0) return `${ordinalWords(-n, region)} from last`.replace(/^second from last$/, 'last but one');
  const tail = n % 100;
  if (n < 100 || tail === 0) return toOrdinal(n);
  const words = cardinal(n, region);
  const tailWords = cardinal(tail, region);
  return words.slice(0, words.length - tailWords.length) + toOrdinal(tail);
};

/** "twenty twenty-six", "two thousand and five", "nineteen oh four". */
export const yearWords = (year: number, region: Regional): string => {
  const century = Math.floor(year / 100);
  const rest = year % 100;
  if (year < 1000 || year > 2999 || (year >= 2000 && year < 2010)) return cardinal(year, region);
  if (rest === 0) return `${cardinal(century, region)} hundred`;
  return `${cardinal(century, region)} ${rest < 10 ? 'oh ' : ''}${cardinal(rest, region)}`;
};

const LETTERS: Readonly<Record<string, string>> = {
  ' ': 'space',
  '-': 'dash',
  "'": 'apostrophe',
  '’': 'apostrophe',
  '.': 'dot',
  ',': 'comma',
  '&': 'and sign',
  '/': 'slash',
  '%': 'percent sign',
  '+': 'plus sign',
};

/** "H, A, R, I, S, S, A": one by one, with a pause after each. What has no name is said as "another sign". */
export const letterWords = (text: string, region: Regional): string =>
  [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text.trim())]
    .map(({ segment }) => {
      if (/^\p{L}\p{M}*$/u.test(segment)) return segment.toLocaleUpperCase('en');
      if (/^\d$/.test(segment)) return cardinal(Number(segment), region);
      return LETTERS[segment] ?? 'another sign';
    })
    .join(', ');
