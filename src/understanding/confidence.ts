/** How sure a reading is: what is known of it, weighed into one number between 0 and 1. */

export interface Evidence {
  /** Grammar weight, natural logarithm: 0 when every word was expected. */
  readonly score: number;
  /** This meaning's part of all that the guesses could mean, 0 to 1. */
  readonly part: number;
  /** A word was put back that was not heard. */
  readonly mended: boolean;
}

/**
 * A logistic model, fitted on the development data under tests/data. `npx tsx tests/accuracy/fit.ts`
 * fits it again: its optimum is hardly better than these (mean log loss 0.189 against 0.194), and
 * what it makes of `part` and `mended` rests on few readings, so those two stay careful. `npm run accuracy` prints how often readings of each confidence are right.
 */
export const confidenceModel = { bias: 3.6, score: 0.7, part: 3, mended: -1.3 } as const;

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

export const confidenceOf = ({ score, part, mended }: Evidence): number =>
  logistic(
    confidenceModel.bias +
      confidenceModel.score * score +
      confidenceModel.part * (part - 1) +
      (mended ? confidenceModel.mended : 0),
  );
