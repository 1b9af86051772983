/**
 * What a plugged recogniser answers: a guess a line, best first, as confidence (0 to 1), tab, words; words alone
 * where it has no confidences. No lines: nothing was heard. Or JSON: `{"hypotheses": [{"text", "confidence"}]}`, or
 * `{"text"}` alone.
 */
import { z } from 'zod';
import { hypothesis, limits } from '../../../../shared/wire/turn.js';
import type { Guess } from '../combine.js';
import { EarFault } from './ear.js';

/** More than this is no list of guesses. Bytes. */
export const LONGEST_ANSWER = 64 * 1024;

/** @throws EarFault: what is no UTF-8 would be heard as other words */
export const asText = (parts: readonly Uint8Array[]): string => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
  } catch {
    throw new EarFault("The recogniser's answer cannot be read: it is not UTF-8.");
  }
};

/** Where a recogniser is not sure how sure it is: less with each guess, as with one that ranks only. */
const unsure = (index: number): number => Math.max(0.1, 0.6 - 0.1 * index);

const asGuesses = (list: readonly { text: string; confidence?: number | undefined }[]): Guess[] =>
  list
    .map(({ text, confidence }, index) => ({ text: text.trim(), confidence: confidence ?? unsure(index) }))
    .filter(({ text }) => text !== '')
    .sort((a, b) => b.confidence - a.confidence)
    .slice(0, limits.hypotheses);

const lineIn = (line: string, index: number): { text: string; confidence?: number } => {
  const tab = line.indexOf('\t');
  if (tab < 0) return { text: line };
  const confidence = Number(line.slice(0, tab));
  if (line.slice(0, tab).trim() === '' || !(confidence >= 0 && confidence <= 1))
    throw new EarFault(
      `The recogniser's answer cannot be read: line ${index + 1} begins with no confidence from 0 to 1.`,
    );
  return { text: line.slice(tab + 1), confidence };
};

/** @throws EarFault that says where it cannot be read, without what was heard */
export const readGuesses = (answer: string): Guess[] => {
  // No words begin so.
  if (answer.trimStart().startsWith('{')) return readJsonGuesses(answer);
  const lines = answer.split(/\r?\n/).filter((line) => line.trim() !== '');
  const guesses = lines.map(lineIn);
  if (guesses.some(({ text }) => text.length > limits.utterance))
    throw new EarFault(
      `The recogniser's answer cannot be read: a guess has over ${limits.utterance} letters.`,
    );
  return asGuesses(guesses);
};

const answered = z.union([
  z.object({ hypotheses: z.array(hypothesis.loose()) }),
  z.object({ text: z.string().max(limits.utterance) }).transform(({ text }) => ({ hypotheses: [{ text }] })),
]);

/** By where it is, never by what was heard. */
const whatIsWrong = (json: unknown): string => {
  const of = (typeof json === 'object' && json !== null ? json : {}) as Record<string, unknown>;
  const list = of['hypotheses'];
  if (!Array.isArray(list))
    return typeof of['text'] === 'string' ? 'its text is too long' : 'it has neither hypotheses nor a text';
  const at = list.findIndex((one) => !hypothesis.loose().safeParse(one).success);
  return `hypothesis ${at + 1} has no text of at most ${limits.utterance} letters, or a confidence that is not from 0 to 1`;
};

/** @throws EarFault */
export const readJsonGuesses = (answer: string): Guess[] => {
  let json: unknown;
  try {
    json = JSON.parse(answer);
  } catch {
    throw new EarFault("The recogniser's answer cannot be read: it is no whole JSON.");
  }
  const read = answered.safeParse(json);
  if (!read.success) throw new EarFault(`The recogniser's answer cannot be read: ${whatIsWrong(json)}.`);
  return asGuesses(read.data.hypotheses);
};
