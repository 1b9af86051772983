/**
 * Two ears are better than one. A recogniser held to the listening grammar hears our own sentences
 * well, and turns everything else into a fluent sentence of ours that nobody said. The open
 * recogniser errs in single words. So the closed one is believed as far as the open one bears it out.
 */

export interface Guess {
  readonly text: string;
  readonly confidence: number;
}

const split = (text: string): string[] => text.toLowerCase().split(/\s+/).filter(Boolean);

/** Words wrong of the words in `reference` (edit distance over words), at most 1. */
export const wordErrorRate = (reference: string, heard: string): number => {
  const one = split(reference);
  const other = split(heard);
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  one.forEach((word, i) => {
    const next = [i + 1];
    other.forEach((said, j) => {
      next.push(Math.min((row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1, (row[j] ?? 0) + (word === said ? 0 : 1)));
    });
    row = next;
  });
  return Math.min(1, (row[other.length] ?? 0) / Math.max(1, one.length));
};

/** Letters wrong, word breaks aside: "lentils to" is near "lentil stew". */
const letterErrorRate = (one: string, other: string): number =>
  wordErrorRate([...one.replace(/\s+/g, '')].join(' '), [...other.replace(/\s+/g, '')].join(' '));

/** How far the open recogniser's guesses bear out a sentence of the closed one, 0 to 1. */
export const agreement = (closed: string, open: readonly string[]): number =>
  open.length === 0 ? 0 : 1 - Math.min(...open.map((guess) => letterErrorRate(closed, guess)));

/** Fitted on spoken sentences inside and outside the grammar; see tests/listen. */
export const BORNE_OUT = 0.62;

/**
 * Ranked guesses for the service. The closed recogniser's sentence comes first when it is borne out
 * and is left out when it is not: a wrong sentence of ours does more harm than a wrong word.
 */
export const combine = (open: readonly string[], closed: readonly string[]): Guess[] => {
  const guesses = open.map((text, index) => ({ text, confidence: Math.max(0.1, 0.6 - 0.1 * index) }));
  const best = closed[0];
  if (best === undefined) return guesses;
  const borne = agreement(best, open);
  if (borne < BORNE_OUT) return guesses;
  return [
    { text: best, confidence: Math.min(0.95, borne) },
    ...guesses.filter((guess) => guess.text !== best),
  ].slice(0, 10);
};
