/** Which sentence of which step answers a question: figures, signs and amounts stand in the step's own words. */
import { quantityAt } from '../../numbers/quantities.js';
import { durationsAt } from '../../numbers/durations.js';
import { type Lexicon } from '../../words/lexicon.js';
import { stepWordsOf } from './question-words.js';
import type { ReadSteps, StepSentence } from './at-hand.js';

export interface Quote {
  /** The step it stands in; 0 is the first. */
  readonly step: number;
  readonly text: string;
}

/** What a sentence is to say. */
export type Fits = (sentence: StepSentence) => boolean;

/** This step first, then the next, then what was read before, then the rest. */
const nearFirst = ({ steps, at }: ReadSteps): readonly number[] => {
  const all = steps.map((_, index) => index);
  const before = all.filter((index) => index < at).toReversed();
  return [
    at,
    ...all.filter((index) => index === at + 1),
    ...before,
    ...all.filter((index) => index > at + 1),
  ];
};

const after = ({ steps, at }: ReadSteps): readonly number[] =>
  steps.flatMap((_, index) => (index > at ? [index] : []));

const find = (read: ReadSteps, fits: Fits, among: readonly number[] = nearFirst(read)): Quote | null => {
  for (const step of among) {
    const sentence = read.steps[step]?.sentences.find(fits);
    if (sentence) return { step, text: sentence.text };
  }
  return null;
};

/** It says how long. */
export const hasTime =
  (words: Lexicon): Fits =>
  ({ tokens }) =>
    tokens.some((_, from) => durationsAt(tokens, from, words).length > 0);

/** How long: a length of time, else until when. */
export const quoteTime = (read: ReadSteps, words: Lexicon): Quote | null => {
  const { until } = stepWordsOf(words.language);
  const near = nearFirst(read).slice(0, 2);
  return (
    find(read, hasTime(words), near) ??
    find(read, ({ tokens }) => tokens.some((token) => until.has(token)), near) ??
    find(read, hasTime(words))
  );
};

/** "How many minutes": a length of time, wherever it stands; else until when. */
export const quoteMinutes = (read: ReadSteps, words: Lexicon): Quote | null =>
  find(read, hasTime(words)) ?? quoteTime(read, words);

/** How it shows that it is done: until when, else how long. */
export const quoteSign = (read: ReadSteps, words: Lexicon): Quote | null => {
  const { until } = stepWordsOf(words.language);
  const near = nearFirst(read).slice(0, 2);
  const shows: Fits = ({ tokens }) => tokens.some((token) => until.has(token));
  // A thermometer or a sign told later is surer than a time.
  return find(read, shows, near) ?? find(read, shows, after(read)) ?? find(read, hasTime(words), near);
};

export const quoteHeat = (read: ReadSteps, words: Lexicon): Quote | null => {
  const { heat, degrees } = stepWordsOf(words.language);
  const has =
    (of: ReadonlySet<string>): Fits =>
    ({ tokens }) =>
      tokens.some((token) => of.has(token));
  return (
    find(read, has(degrees)) ?? find(read, has(heat), nearFirst(read).slice(0, 2)) ?? find(read, has(heat))
  );
};

/** How hot the food is to be inside: what the thermometer in it is to say, and never what the oven is set to. */
export const quoteInside = (read: ReadSteps, words: Lexicon): Quote | null => {
  const { probe, degrees } = stepWordsOf(words.language);
  return find(
    read,
    ({ tokens }) => tokens.some((token) => degrees.has(token)) && tokens.some((token) => probe.has(token)),
  );
};

/** "Three fifty or three seventy-five?": the sentence that has one of them. */
export const quoteFigure = (read: ReadSteps, figures: readonly string[]): Quote | null =>
  find(read, ({ tokens }) => figures.some((figure) => ` ${tokens.join(' ')} `.includes(` ${figure} `)));

/** "How much of the flour": a sentence with it and a figure, this step's first. */
export const quoteAmount = (read: ReadSteps, words: Lexicon, of: readonly string[]): Quote | null => {
  const stems = of.map(read.stem).filter((stem) => read.anywhere.has(stem));
  if (stems.length === 0) return null;
  const named: Fits = (sentence) => stems.some((stem) => sentence.stems.has(stem));
  const counted: Fits = (sentence) =>
    named(sentence) && sentence.tokens.some((_, from) => quantityAt(sentence.tokens, from, words) !== null);
  return find(read, counted) ?? find(read, named);
};

/** How many at a time. */
export const quoteLimit = (read: ReadSteps, { language }: Lexicon): Quote | null => {
  const { limit } = stepWordsOf(language);
  return find(read, ({ tokens }) => [...limit].some((one) => ` ${tokens.join(' ')} `.includes(` ${one} `)));
};

/** What most of these words stand in: of this step and the next, or of all; of as good ones the one that says what is `rather` asked. */
export const quoteAbout = (read: ReadSteps, of: readonly string[], rather?: Fits): Quote | null => {
  const stems = new Set(of.map(read.stem).filter((stem) => read.anywhere.has(stem)));
  if (stems.size === 0) return null;
  const shared = (step: number): number =>
    [...stems].filter((stem) => read.steps[step]?.stems.has(stem)).length;
  const near = nearFirst(read);
  const most = Math.max(...near.map(shared));
  const best = near.filter((one) => shared(one) === most);
  const fitting = rather && best.find((one) => read.steps[one]?.sentences.some(rather));
  const step = fitting ?? best[0]!;
  const count = (sentence: StepSentence): number =>
    [...stems].filter((stem) => sentence.stems.has(stem)).length;
  const [first] = [...(read.steps[step]?.sentences ?? [])].sort((a, b) => count(b) - count(a));
  return first && count(first) > 0 ? { step, text: first.text } : null;
};
