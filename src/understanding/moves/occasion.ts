/** "Dinner", "the weekend": what food is kept for, or when somebody comes. */
import type { Chunk } from './api.js';
import type { MovesLexicon } from './lexicon.js';

/** A thing by its place in the sentence, and an occasion by its words. */
export const isOccasion = (
  { kind, from, to }: Chunk,
  tokens: readonly string[],
  lexicon: MovesLexicon,
): boolean => kind === 'thing' && lexicon.occasionAt(tokens, from) === to - from;
