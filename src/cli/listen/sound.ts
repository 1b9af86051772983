/** Sound in, by SoX or by a command of the user's. */
import { spawn } from 'node:child_process';
import { copyFile, readFile } from 'node:fs/promises';
import { RecogniserMissing, run } from './recogniser.js';
import { isAsWanted, readWav } from './wav.js';

/**
 * Any sound file as recognisers want it, with a little silence at both ends. Without SoX one that is so already is
 * taken as it is. @throws RecogniserMissing where it is not
 */
export const prepare = async (from: string, to: string): Promise<void> => {
  try {
    await bySoxTo(from, to);
  } catch (error) {
    if (!(error instanceof RecogniserMissing)) throw error;
    const wav = readWav(await readFile(from));
    if (wav === null || !isAsWanted(wav)) throw error;
    await copyFile(from, to);
  }
};

const bySoxTo = (from: string, to: string): Promise<void> =>
  run('sox', ['-G', from, '-r', '16000', '-c', '1', '-b', '16', to, 'pad', '0.3', '0.4']);

/** Records from the default microphone until two seconds of silence. */
const bySox = async (to: string): Promise<void> =>
  run('rec', [
    ...['-q', '-r', '16000', '-c', '1', '-b', '16', to],
    ...['silence', '1', '0.1', '2%', '1', '2.0', '2%', 'trim', '0', '20'],
  ]);

/** A command of the user's own, run by the shell. Rejects when it does not end well. */
const byShell = (what: string, command: string, ...args: readonly string[]): Promise<void> =>
  new Promise((resolve, reject) => {
    const child = spawn('/bin/sh', ['-c', args.length === 0 ? command : `${command} "$@"`, 'sh', ...args], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    child.on('error', (error) =>
      reject(new Error(`The ${what} command cannot be started: ${error.message}`)),
    );
    child.on('close', (code) =>
      code === 0 ? resolve() : reject(new Error(`The ${what} command ended with ${code ?? 'a signal'}.`)),
    );
  });

/** Records one utterance to a WAV file, given to a command as its last argument. */
export const recorder = (command: string | undefined): ((to: string) => Promise<void>) =>
  command === undefined ? bySox : (to) => byShell('recording', command, to);

/** Resolves when somebody wants to speak: at once, on Enter, or when a command (a button, a wake word) ends. */
export const waker = (command: string | undefined, press: boolean): (() => Promise<void>) => {
  if (command !== undefined) return () => byShell('wake', command);
  if (!press) return () => Promise.resolve();
  return () =>
    new Promise((resolve) => {
      process.stdin.resume();
      process.stdin.once('data', () => {
        process.stdin.pause();
        resolve();
      });
    });
};
