/** "Dinner", "the weekend": what food is kept for, or when somebody comes. */
import type { DynamicRules } from '../../grammar/api.js';
import type { Chunk } from './api.js';
import { chunksOf } from './chunks.js';
import { movesLexicon, type MovesLexicon } from './lexicon.js';

/** A thing by its place in the sentence, and an occasion by its words. */
const isOccasion = ({ kind, from, to }: Chunk, tokens: readonly string[], lexicon: MovesLexicon): boolean =>
  kind === 'thing' && lexicon.occasionAt(tokens, from) === to - from;

/** What was said, in constituents, for whoever accounts for them: "coming for dinner" names no food. */
export const constituentsOf = (
  tokens: readonly string[],
  rules: DynamicRules,
  language: string,
  pauses: ReadonlySet<number>,
): readonly Chunk[] => {
  const lexicon = movesLexicon(language);
  const found = lexicon && chunksOf(tokens, rules, language, pauses);
  return (found?.chunks ?? []).filter((chunk) => !isOccasion(chunk, tokens, lexicon!));
};
