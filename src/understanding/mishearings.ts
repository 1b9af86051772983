/**
 * What may have been said where a sentence makes no sense as heard: one word (or two run
 * together) put back, by the list of words that recognisers mistake for one another.
 */
import { alternativesFor } from './names/index.js';
import type { Lexicon } from './words/index.js';

/** Small words are heard for one another too often to mean anything, but for these. */
const tellingSmallWords = new Set(['why', 'hi', 'here is', 'but']);

/** Mended sentences of one guess that are tried at most. */
const mostVariants = 10;

/** `tokens` with one likely mishearing put right, likeliest first. */
export const mendedOnce = (tokens: readonly string[], lexicon: Lexicon): readonly (readonly string[])[] => {
  const small = new Set([...lexicon.joining.stops, ...lexicon.joining.articles, ...lexicon.joining.inside]);
  const variants: (readonly string[])[] = [];
  for (let at = 0; at < tokens.length && variants.length < mostVariants; at += 1) {
    for (const length of [2, 1]) {
      if (at + length > tokens.length) continue;
      const heard = tokens.slice(at, at + length).join(' ');
      for (const meant of alternativesFor(heard, lexicon)) {
        if (meant.split(' ').every((word) => small.has(word)) && !tellingSmallWords.has(heard)) continue;
        if (variants.length >= mostVariants) return variants;
        variants.push([...tokens.slice(0, at), ...meant.split(' '), ...tokens.slice(at + length)]);
      }
    }
  }
  return variants;
};
