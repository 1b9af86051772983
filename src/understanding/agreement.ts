/** What the guesses of a recogniser say together, where each alone may have misheard a word. */
import type { Guess } from './guesses.js';
import { DESTRUCTIVE_INTENTS, type Act } from './intents.js';

export const losesSomething = (acts: readonly Act[]): boolean =>
  acts.some(({ intent }) => DESTRUCTIVE_INTENTS.has(intent));

const holds = (tokens: readonly string[], words: string): boolean =>
  ` ${tokens.join(' ')} `.includes(` ${words} `);

const named = (acts: readonly Act[]): readonly string[] =>
  acts.flatMap(({ slots }) =>
    [slots.item, ...(slots.items ?? []), slots.place].flatMap((mention) => mention?.words ?? []),
  );

const intentsOf = (acts: readonly Act[]): string => acts.map(({ intent }) => intent).join('+');

/**
 * True when the guesses do not bear out a loss: most of them heard another thing than the one it would
 * be done to, or more of those that make sense mean another request. `read` holds what each guess says
 * by itself.
 */
export const disputed = (
  acts: readonly Act[],
  guesses: readonly Guess[],
  read: ReadonlyMap<Guess, readonly Act[]>,
): boolean => {
  const votes = (holding: (guess: Guess) => boolean): number =>
    guesses.reduce((sum, guess) => sum + (holding(guess) ? guess.vote : 0), 0);
  if (named(acts).some((words) => votes(({ tokens }) => holds(tokens, words)) < 0.5)) return true;
  const meant = intentsOf(acts);
  const same = votes((guess) => read.has(guess) && intentsOf(read.get(guess)!) === meant);
  return votes((guess) => read.has(guess)) - same > same;
};
