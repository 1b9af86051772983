/** Speech to words by PocketSphinx (Debian: pocketsphinx, pocketsphinx-en-us), offline, on recorded sound. */
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { dictionaryFor, wordsOf } from './pronounce.js';

export class RecogniserMissing extends Error {
  override readonly name = 'RecogniserMissing';
}

/** What the recogniser made of one recording: its best first, others after. Empty: nothing. */
export type Heard = readonly string[];

export interface Recogniser {
  /** Mono sound, 16 bits, 16,000 a second, as WAV files. Answers in the same order. */
  recognise(files: readonly string[]): Promise<Heard[]>;
  /** Words of the grammar that it cannot hear. */
  readonly deafTo: readonly string[];
  close(): Promise<void>;
}

/** Where Debian puts the English model. */
export const MODEL = '/usr/share/pocketsphinx/model/en-us';

export const run = (program: string, args: readonly string[]): Promise<void> =>
  new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: 'ignore' });
    child.on('error', () => reject(new RecogniserMissing(`${program} is not installed.`)));
    child.on('close', (code) =>
      code === 0 ? resolve() : reject(new Error(`${program} ended with ${code ?? 'a signal'}.`)),
    );
  });

const lines = async (file: string): Promise<string[]> => {
  const text = await readFile(file, 'utf8').catch(() => '');
  return text.split('\n').filter((line) => line.trim() !== '');
};

/**
 * With a grammar it hears only that grammar's sentences; without, anything (the stock language model).
 *
 * @throws RecogniserMissing when PocketSphinx or its model is not installed
 */
export const openRecogniser = async (jsgf: string | null): Promise<Recogniser> => {
  const known = await readFile(join(MODEL, 'cmudict-en-us.dict'), 'utf8').catch(() => {
    throw new RecogniserMissing(
      'The offline ear is not installed (Debian: pocketsphinx, pocketsphinx-en-us). Another is named with --ear.',
    );
  });
  const folder = await mkdtemp(join(tmpdir(), 'tellshelf-listen-'));
  const dictionary = jsgf === null ? null : dictionaryFor(wordsOf(jsgf), known);
  const mode: string[] = [];
  if (jsgf === null || dictionary === null)
    mode.push('-lm', join(MODEL, 'en-us.lm.bin'), '-dict', join(MODEL, 'cmudict-en-us.dict'));
  else {
    await writeFile(join(folder, 'kitchen.jsgf'), jsgf);
    await writeFile(join(folder, 'kitchen.dict'), dictionary.text);
    mode.push('-jsgf', join(folder, 'kitchen.jsgf'), '-dict', join(folder, 'kitchen.dict'));
  }
  let count = 0;
  return {
    deafTo: dictionary?.unknown ?? [],
    recognise: async (files) => {
      const here = join(folder, String(++count));
      const nbest = join(here, 'nbest');
      await mkdir(nbest, { recursive: true });
      const list = join(here, 'files.ctl');
      const best = join(here, 'best.hyp');
      const names = files.map((file) => file.replace(/\.wav$/, ''));
      await writeFile(list, names.map((name) => `${name}\n`).join(''));
      await run('pocketsphinx_batch', [
        ...['-hmm', join(MODEL, 'en-us'), ...mode],
        ...['-adcin', 'yes', '-adchdr', '44', '-cepdir', '/', '-cepext', '.wav', '-ctl', list],
        ...['-hyp', best, '-nbest', '5', '-nbestdir', nbest, '-logfn', '/dev/null'],
      ]);
      const bests = (await lines(best)).map((line) => line.replace(/\s*\([^()]*\)$/, '').trim());
      const heard = await Promise.all(
        names.map(async (name, index) => {
          // The list comes from a second search and may lack the best, so that is always first.
          const others = (
            await lines(join(nbest, `${name}.hyp`)).then((found) =>
              found.length > 0 ? found : lines(join(nbest, `${basename(name)}.hyp`)),
            )
          ).map((line) => line.replace(/\s+-?\d+$/, '').trim());
          return [...new Set([bests[index] ?? '', ...others])].filter((text) => text !== '');
        }),
      );
      await rm(here, { recursive: true, force: true });
      return heard;
    },
    close: () => rm(folder, { recursive: true, force: true }),
  };
};
