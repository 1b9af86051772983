import type { Word } from '../tokens.js';
import { sayNumber, sayOrdinal } from '../spoken-numbers.js';
import { asWords, type Pass } from './pass.js';

/**
 * Figures become number words, the form recognisers mostly give: "2 tubs" is "two tubs",
 * "9th" is "ninth", "1.5" is "one point five". Fractions, clock times and dates written with
 * signs ("1/2", "18:00", "03/15") stay whole: what they mean depends on what was asked.
 */
export const figures: Pass = (words, lexicon) => {
  if (!words.some((word) => /^\d/.test(word.text))) return words;
  let changed = false;
  const out = words.flatMap((word): Word[] => {
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
