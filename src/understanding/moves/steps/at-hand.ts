/** The steps that are being followed, made ready for hearing what is said of them. */
import { LRUCache } from 'lru-cache';
import { contentStems, stemOf } from '../../names/stems.js';
import { normalise } from '../../words/index.js';
import { type Lexicon, lexiconFor } from '../../words/lexicon.js';
import type { StepsAtHand } from '../../intents.js';
import { stepWordsOf } from './question-words.js';

/** A sentence of a step: as it is said, and its words. */
export interface StepSentence {
  readonly text: string;
  readonly tokens: readonly string[];
  readonly stems: ReadonlySet<string>;
}

export interface ReadStep {
  readonly sentences: readonly StepSentence[];
  readonly stems: ReadonlySet<string>;
}

export interface ReadSteps {
  readonly steps: readonly ReadStep[];
  /** Index of the step just read. */
  readonly at: number;
  /** The step it stands at was not read yet: a timer runs for the one before. */
  readonly waiting: boolean;
  readonly stem: (word: string) => string;
  /** Words of the step just read; of all of them. */
  readonly here: ReadonlySet<string>;
  readonly anywhere: ReadonlySet<string>;
  /** Words of what they are called: the dish, and the way it is made. */
  readonly dish: ReadonlySet<string>;
}

const sentencesOf = (text: string): readonly string[] =>
  text
    .split(/(?<=[.!?;])\s+/u)
    .map((one) => one.trim())
    .filter((one) => one !== '');

const readStep = (text: string, locale: string, lexicon: Lexicon): ReadStep => {
  const { vessels } = stepWordsOf(lexicon.language);
  const sentences = sentencesOf(text).map((one) => {
    const { tokens } = normalise(one, locale);
    // "Saucepan", asked for as a pan.
    const heads = tokens.flatMap((token) =>
      [...vessels].filter((vessel) => token !== vessel && token.endsWith(vessel)),
    );
    return { text: one, tokens, stems: new Set(contentStems([...tokens, ...heads], lexicon)) };
  });
  return { sentences, stems: new Set(sentences.flatMap(({ stems }) => [...stems])) };
};

// The same texts turn after turn: read once for as long as they are followed.
const remembered = new LRUCache<string, readonly ReadStep[]>({ max: 50 });

export const readSteps = (given: StepsAtHand, locale: string): ReadSteps => {
  const lexicon = lexiconFor(locale);
  const key = JSON.stringify([locale, given.texts]);
  let steps = remembered.get(key);
  if (!steps) remembered.set(key, (steps = given.texts.map((text) => readStep(text, locale, lexicon))));
  const at = Math.max(0, given.waiting ? given.at - 1 : given.at);
  return {
    steps,
    at,
    waiting: given.waiting,
    stem: (word) => stemOf(word, lexicon),
    here: steps[at]?.stems ?? new Set(),
    anywhere: new Set(steps.flatMap(({ stems }) => [...stems])),
    dish: readStep(given.title, locale, lexicon).stems,
  };
};

/** Whether a step tells to do what makes it so: "loose", where one says "loosen the lid". */
export const stepsLeadTo = (word: string, given: StepsAtHand, locale: string): boolean => {
  const { stem, anywhere } = readSteps(given, locale);
  const said = stem(word);
  return [...anywhere].some(
    (one) =>
      Math.min(one.length, said.length) >= leastAlike && (one.startsWith(said) || said.startsWith(one)),
  );
};
const leastAlike = 4;

/** Whether a step, or the name of the dish, has a word of this. */
export const stepsSpeakOf = (words: string, given: StepsAtHand, locale: string): boolean => {
  const { stem, anywhere, dish } = readSteps(given, locale);
  return words.split(' ').some((word) => anywhere.has(stem(word)) || dish.has(stem(word)));
};
