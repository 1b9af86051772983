/** How a move was heard, for whoever asks why an answer came: nothing is decided by it. */
import type { Query } from '../protocol/query.js';
import type { Qualifier } from '../protocol/qualifiers.js';
import type { Act, Expectation, Intent, Slots, Statement, Understanding } from './intents.js';
import { moodOf, MOODS, type Mood } from './learned/index.js';
import { lexiconFor, normalise } from './words/index.js';

export interface WhyHeard {
  readonly kinds: readonly Intent[];
  readonly verdict: Understanding['verdict'];
  readonly confidence: number;
  /** The likeliest by what was learned of moods, and its share; null for a language that learned none. */
  readonly mood: { readonly name: Mood; readonly share: number } | null;
  /** Words that no part of the meaning took. */
  readonly left: readonly string[];
  readonly qualifiers: readonly Qualifier[];
  /** The parts of each act that is neither a question put together nor a telling. */
  readonly slots: readonly Slots[];
  readonly queries: readonly Query[];
  readonly statements: readonly Statement[];
}

const actsOf = ({ readings: [best], question, settles }: Understanding): readonly Act[] => [
  ...(settles ? [{ intent: settles.intent, slots: {} }] : []),
  ...(settles ? actsOf(settles.rest) : (best?.acts ?? question?.acts ?? [])),
];

export const whyHeard = (
  words: string,
  locale: string,
  expecting: Expectation,
  understanding: Understanding,
): WhyHeard => {
  const { verdict, readings, question, qualifiers = [] } = understanding;
  const { language } = lexiconFor(locale);
  const { tokens } = normalise(words, locale);
  const shares = moodOf(tokens, language, { expecting });
  const mood = shares && [...MOODS].sort((a, b) => shares[b] - shares[a])[0]!;
  const acts = actsOf(understanding);
  const asks = question && acts.some((act) => question.acts.includes(act));
  return {
    kinds: acts.map(({ intent }) => intent),
    verdict,
    confidence: readings[0]?.confidence ?? 0,
    mood: mood && shares ? { name: mood, share: shares[mood] } : null,
    left: [
      ...acts.flatMap(({ slots }) => slots.unused ?? []),
      ...(asks ? question.left.flatMap((at) => tokens[at] ?? []) : []),
    ],
    qualifiers,
    slots: acts.flatMap(({ slots: { query, edit, statements, unused: _unused, ...slots } }) =>
      query || edit || statements || Object.keys(slots).length === 0 ? [] : [slots],
    ),
    queries: acts.flatMap(({ slots: { query, edit } }) => query ?? edit?.query ?? []),
    statements: acts.flatMap(({ slots }) => slots.statements ?? []),
  };
};
