/**
 * A recogniser that is a command: it is given a sound file as its last argument and prints guesses. `BIASING` names
 * a folder with the household's names (`words.tsv`, `kitchen.jsgf`, `kitchen.grxml`), written anew when they change.
 */
import { spawn } from 'node:child_process';
import { mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BiasingForm } from '../../../biasing/index.js';
import { EAR_SECONDS, EarFault, type Ear } from './ear.js';
import { asText, LONGEST_ANSWER, readGuesses } from './guesses.js';

const FILES = {
  words: 'words.tsv',
  jsgf: 'kitchen.jsgf',
  srgs: 'kitchen.grxml',
} as const satisfies Record<BiasingForm, string>;

/** What it printed. Whatever it does, this ends. */
const run = (command: string, file: string, biasing: string, seconds: number): Promise<Buffer[]> =>
  new Promise((resolve, reject) => {
    // In a group of its own, so that what a script of the user's started ends with it.
    const child = spawn('/bin/sh', ['-c', `${command} "$1"`, 'sh', file], {
      env: { ...process.env, BIASING: biasing },
      stdio: ['ignore', 'pipe', 'inherit'],
      detached: true,
    });
    const fail = (why: string): void => {
      clearTimeout(tooLong);
      reject(new EarFault(why));
      try {
        if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      } catch {
        // It has ended already.
      }
    };
    const tooLong = setTimeout(
      () => fail(`The recogniser did not answer within ${seconds} seconds.`),
      seconds * 1000,
    );
    const parts: Buffer[] = [];
    let length = 0;
    child.stdout.on('data', (part: Buffer) => {
      length += part.length;
      if (length > LONGEST_ANSWER) fail("The recogniser's answer is too long to be a list of guesses.");
      else parts.push(part);
    });
    child.on('error', (error) => fail(`The recogniser cannot be started: ${error.message}`));
    child.on('close', (code) => {
      clearTimeout(tooLong);
      if (code === 0) resolve(parts);
      else reject(new EarFault(`The recogniser ended with ${code ?? 'a signal'}.`));
    });
  });

export const earByCommand = async (command: string, seconds = EAR_SECONDS): Promise<Ear> => {
  const biasing = await mkdtemp(join(tmpdir(), 'tellshelf-biasing-'));
  return {
    deafTo: [],
    hear: async (file) => readGuesses(asText(await run(command, file, biasing, seconds))),
    learn: async (lists) => {
      for (const [form, name] of Object.entries(FILES) as [BiasingForm, string][]) {
        const making = join(biasing, `.${name}`);
        await writeFile(making, await lists(form));
        await rename(making, join(biasing, name));
      }
    },
    close: () => rm(biasing, { recursive: true, force: true }),
  };
};
