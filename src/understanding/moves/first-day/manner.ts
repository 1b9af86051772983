/** How she likes to be talked to. */
import type { SaidManner } from '../../../protocol/first-day.js';
import type { FirstDayWords } from './words.js';

export const mannerIn = (tokens: readonly string[], words: FirstDayWords): SaidManner | null => {
  const said = new Set<string>();
  for (let at = 0; at < tokens.length;) {
    const hit = words.manner.longestAt(tokens, at);
    if (hit) said.add(hit.value);
    at += hit?.length ?? 1;
  }
  if (said.size === 0) return null;
  const one = <T extends string>(...of: readonly T[]): T | undefined => of.find((value) => said.has(value));
  const length = one('short', 'full', 'usual');
  const rate = one('slower', 'faster');
  const volume = one('louder', 'quieter');
  return {
    ...(length ? { length } : {}),
    ...(rate ? { rate } : {}),
    ...(volume ? { volume } : {}),
    ...(said.has('whisper') ? { whisper: true as const } : {}),
  };
};

/** The same, told while something else was asked: only where it is said that the talk is meant. */
export const mannerBeside = (tokens: readonly string[], words: FirstDayWords): SaidManner | null =>
  tokens.some((_, at) => words.talks.longestAt(tokens, at) !== null) ? mannerIn(tokens, words) : null;
