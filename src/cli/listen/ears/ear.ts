/** An ear: sound to guesses. Which one is plugged in is one option of `tellshelf listen`. */
import type { BiasingForm } from '../../../biasing/index.js';
import type { Guess } from '../combine.js';

/** The household's names for a recogniser, as they are now. */
export type Lists = (form: BiasingForm) => Promise<string>;

export interface Ear {
  /** Mono sound, 16 bits, 16,000 a second, as a WAV file. Best first; empty: nothing was heard. @throws EarFault */
  hear(file: string): Promise<readonly Guess[]>;
  /** Takes the names, again whenever they may have changed. */
  learn(lists: Lists): Promise<void>;
  /** Words that it cannot hear. */
  readonly deafTo: readonly string[];
  close(): Promise<void>;
}

/** The recogniser failed, in plain words. Nothing was heard, and the next utterance may be. */
export class EarFault extends Error {
  override readonly name = 'EarFault';
}

/** A recogniser that takes longer for an utterance of twenty seconds is of no use, or hangs. */
export const EAR_SECONDS = 30;
