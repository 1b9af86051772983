/**
 * Sentences as a poor recogniser would have written them: words put for others, left out and put in,
 * by what a recogniser was seen to do (tests/data/asr/word-pairs.tsv). The same seed, the same errors.
 */
import { readFileSync } from 'node:fs';
import { soundsOf } from '../../src/understanding/names/sounds.js';
import { lexiconFor } from '../../src/understanding/words/index.js';

type Weighted = readonly (readonly [string, number])[];

export interface Confusions {
  readonly instead: ReadonlyMap<string, Weighted>;
  readonly leftOut: ReadonlySet<string>;
  readonly putIn: Weighted;
  /** How often each kind of error was counted. */
  readonly counts: { readonly sub: number; readonly del: number; readonly ins: number };
  /** What the recogniser writes for a word it was not seen to mishear: words of its own, nearest in sound. */
  readonly nearest: (word: string) => Weighted;
}

/** Steps (put in, left out, put for another) from one row of things to another. */
export const editDistance = (from: ArrayLike<string>, to: ArrayLike<string>): number => {
  let above = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= to.length; j += 1)
      row.push(Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1)));
    above = row;
  }
  return above[to.length]!;
};

export const wordsOf = (text: string): string[] => text.toLowerCase().split(/\s+/).filter(Boolean);

/** Word errors over words said, of many sentences together: word-level Levenshtein. */
export const wordErrorRate = (pairs: readonly (readonly [said: string, heard: string])[]): number => {
  const errors = pairs.reduce((sum, [said, heard]) => sum + editDistance(wordsOf(said), wordsOf(heard)), 0);
  return errors / pairs.reduce((sum, [said]) => sum + wordsOf(said).length, 0);
};

/**
 * No words: what the recogniser writes for what it did not know, and the counting's way of cutting
 * "what's" into "what" and "'s".
 */
const noWord = /^(?:unk|n't|[smt]|ll|re|ve)$|^'|[^a-z0-9']/;

/** Taken for a word never seen misheard: the likeliest first. */
const nearestWeights = [4, 2, 1] as const;

export const readConfusions = (file: string): Confusions => {
  const rows = readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .slice(1)
    .filter(Boolean)
    .map((line) => line.split('\t') as [string, string, string, string]);
  const counts = { sub: 0, del: 0, ins: 0 };
  const instead = new Map<string, [string, number][]>();
  const leftOut = new Set<string>();
  const putIn: [string, number][] = [];
  const written = new Set<string>();
  for (const [kind, said, heard, counted] of rows) {
    if (noWord.test(heard) || noWord.test(said)) continue;
    const count = Number(counted);
    counts[kind as keyof typeof counts] += count;
    if (heard) written.add(heard);
    if (kind === 'sub') instead.set(said, [...(instead.get(said) ?? []), [heard, count]]);
    else if (kind === 'del') leftOut.add(said);
    else putIn.push([heard, count]);
  }
  const lexicon = lexiconFor('en-US');
  const known = new Map<string, Weighted>();
  const nearest = (word: string): Weighted => {
    let found = known.get(word);
    if (!found) {
      const sounds = soundsOf(word, lexicon);
      found = [...written]
        .filter((other) => other !== word)
        .map((other) => [other, editDistance(sounds, soundsOf(other, lexicon))] as const)
        .sort((a, b) => a[1] - b[1] || (a[0] < b[0] ? -1 : 1))
        .slice(0, nearestWeights.length)
        .map(([other], rank) => [other, nearestWeights[rank]!]);
      known.set(word, found);
    }
    return found;
  };
  return { instead, leftOut, putIn, counts, nearest };
};

/** Numbers from 0 to 1 that look drawn; the same seed, the same numbers (mulberry32). */
export const drawing = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
};

const pick = (from: Weighted, draw: number): string => {
  let left = draw * from.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [word, weight] of from) {
    left -= weight;
    if (left < 0) return word;
  }
  return from.at(-1)![0];
};

/** `text` with about `rate` word errors a word said; never empty. */
export const corrupt = (text: string, rate: number, seed: number, table: Confusions): string => {
  const draw = drawing(seed);
  const { sub, del, ins } = table.counts;
  const all = sub + del + ins;
  const heard: string[] = [];
  const said = wordsOf(text);
  for (const word of said) {
    const hit = draw() < rate;
    const kind = draw() * all;
    const which = draw();
    if (!hit) heard.push(word);
    else if (kind < ins) heard.push(word, pick(table.putIn, which));
    // Only what was seen left out is left out; of any other word something is heard.
    else if (kind < ins + del && table.leftOut.has(word) && said.length > 1) continue;
    else heard.push(pick(table.instead.get(word) ?? table.nearest(word), which));
  }
  return heard.length > 0 ? heard.join(' ') : text;
};

/** `many` guesses of one sentence, each misheard by itself, the first as likely right as the last. */
export const corruptGuesses = (
  text: string,
  rate: number,
  seed: number,
  table: Confusions,
  many: number,
): string[] =>
  Array.from({ length: many }, (_, guess) => corrupt(text, rate, seed * 1009 + guess * 104_729, table));
