/** The fit of the moods: logistic regression over all five at once, written as `mood.bin` has it. */
import {
  hashOf,
  judgeMood,
  MOODS,
  MOOD_ROW,
  moodWeightsIn,
  scaleOf,
  type MoodShares,
} from '../../src/understanding/learned/mood.js';
import type { MoodExample } from './mood-examples.js';
import { createRandom } from './wording.js';

const settings = { rounds: 6, step: 0.06, decay: 1e-5, seldom: 3, most: 21_000 } as const;

interface Row {
  readonly own: Int32Array;
  readonly mood: number;
  readonly weight: number;
  readonly scale: number;
}

const sumsOf = ({ own, scale }: Row, weights: Float32Array, sums: Float64Array): void => {
  sums.fill(0);
  for (const at of own) for (let mood = 0; mood < MOODS.length; mood += 1) sums[mood]! += weights[at + mood]!;
  let most = -Infinity;
  for (let mood = 0; mood < MOODS.length; mood += 1) most = Math.max(most, (sums[mood]! *= scale));
  let all = 0;
  for (let mood = 0; mood < MOODS.length; mood += 1) all += sums[mood] = Math.exp(sums[mood]! - most);
  for (let mood = 0; mood < MOODS.length; mood += 1) sums[mood]! /= all;
};

const fitOver = (
  examples: readonly MoodExample[],
  features: readonly string[],
  seed: number,
): Float32Array => {
  const many = MOODS.length;
  const rowOf = new Map(features.map((feature, at) => [feature, at * many]));
  const rows = examples.map((example): Row => ({
    own: Int32Array.from(example.features.flatMap((feature) => rowOf.get(feature) ?? [])),
    mood: MOODS.indexOf(example.mood),
    weight: example.weight,
    scale: scaleOf(example.features.length),
  }));
  const weights = new Float32Array(features.length * many);
  const squares = new Float32Array(features.length * many).fill(0.05);
  const random = createRandom(seed);
  const sums = new Float64Array(many);
  for (let round = 0; round < settings.rounds; round += 1) {
    for (let at = rows.length - 1; at > 0; at -= 1) {
      const other = Math.floor(random() * (at + 1));
      [rows[at], rows[other]] = [rows[other]!, rows[at]!];
    }
    for (const row of rows) {
      sumsOf(row, weights, sums);
      for (let mood = 0; mood < many; mood += 1) {
        const off = row.weight * row.scale * (sums[mood]! - (mood === row.mood ? 1 : 0));
        if (Math.abs(off) < 0.001) continue;
        for (const from of row.own) {
          const cell = from + mood;
          const slope = off + settings.decay * weights[cell]!;
          squares[cell]! += slope * slope;
          weights[cell]! -= (settings.step * slope) / Math.sqrt(squares[cell]!);
        }
      }
    }
  }
  return weights;
};

/** The features that say most, by how far they part the moods and how often they are met. */
const fewer = (
  examples: readonly MoodExample[],
  features: readonly string[],
  weights: Float32Array,
): readonly string[] => {
  const counts = new Map<string, number>();
  for (const { features: own, weight } of examples)
    for (const feature of own) counts.set(feature, (counts.get(feature) ?? 0) + weight);
  return features
    .map((feature, at) => {
      const own = weights.subarray(at * MOODS.length, (at + 1) * MOODS.length);
      return { feature, says: (Math.max(...own) - Math.min(...own)) * Math.sqrt(counts.get(feature) ?? 0) };
    })
    .sort((one, other) => other.says - one.says || (one.feature < other.feature ? -1 : 1))
    .slice(0, settings.most)
    .map(({ feature }) => feature);
};

/** The bytes of `mood.bin`; the same examples, the same bytes. */
export const fitMoods = (examples: readonly MoodExample[]): Buffer => {
  const counts = new Map<string, number>();
  for (const { features } of examples)
    for (const feature of features) counts.set(feature, (counts.get(feature) ?? 0) + 1);
  const all = [...counts].filter(([, count]) => count >= settings.seldom).map(([feature]) => feature);
  const kept = fewer(examples, all, fitOver(examples, all, 3));
  const weights = fitOver(examples, kept, 5);
  const most = weights.reduce((so, weight) => Math.max(so, Math.abs(weight)), 0);
  const step = Math.fround(most / 127);
  const rows = new Map<number, number>();
  kept.forEach((feature, at) => {
    if (!rows.has(hashOf(feature))) rows.set(hashOf(feature), at * MOODS.length);
  });
  const file = Buffer.alloc(4 + rows.size * MOOD_ROW);
  file.writeFloatLE(step, 0);
  [...rows]
    .sort(([one], [other]) => one - other)
    .forEach(([hash, from], row) => {
      const at = 4 + row * MOOD_ROW;
      file.writeUInt32LE(hash, at);
      MOODS.forEach((_mood, mood) => file.writeInt8(Math.round(weights[from + mood]! / step), at + 4 + mood));
    });
  return file;
};

export interface Judgement {
  readonly example: MoodExample;
  readonly shares: MoodShares;
}

export const judgeAll = (examples: readonly MoodExample[], file: Buffer): Judgement[] => {
  const weights = moodWeightsIn(file);
  return examples.map((example) => ({ example, shares: judgeMood(example.features, weights) }));
};

/** Of the sources named: fitted on all else and the other folds, judged on each. */
export const crossJudged = (
  examples: readonly MoodExample[],
  folds: number,
  judged: ReadonlySet<string>,
): Judgement[] => {
  const groups = new Map<string, number>();
  for (const { group, source } of examples)
    if (judged.has(source) && !groups.has(group)) groups.set(group, groups.size % folds);
  return Array.from({ length: folds }, (_one, fold) => fold).flatMap((fold) =>
    judgeAll(
      examples.filter(({ group }) => groups.get(group) === fold),
      fitMoods(examples.filter(({ group }) => groups.get(group) !== fold)),
    ),
  );
};
