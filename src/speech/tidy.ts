/** From a phrase put together to sentences as they are spoken and written. */
import { CLOSE, OPEN, unmark } from './marks.js';

const END = /[.?!…]/u;
const TRAILING = /["'”’)\]]/u;

/** Cuts where a sentence ends and another begins, never inside the household's own words. */
const splitSentences = (text: string): string[] => {
  const sentences: string[] = [];
  let depth = 0;
  let start = 0;
  const chars = [...text];
  for (let i = 0; i < chars.length; i++) {
    const char = chars[i] ?? '';
    if (char === OPEN) depth++;
    else if (char === CLOSE) depth--;
    else if (/\s/u.test(char) && depth === 0) {
      let back = i - 1;
      while (back > start && (TRAILING.test(chars[back] ?? '') || chars[back] === CLOSE)) back--;
      const next = chars[i + 1] ?? '';
      if (END.test(chars[back] ?? '') && (next === OPEN || /[\p{Lu}\p{N}"“‘(¿¡]/u.test(next))) {
        sentences.push(chars.slice(start, i).join(''));
        start = i + 1;
      }
    }
  }
  sentences.push(chars.slice(start).join(''));
  return sentences;
};

/** Our own words hold no digits: any that slipped in are said. */
const sayDigits = (text: string, numberWords: (n: number) => string): string => {
  let depth = 0;
  return text
    .split(/([\uE000\uE001])/)
    .map((piece) => {
      if (piece === OPEN) depth++;
      else if (piece === CLOSE) depth--;
      else if (depth === 0)
        return piece.replace(/\d+(?:\.\d+)?/g, (digits, at: number) => {
          const before = /[\p{L}\p{N}]/u.test(piece[at - 1] ?? '') ? ' ' : '';
          const after = /\p{L}/u.test(piece[at + digits.length] ?? '') ? ' ' : '';
          return before + numberWords(Number(digits)) + after;
        });
      return piece;
    })
    .join('');
};

const capitalised = (sentence: string): string =>
  sentence.replace(
    /^((?:[\uE000\uE001"'“‘(¿¡])*)(\p{Ll})/u,
    (_, lead: string, letter: string) => lead + letter.toLocaleUpperCase('en'),
  );

const punctuated = (sentence: string): string => {
  const bare = unmark(sentence);
  if (!/[\p{L}\p{N}\p{S}]/u.test(bare)) return '';
  const closed = bare.replace(/["'”’)\]\s]+$/u, '');
  return /[.?!…:]$/u.test(closed) ? sentence : `${sentence.replace(/[,;\s]+([\uE000\uE001]*)$/u, '$1')}.`;
};

/** Spaces and stops around what was filled in: none doubled, none before a comma. */
const spaced = (text: string): string =>
  text
    .replace(/\s+/gu, ' ')
    .replace(/ +([\uE001]*)([,.;:?!])(?=\s|$|\uE001)/gu, '$1$2')
    .replace(/([.?!…]\uE001*)\.(?!\.)/gu, '$1')
    .replace(/([,;])(?:\s*[,;])+/gu, '$1')
    .replace(/[,;]\s*([.?!])/gu, '$1')
    .trim();

/**
 * Sentences of one phrase: capital first, end mark last, single spaces, our digits as words.
 * An empty phrase has none.
 */
export const sentencesOf = (text: string, numberWords: (n: number) => string): string[] =>
  splitSentences(spaced(sayDigits(text, numberWords)))
    .map((sentence) => unmark(punctuated(capitalised(sentence.trim()))))
    .filter((sentence) => sentence !== '');
