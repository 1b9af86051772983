/**
 * What is of another world or said to somebody else, however well a rule fits it: "can the 401k I have be rolled
 * over" changes no record. One number tells it, the share of `not-ours` among the moods, and it is told before
 * anything is done; how much is too much hangs on what else speaks for it.
 */
import {
  CONTROL_INTENTS,
  type HearingContext,
  type Intent,
  type Slots,
  type Understanding,
} from './intents.js';
import { moodOf } from './learned/index.js';
import { notOursAtMost, surelyWhole } from './thresholds.js';

const ofTalk: ReadonlySet<Intent> = new Set(CONTROL_INTENTS);
/** What could hurt somebody is heard, however it is put. */
const weighty: ReadonlySet<Intent> = new Set<Intent>([
  'urgent',
  'danger',
  'add-person',
  'power-cut',
  'power-back',
]);

/** What one of her markers is to mean may be who must not eat from it, in whatever words. */
const isMeaning = (intent: Intent, { marker }: Slots): boolean =>
  intent === 'define-dots' && marker !== undefined;

/** Any word may be spelled, of whatever world it is. */
const isSpelling = (intent: Intent, { words }: Slots): boolean => intent === 'spell' && words !== undefined;

/** Of a dish of hers, in the words of its steps. */
const ofHerSteps = (intent: Intent, { item }: Slots): boolean => intent === 'ask-step' && item !== undefined;

/** While something is waited for or under way, what is said is about that. */
const isBusy = ({ expecting, steps, checking, standing }: HearingContext): boolean =>
  expecting !== 'anything' || Boolean(steps) || Boolean(checking) || Boolean(standing);

const atMost = ({ readings: [best] }: Understanding): number => {
  const { plain, talk, whole } = notOursAtMost;
  if (!best) return plain;
  if (best.whole) return whole;
  const intents = best.acts.map(({ intent }) => intent);
  // Guidance takes any words for a food.
  if (!intents.includes('guidance') && best.evidence && best.evidence.score >= surelyWhole) return whole;
  return intents.every((intent) => ofTalk.has(intent)) ? talk : plain;
};

/** Of so many guesses. A recogniser's worst make a stranger of any sentence. */
const mostJudged = 3;

/** As it was understood, or as out of scope where the words of none of the guesses are for us. */
export const oursOnly = (
  understood: Understanding,
  guesses: readonly { readonly tokens: readonly string[] }[],
  language: string,
  context: HearingContext,
): Understanding => {
  const { verdict, readings, question } = understood;
  if (verdict === 'out-of-scope' || verdict === 'nothing-heard' || isBusy(context)) return understood;
  if (
    readings[0]?.acts.some(
      ({ intent, slots }) =>
        weighty.has(intent) ||
        isMeaning(intent, slots) ||
        isSpelling(intent, slots) ||
        ofHerSteps(intent, slots),
    )
  )
    return understood;
  const most = atMost(understood);
  const isOurs = (tokens: readonly string[]): boolean =>
    (moodOf(tokens, language, context)?.['not-ours'] ?? 0) <= most;
  return guesses.slice(0, mostJudged).some(({ tokens }) => isOurs(tokens))
    ? understood
    : {
        readings: [],
        margin: 1,
        verdict: 'out-of-scope',
        // Right after an answer, a question of which every word is used may be of that: "what else did she make".
        ...(question && context.told && question.outright && question.left.length === 0 ? { question } : {}),
      };
};
