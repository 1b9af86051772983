/** Which of two languages a sentence was said in, by how many of its words each knows. */
import { movesLexicon } from '../moves/lexicon.js';
import { wordingsFor } from '../moves/questions/wordings.js';
import { lexiconFor, normalise } from '../words/index.js';

/** How many of the words do something in a sentence of that language, or are everyday words of it. */
const wordsKnown = (text: string, locale: string): number => {
  const { language } = lexiconFor(locale);
  const moves = movesLexicon(language);
  const questions = wordingsFor(language);
  return normalise(text, locale).tokens.filter(
    (word) => moves?.phrases.has(word) || moves?.isOrdinary(word) || questions?.phrases.has(word),
  ).length;
};

/** Whether more of what was said is known in the second language than in the first. */
export const isRatherIn = (text: string, other: string, own: string): boolean =>
  wordsKnown(text, other) > wordsKnown(text, own);
