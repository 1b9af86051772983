import type { DynamicMatch, DynamicRule } from '../../grammar/api.js';

/**
 * A rule that reads each place of a sentence once. Sentences are told apart by their array,
 * which must not change afterwards.
 */
export const rememberingRule = (
  matchesAt: (tokens: readonly string[], from: number) => readonly DynamicMatch[],
): DynamicRule => {
  const sentences = new WeakMap<readonly string[], (readonly DynamicMatch[] | undefined)[]>();
  return {
    matchesAt(tokens, from) {
      let places = sentences.get(tokens);
      if (!places) sentences.set(tokens, (places = []));
      return (places[from] ??= matchesAt(tokens, from));
    },
  };
};

export const noMatches: readonly DynamicMatch[] = [];
