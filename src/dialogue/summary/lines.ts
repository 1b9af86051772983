/** The lines of a summary as "the first" and "the second" count them. */
import type { Say } from '../../speech/answer.js';

/** How the names of phrases that are lines begin. */
const counts = ['chill', 'cook', 'freeze', 'use', 'throw-out'].map((what) => `summary-${what}`);

/** Each line with who must not have it; none when what was said is no summary. */
export const summaryLines = (said: readonly Say[]): readonly (readonly Say[])[] => {
  // What is counted begins the count.
  const counted = said.slice(said.findIndex(({ phrase }) => phrase === 'summary-lead') + 1);
  return counted.flatMap((one, at) => {
    if (!counts.some((begin) => one.phrase.startsWith(begin))) return [];
    const next = counted[at + 1];
    return [next?.phrase === 'summary-not-for' ? [one, next] : [one]];
  });
};
