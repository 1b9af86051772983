/** Numbers as Spanish words, and how they change before a noun. */
import { toCardinal, toOrdinal } from 'n2words/es-MX';

/** Fractions a cook says; within half a hundredth counts as the same. */
const FRACTIONS: readonly { readonly value: number; readonly words: string; readonly after: string }[] = [
  { value: 1 / 2, words: 'la mitad', after: 'medio' },
  { value: 1 / 4, words: 'un cuarto', after: 'un cuarto' },
  { value: 3 / 4, words: 'tres cuartos', after: 'tres cuartos' },
  { value: 1 / 3, words: 'un tercio', after: 'un tercio' },
  { value: 2 / 3, words: 'dos tercios', after: 'dos tercios' },
  { value: 1 / 8, words: 'un octavo', after: 'un octavo' },
];

/** The whole part and the fraction of a number, when it has one that is said as such. */
export const splitFraction = (
  value: number,
): { readonly whole: number; readonly fraction: { words: string; after: string } | null } | null => {
  const whole = Math.floor(value + 0.005);
  const rest = value - whole;
  if (Math.abs(rest) <= 0.005) return { whole, fraction: null };
  const fraction = FRACTIONS.find((known) => Math.abs(known.value - rest) <= 0.005);
  return fraction ? { whole, fraction } : null;
};

/** "doce", "dos y medio", "uno punto dos", "menos dieciocho". Counting alone: "uno", "veintiuno". */
export const numberWords = (value: number): string => {
  if (!Number.isFinite(value)) return 'un número desconocido';
  if (value < 0) return `menos ${numberWords(-value)}`;
  if (value >= 1e15) return 'un número enorme';
  const split = splitFraction(value);
  if (split) {
    if (!split.fraction) return toCardinal(split.whole);
    return split.whole === 0 ? split.fraction.after : `${toCardinal(split.whole)} y ${split.fraction.after}`;
  }
  const [whole = '0', decimals = ''] = String(Math.round(value * 100) / 100).split('.');
  if (decimals === '') return toCardinal(Number(whole));
  return `${toCardinal(Number(whole))} punto ${[...decimals].map((digit) => toCardinal(Number(digit))).join(' ')}`;
};

export type Gender = 'm' | 'f';

/** A number's words before a noun: "un", "veintiún"; "una", "veintiuna", "doscientas". */
export const beforeNoun = (words: string, gender: Gender): string =>
  gender === 'm'
    ? words.replace(/veintiuno$/u, 'veintiún').replace(/\buno$/u, 'un')
    : words
        .replace(/uno$/u, 'una')
        .replace(/cientos\b/gu, 'cientas')
        .replace(/quinientos\b/gu, 'quinientas');

/** "segundo"; -1 is "último". Before a noun the phrase says what it needs. */
export const ordinalWords = (n: number): string => {
  if (n === -1) return 'último';
  if (n === -2) return 'penúltimo';
  if (n < 0) return `${toOrdinal(-n)} desde el final`;
  return toOrdinal(n);
};

/** The day in a date: "primero", then counted: "dos", "doce". */
export const dayOfMonth = (n: number): string => (n === 1 ? 'primero' : toCardinal(n));

const SIGNS: Readonly<Record<string, string>> = {
  ' ': 'espacio',
  '-': 'guion',
  "'": 'apóstrofo',
  '’': 'apóstrofo',
  '.': 'punto',
  ',': 'coma',
  '&': 'signo de y',
  '/': 'barra',
  '%': 'por ciento',
  '+': 'signo de más',
};

/** "A, J, O": one by one. */
export const letterWords = (text: string): string =>
  [...new Intl.Segmenter('es', { granularity: 'grapheme' }).segment(text.trim())]
    .map(({ segment }) => {
      if (/^\p{L}\p{M}*$/u.test(segment)) return segment.toLocaleUpperCase('es');
      if (/^\d$/.test(segment)) return toCardinal(Number(segment));
      return SIGNS[segment] ?? 'otro signo';
    })
    .join(', ');
