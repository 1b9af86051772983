import { LRUCache } from 'lru-cache';
import type { DynamicMatch, DynamicRule } from '../../grammar/api.js';

/**
 * One array for all that hold the same words: several readers ask the same rules of one sentence, each from an array
 * of its own. So many sentences are kept; a turn has some ten.
 */
const sentences = new LRUCache<string, readonly string[]>({ max: 256 });
const sameWords = new WeakMap<readonly string[], readonly string[]>();
/** The array that stands for this one. It must not change afterwards. */
const standing = (tokens: readonly string[]): readonly string[] => {
  let one = sameWords.get(tokens);
  if (one === undefined) {
    const words = tokens.join('\n');
    one = sentences.get(words) ?? tokens;
    if (one.length !== tokens.length) one = tokens;
    sentences.set(words, one);
    sameWords.set(tokens, one);
  }
  return one;
};

/** A rule that reads each place of a sentence once. An array of words must not change once it was asked about. */
export const rememberingRule = (
  matchesAt: (tokens: readonly string[], from: number) => readonly DynamicMatch[],
): DynamicRule => {
  const read = new WeakMap<readonly string[], (readonly DynamicMatch[] | undefined)[]>();
  return {
    matchesAt(tokens, from) {
      const sentence = standing(tokens);
      let places = read.get(sentence);
      if (!places) read.set(sentence, (places = []));
      return (places[from] ??= matchesAt(sentence, from));
    },
  };
};

export const noMatches: readonly DynamicMatch[] = [];
