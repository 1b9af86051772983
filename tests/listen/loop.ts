/**
 * Sentences spoken by flite, heard by PocketSphinx: once by the open recogniser alone, once with
 * the listening grammar beside it.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { biasingFor } from '../../src/biasing/index.js';
import { combine, wordErrorRate, type Guess } from '../../src/cli/listen/combine.js';
import { openRecogniser } from '../../src/cli/listen/recogniser.js';
import type { Kitchen } from '../../src/kitchen/model.js';

export interface Utterance {
  readonly sentence: string;
  readonly inside: boolean;
  readonly intent: string;
  readonly item: string;
}

export const utterances = (): Utterance[] =>
  readFileSync(new URL('../data/listen/utterances.tsv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [sentence = '', inside = '', intent = '', item = ''] = line.split('\t');
      return { sentence, inside: inside === 'yes', intent, item };
    });

/** flite's voices in turn, so that no figure rests on one. */
const voices = ['slt', 'rms', 'awb'] as const;

const speakTo = (sentence: string, voice: string, file: string): void => {
  const raw = `${file}.raw.wav`;
  const spoken = spawnSync('flite', ['-voice', voice, '-t', sentence, '-o', raw]);
  if (spoken.status !== 0) throw new Error('flite is not installed.');
  const resampled = spawnSync('sox', [
    '-G',
    raw,
    '-r',
    '16000',
    '-c',
    '1',
    '-b',
    '16',
    file,
    'pad',
    '0.3',
    '0.4',
  ]);
  if (resampled.status !== 0) throw new Error('sox is not installed.');
};

export interface HeardUtterance extends Utterance {
  readonly open: readonly string[];
  readonly closed: readonly string[];
  readonly both: readonly Guess[];
}

/** Speaks and hears all sentences; the names in the grammar are this kitchen's. */
export const hearAll = async (kitchen: Kitchen, all: readonly Utterance[]): Promise<HeardUtterance[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'listen-test-'));
  const open = await openRecogniser(null);
  const closed = await openRecogniser(biasingFor(kitchen, 'jsgf'));
  try {
    const files = all.map(({ sentence }, index) => {
      const file = join(folder, `u${index}.wav`);
      speakTo(sentence, voices[index % voices.length] ?? 'slt', file);
      return file;
    });
    const free = await open.recognise(files);
    const held = await closed.recognise(files);
    return all.map((utterance, index) => ({
      ...utterance,
      open: free[index] ?? [],
      closed: held[index] ?? [],
      both: combine(free[index] ?? [], held[index] ?? []),
    }));
  } finally {
    await Promise.all([open.close(), closed.close()]);
    rmSync(folder, { recursive: true, force: true });
  }
};

/** Words wrong over all words said. */
export const errorRate = (pairs: readonly (readonly [string, string])[]): number => {
  const count = (text: string): number => text.split(/\s+/).filter(Boolean).length;
  const words = pairs.reduce((sum, [said]) => sum + count(said), 0);
  return (
    pairs.reduce((sum, [said, heard]) => sum + wordErrorRate(said, heard) * count(said), 0) /
    Math.max(1, words)
  );
};
