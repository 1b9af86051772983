import type { Word } from '../tokens.js';
import { sayNumber, sayOrdinal } from '../spoken-numbers.js';
import { asWords, type Pass } from './pass.js';

/**
 * Places of figures that follow each other as no amounts do, "1234 5678" or "12 34 56": a code, whose
 * figures are said one by one. Else "1100 1234" would run into one number.
 */
const codeIn = (words: readonly Word[]): ReadonlySet<number> => {
  const code = new Set<number>();
  const isFigures = (at: number): boolean => /^\d+$/.test(words[at]?.text ?? '');
  for (let from = 0; from < words.length; from += 1) {
    let to = from;
    while (isFigures(to)) to += 1;
    const many = to - from;
    const long = many === 2 && words.slice(from, to).every(({ text }) => text.length >= 3);
    if (many >= 3 || long) for (let at = from; at < to; at += 1) code.add(at);
    from = Math.max(from, to);
  }
  return code;
};

/**
 * Figures become number words, the form recognisers mostly give: "2 tubs" is "two tubs",
 * "9th" is "ninth", "1.5" is "one point five". Fractions, clock times and dates written with
 * signs ("1/2", "18:00", "03/15") stay whole: what they mean depends on what was asked.
 */
export const figures: Pass = (words, lexicon) => {
  if (!words.some((word) => /^\d/.test(word.text))) return words;
  const code = codeIn(words);
  let changed = false;
  const out = words.flatMap((word, at): Word[] => {
    if (code.has(at)) {
      changed = true;
      return asWords([...word.text].map((digit) => sayNumber(digit, lexicon) ?? digit).join(' '), word.pause);
    }
    const ordinal = /^(\d{1,2})(?:st|nd|rd|th)$/.exec(word.text);
    const plain = /^\d+(?:\.\d{1,3})?$/.test(word.text);
    const said = ordinal
      ? sayOrdinal(Number(ordinal[1]), lexicon)
      : plain
        ? sayNumber(word.text, lexicon)
        : null;
    if (said === null) return [word];
    changed = true;
    return asWords(said, word.pause);
  });
  return changed ? out : words;
};
