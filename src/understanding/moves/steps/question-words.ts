/** Words by which the sentence of a step is found that answers a question: `words/step-figures.txt`. */
import { linesOf } from '../../word-lists.js';

interface StepWords {
  readonly until: ReadonlySet<string>;
  readonly heat: ReadonlySet<string>;
  readonly degrees: ReadonlySet<string>;
  /** Of a thermometer in the food. */
  readonly probe: ReadonlySet<string>;
  /** How many at a time. */
  readonly limit: ReadonlySet<string>;
  /** What a step is done in: a saucepan is a pan. */
  readonly vessels: ReadonlySet<string>;
}

const known = new Map<string, StepWords>();

export const stepWordsOf = (language: string): StepWords => {
  let words = known.get(language);
  if (!words) {
    const lists = new Map(
      linesOf(language, 'step-figures').map((line) => {
        const [name = '', entries = ''] = line.split(':');
        return [name, new Set(entries.split(',').map((entry) => entry.trim()))] as const;
      }),
    );
    const list = (name: string): ReadonlySet<string> => lists.get(name) ?? new Set();
    words = {
      until: list('until'),
      heat: list('heat'),
      degrees: list('degrees'),
      probe: list('probe'),
      limit: list('limit'),
      vessels: list('vessels'),
    };
    known.set(language, words);
  }
  return words;
};
