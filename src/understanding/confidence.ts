/** How sure a reading is: what is known of it, weighed into one number between 0 and 1. */
import type { Act } from './intents.js';

export interface Evidence {
  readonly acts: readonly Act[];
  /** Grammar weight, natural logarithm: 0 when every word was expected. */
  readonly score: number;
  /** The recogniser's belief in the words, 0 to 1. */
  readonly belief: number;
  /** This meaning's part of all that the guesses could mean, 0 to 1. */
  readonly part: number;
}

/** Weights of the logistic model; fitted by `tests/accuracy` on the development data. */
const model = { bias: 3, score: 0.6, part: 2, belief: 0.5 } as const;

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

export const confidenceOf = ({ score, belief, part }: Evidence): number =>
  logistic(model.bias + model.score * score + model.part * (part - 1) + model.belief * (belief - 1));
