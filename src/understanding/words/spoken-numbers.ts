/** Figures to number words, by the language's own lists. */
import { perLexicon, type Lexicon } from './lexicon.js';

/** The first word listed for a value is the one used. */
const inverse = (figures: Readonly<Record<string, number>>): Map<number, string> => {
  const words = new Map<number, string>();
  for (const [word, value] of Object.entries(figures)) if (!words.has(value)) words.set(value, word);
  return words;
};

const tables = perLexicon((lexicon) => ({
  cardinals: inverse(lexicon.numbers.words),
  scales: inverse(lexicon.numbers.scales),
  ordinals: inverse(lexicon.numbers.ordinals),
}));

const below100 = (value: number, lexicon: Lexicon): string | null => {
  const { cardinals } = tables(lexicon);
  const whole = cardinals.get(value);
  if (whole !== undefined) return whole;
  const tens = cardinals.get(value - (value % 10));
  const unit = cardinals.get(value % 10);
  if (tens === undefined || unit === undefined) return null;
  return [tens, lexicon.numbers.tensAnd, unit].filter(Boolean).join(' ');
};

const cardinal = (value: number, lexicon: Lexicon): string | null => {
  if (value < 100) return below100(value, lexicon);
  const { cardinals, scales } = tables(lexicon);
  const size = value < 1000 ? 100 : 1000;
  const rest = value % size;
  const head = cardinals.get(value - rest) ?? null;
  const many = head === null ? cardinal((value - rest) / size, lexicon) : '';
  const scale = head ?? scales.get(size);
  const tail = rest === 0 ? '' : cardinal(rest, lexicon);
  if (many === null || scale === undefined || tail === null) return null;
  return [many, scale, tail].filter(Boolean).join(' ');
};

/**
 * "212" to "two hundred twelve", "1.5" to "one point five"; long or zero-led figures are said
 * digit by digit. Null when the language's lists lack a word for it.
 */
export const sayNumber = (figures: string, lexicon: Lexicon): string | null => {
  const [whole = '', part] = figures.split('.');
  const digits = (text: string): string | null => {
    const said = [...text].map((digit) => tables(lexicon).cardinals.get(Number(digit)));
    return said.includes(undefined) ? null : said.join(' ');
  };
  const head =
    whole.length > 6 || (whole.length > 1 && whole.startsWith('0'))
      ? digits(whole)
      : cardinal(Number(whole), lexicon);
  if (part === undefined || head === null) return head;
  const tail = digits(part);
  const point = lexicon.numbers.point[0];
  return tail === null || point === undefined ? null : `${head} ${point} ${tail}`;
};

/** 9 to "ninth", 21 to "twenty first"; null when the lists lack a word. */
export const sayOrdinal = (value: number, lexicon: Lexicon): string | null => {
  const { ordinals, cardinals } = tables(lexicon);
  const whole = ordinals.get(value);
  if (whole !== undefined) return whole;
  const unit = ordinals.get(value % 10);
  const tens = cardinals.get(value - (value % 10));
  return unit === undefined || tens === undefined ? null : `${tens} ${unit}`;
};
