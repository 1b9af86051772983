/** What is surely told is no question, whatever else the words may mean. */
import type { Expectation } from './intents.js';
import { moodOf, type Mood } from './learned/index.js';

/** So sure of a mood, a reading of another one is dropped. */
const surely = 0.9;

/** The mood that the words are surely in; null where that is open. */
export const sureMood = (
  tokens: readonly string[],
  { language, expecting }: { readonly language: string; readonly expecting: Expectation },
): Mood | null => {
  const shares = moodOf(tokens, language, { expecting });
  if (!shares) return null;
  const [best] = (Object.keys(shares) as Mood[]).sort((one, other) => shares[other] - shares[one]);
  return best && shares[best] >= surely ? best : null;
};
