/** What is surely told is no question and what is surely asked changes nothing, whatever else the words may mean. */
import { CHANGING_INTENTS, type Act, type Expectation, type Intent } from './intents.js';
import { moodOf, type Mood } from './learned/index.js';

/** So sure of a mood, a reading of another one is dropped. */
const surely = 0.9;

const changing: ReadonlySet<Intent> = new Set<Intent>(CHANGING_INTENTS);

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

/** All acts change something, and the words surely ask. */
export const changesWhatIsAsked = (
  acts: readonly Act[],
  tokens: readonly string[],
  hearing: { readonly language: string; readonly expecting: Expectation },
): boolean => acts.every(({ intent }) => changing.has(intent)) && sureMood(tokens, hearing) === 'asked';
