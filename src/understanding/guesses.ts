/** The recogniser's guesses, tidied, and how far each is believed. */
import type { HeardWords } from './learned-reading.js';
import type { Hypothesis } from './intents.js';
import { normalise } from './words/index.js';

export interface Guess extends HeardWords {
  /** Said with a word of doubt. */
  readonly hedged: boolean;
  /** As `tokens`, with slips of the tongue and their mending still in. */
  readonly said: readonly string[];
  /** Of `said`: before which of its words a pause was written. */
  readonly pauses: ReadonlySet<number>;
  /** Weight in a vote of the guesses on a word, adding up to one. */
  readonly vote: number;
}

const mostGuesses = 5;
/** Words read in all of them: of a long sentence its lesser guesses are left, for reading costs by the word. */
const mostWords = 120;

const confidenceIn = ({ confidence }: Hypothesis): number => Math.max(0.02, confidence ?? 0.5);

/** A recogniser that gives no confidences still ranks: each place is believed half as much as the one before. */
const beliefIn = (hypothesis: Hypothesis, rank: number): number => confidenceIn(hypothesis) * 0.5 ** rank;

/** Where it is about one word, three lesser guesses outvote the first. */
const voteOf = (hypothesis: Hypothesis, rank: number): number => confidenceIn(hypothesis) / (rank + 1);

/** Fillers that are a message of their own when the rest says nothing. */
const telling = /\b(thanks?|think|gracias)\b/;
export const asideOf = (notes: ReturnType<typeof normalise>['notes']): readonly string[] =>
  notes.filter(({ from, to }) => to === '' && telling.test(from)).flatMap(({ from }) => from.split(' '));

/** Guesses of different words, best first. */
export const guessesFrom = (hypotheses: readonly Hypothesis[], locale: string): readonly Guess[] => {
  const byWords = new Map<string, Omit<Guess, 'share' | 'vote'> & { belief: number; vote: number }>();
  let read = 0;
  hypotheses.slice(0, mostGuesses).forEach((hypothesis, rank) => {
    const tidied = normalise(hypothesis.text, locale);
    const { tokens, hedged, notes } = tidied;
    if (tokens.length === 0) return;
    read += tokens.length;
    if (read > mostWords && rank > 0) return;
    const key = tokens.join(' ');
    const belief = beliefIn(hypothesis, rank);
    const vote = voteOf(hypothesis, rank);
    const known = byWords.get(key);
    if (known) {
      known.belief += belief;
      known.vote += vote;
    } else {
      const said = notes.some(({ pass }) => pass === 'repairs')
        ? normalise(hypothesis.text, locale, { mended: false })
        : tidied;
      byWords.set(key, {
        heard: hypothesis.text,
        tokens,
        said: said.tokens,
        pauses: said.pauses,
        hedged,
        aside: asideOf(notes),
        belief,
        vote,
      });
    }
  });
  const guesses = [...byWords.values()];
  const all = guesses.reduce((sum, { belief }) => sum + belief, 0);
  const votes = guesses.reduce((sum, { vote }) => sum + vote, 0);
  return guesses.map(({ belief, vote, ...guess }) => ({ ...guess, share: belief / all, vote: vote / votes }));
};
