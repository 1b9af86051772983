/** Test sentences from files, in one shape. */
import { readFileSync } from 'node:fs';
import type { Hypothesis } from '../../src/understanding/index.js';

export interface Case {
  readonly hypotheses: readonly Hypothesis[];
  /** A label of the file, when it has labels. */
  readonly label: string | null;
  /** Intents joined with "+"; null means that it must be declined. Undefined: only a label is known. */
  readonly intent?: string | null;
  readonly slots?: Readonly<Record<string, unknown>> | undefined;
}

const linesOf = (file: string): string[] =>
  readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));

/** `utterance<TAB>label`. */
export const labelled = (file: string): Case[] =>
  linesOf(file).map((line, at) => {
    const [text, label] = line.split('\t');
    if (text === undefined || label === undefined)
      throw new Error(`${file}:${at + 1}: expected utterance<TAB>label`);
    return { hypotheses: [{ text }], label };
  });

type Guess = string | { text: string; confidence?: number };
const hypothesisOf = (guess: Guess): Hypothesis =>
  typeof guess === 'string' ? { text: guess } : { text: guess.text, confidence: guess.confidence };

interface Line {
  text?: string;
  said?: string;
  nbest?: Guess[];
  intent?: string | null;
  slots?: Record<string, unknown>;
}

/** One JSON object a line: `{"text" | "nbest", "intent", "slots"}`. */
export const annotated = (file: string): Case[] =>
  linesOf(file).map((line, at) => {
    const { text, nbest, intent, slots } = JSON.parse(line) as Line;
    const guesses = nbest ?? (text === undefined ? undefined : [text]);
    if (!guesses) throw new Error(`${file}:${at + 1}: expected "text" or "nbest"`);
    return { hypotheses: guesses.map(hypothesisOf), label: null, intent: intent ?? null, slots };
  });

/** The sentences of `meanings.jsonl` as they were said. */
export const saidPlainly = (meanings: string): Case[] =>
  linesOf(meanings).map((line) => {
    const { said, intent, slots } = JSON.parse(line) as Line;
    return { hypotheses: [{ text: said! }], label: null, intent: intent ?? null, slots };
  });

/** The recognised sentences, joined to what each sentence means. */
export const recognised = (corpus: string, meanings: string): Case[] => {
  const meant = new Map(
    linesOf(meanings).map((line) => {
      const entry = JSON.parse(line) as Line;
      return [entry.said, entry] as const;
    }),
  );
  return linesOf(corpus).map((line) => {
    const { said, nbest } = JSON.parse(line) as { said: string; nbest: { text: string }[] };
    const meaning = meant.get(said);
    if (!meaning) throw new Error(`${meanings}: nothing for "${said}"`);
    return {
      hypotheses: nbest.map(({ text }) => ({ text })),
      label: null,
      intent: meaning.intent ?? null,
      slots: meaning.slots,
    };
  });
};

/** SLURP: `sentence<TAB>scenario<TAB>action`, after a heading. The label is scenario_action. */
export const slurp = (file: string): Case[] =>
  linesOf(file)
    .slice(1)
    .map((line) => {
      const [text, scenario, action] = line.split('\t');
      return { hypotheses: [{ text: text! }], label: `${scenario}_${action}` };
    });
