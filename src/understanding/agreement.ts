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

/** A word heard for another most often begins like it; so "the" does not stand for "rice" where "rise" does. */
const swap = (a: string, b: string): number => (a === b ? 0 : a[0] === b[0] ? 1 : 1.5);

/** Where each word of `other` stands beside the words of `pivot`, by the fewest steps from one to the other. */
const aligned = (pivot: readonly string[], other: readonly string[]): readonly (readonly string[])[] => {
  const steps: number[][] = [Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= pivot.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1)
      row.push(
        Math.min(
          steps[i - 1]![j]! + 1,
          row[j - 1]! + 1,
          steps[i - 1]![j - 1]! + swap(pivot[i - 1]!, other[j - 1]!),
        ),
      );
    steps.push(row);
  }
  // Slots in turn: before the first word, the first word, before the second, …, after the last.
  const slots: string[][] = Array.from({ length: 2 * pivot.length + 1 }, () => []);
  let [i, j] = [pivot.length, other.length];
  while (i > 0 || j > 0) {
    const here = steps[i]![j]!;
    if (i > 0 && j > 0 && here === steps[i - 1]![j - 1]! + swap(pivot[i - 1]!, other[j - 1]!))
      slots[2 * (i -= 1) + 1]!.unshift(other[(j -= 1)]!);
    else if (j > 0 && here === steps[i]![j - 1]! + 1) slots[2 * i]!.unshift(other[(j -= 1)]!);
    else i -= 1;
  }
  return slots;
};

/** The sentence most of the guesses agree on word for word, which none of them need be; null for fewer than three. */
export const consensusOf = (guesses: readonly Guess[]): readonly string[] | null => {
  const [first] = guesses;
  if (!first || guesses.length < 3) return null;
  const sides = guesses.map(({ tokens, vote }) => ({ slots: aligned(first.tokens, tokens), vote }));
  const words: string[] = [];
  for (let slot = 0; slot <= 2 * first.tokens.length; slot += 1) {
    const votes = new Map<string, number>();
    for (const { slots, vote } of sides) {
      const said = slots[slot]!.join(' ');
      votes.set(said, (votes.get(said) ?? 0) + vote);
    }
    const [most] = [...votes].sort((a, b) => b[1] - a[1]);
    if (most![0] !== '') words.push(...most![0].split(' '));
  }
  return words.length > 0 ? words : null;
};

/** The guesses with their consensus second: it is no guess of its own, but what the others bear out. */
export const withConsensus = (guesses: readonly Guess[]): readonly Guess[] => {
  const words = consensusOf(guesses);
  if (!words) return guesses;
  const [first, ...rest] = guesses as readonly [Guess, ...Guess[]];
  const key = words.join(' ');
  if (key === first.tokens.join(' ')) return guesses;
  const known = rest.find(({ tokens }) => tokens.join(' ') === key);
  const agreed: Guess = {
    heard: known?.heard ?? key,
    tokens: words,
    said: words,
    pauses: new Set(),
    hedged: known?.hedged ?? first.hedged,
    aside: known?.aside ?? first.aside,
    share: first.share,
    vote: known?.vote ?? 0,
  };
  return [first, agreed, ...rest.filter((guess) => guess !== known)];
};
