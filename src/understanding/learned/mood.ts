/**
 * What is done with a stretch of words, whatever they are about: told, asked, ordered, answered, or not said to
 * us at all. These are the communicative functions of ISO 24617-2 in five heaps, judged by weights fitted on
 * examples (`npm run learn`): `grammars/<language>/learned/mood.bin`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../../project-files.js';
import type { Expectation } from '../intents.js';
import { moodFeatures, readMoodWords, type MoodWords } from './mood-features.js';

/**
 * - `told`: something was done, is so, holds, is due, who and when (inform, correction, report of a step);
 * - `asked`: any question, with or without a question word or mark, also "tell me what …" and "read me …";
 * - `ordered`: a request or instruction: put, set, on the list, off it, next, stop, say it again;
 * - `answered`: a yes, a no, a name or figure alone, thanks, a greeting, "okay", "done";
 * - `not-ours`: said to somebody else, chatter, another world.
 */
export const MOODS = ['told', 'asked', 'ordered', 'answered', 'not-ours'] as const;
export type Mood = (typeof MOODS)[number];
/** A share for each mood, adding up to one. */
export type MoodShares = Readonly<Record<Mood, number>>;

/**
 * The file: a 4-byte float that whole numbers are steps of; then, for each feature, its 4-byte hash, rising, and
 * a signed byte for each mood. Little-endian.
 */
export const MOOD_ROW = 4 + MOODS.length;

/** FNV-1a, 32 bits, over UTF-16 units. */
export const hashOf = (feature: string): number => {
  let hash = 0x811c9dc5;
  for (let at = 0; at < feature.length; at += 1) hash = Math.imul(hash ^ feature.charCodeAt(at), 0x01000193);
  return hash >>> 0;
};

export interface MoodWeights {
  readonly step: number;
  /** Where each feature's weights begin, by its hash. */
  readonly at: ReadonlyMap<number, number>;
  readonly weights: Int8Array;
}

export const moodWeightsIn = (file: Buffer): MoodWeights => {
  const at = new Map<number, number>();
  for (let row = 4; row + MOOD_ROW <= file.length; row += MOOD_ROW) at.set(file.readUInt32LE(row), row + 4);
  return {
    step: file.readFloatLE(0),
    at,
    weights: new Int8Array(file.buffer, file.byteOffset, file.byteLength),
  };
};

/** How much the sum over so many features counts: long stretches are not surer for being long. */
export const scaleOf = (features: number): number => 8 / Math.sqrt(features + 1);

const sharesFrom = (sums: readonly number[]): MoodShares => {
  const most = Math.max(...sums);
  const parts = sums.map((sum) => Math.exp(sum - most));
  const all = parts.reduce((total, part) => total + part, 0);
  return Object.fromEntries(MOODS.map((mood, at) => [mood, parts[at]! / all])) as Record<Mood, number>;
};

export const judgeMood = (features: readonly string[], { step, at, weights }: MoodWeights): MoodShares => {
  const sums = MOODS.map(() => 0);
  for (const feature of features) {
    const from = at.get(hashOf(feature));
    if (from !== undefined)
      for (let mood = 0; mood < sums.length; mood += 1) sums[mood]! += weights[from + mood]!;
  }
  const scale = step * scaleOf(features.length);
  return sharesFrom(sums.map((sum) => sum * scale));
};

interface MoodModel {
  readonly words: MoodWords;
  readonly weights: MoodWeights;
}
const known = new Map<string, MoodModel | null>();
const modelOf = (language: string): MoodModel | null => {
  let model = known.get(language);
  if (model === undefined) {
    const file = projectFile('grammars', language, 'learned', 'mood.bin');
    model = existsSync(file)
      ? { words: readMoodWords(language), weights: moodWeightsIn(readFileSync(file)) }
      : null;
    known.set(language, model);
  }
  return model;
};

/**
 * The mood of a stretch of words: a whole utterance or a part of it, as `normalise` leaves the words (lower case,
 * contractions spelled out); a last "?" helps where a recogniser gives one, and may be missing. `language` is
 * its first subtag ("en"). `state.expecting`: what the talk waits for; left out where that is not known.
 *
 * Pure, and calibrated on what was held out: of stretches with a share of 0.9, nine in ten are of that mood. A
 * stretch that holds several moods ("I used two, how many are left") has its share in each: judge its parts. Null
 * for a language that no moods were learned of.
 * @throws Error where the language's files are not of their form.
 */
export const moodOf = (
  tokens: readonly string[],
  language: string,
  state?: { readonly expecting: Expectation },
): MoodShares | null => {
  const model = modelOf(language);
  return model && judgeMood(moodFeatures(tokens, model.words, state?.expecting ?? null), model.weights);
};
