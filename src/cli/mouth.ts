/** Speaks aloud: with espeak-ng where it is installed, or with any command that reads SSML from its input. */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';

export interface Mouth {
  /** Speaks; whatever was being said stops. Resolves when it was said, or stopped, or there is no sound. */
  say(ssml: string): Promise<void>;
  hush(): void;
}

export const silentMouth = (): Mouth => ({ say: () => Promise.resolve(), hush: () => undefined });

/** A voice that hangs is cut off: the longest answer takes a minute. Milliseconds. */
const LONGEST = 120_000;

const ESPEAK = ['espeak-ng', '-m', '--stdin'] as const;

const mouthOf = (start: () => ChildProcess): Mouth => {
  let speaking: ChildProcess | null = null;
  const hush = (): void => {
    speaking?.kill();
    speaking = null;
  };
  return {
    hush,
    say(ssml) {
      hush();
      const voice = start();
      speaking = voice;
      const cut = setTimeout(() => voice.kill(), LONGEST);
      // A machine without a sound card, or a voice that reads nothing: the words are on the screen.
      voice.stdin?.on('error', () => undefined);
      voice.stdin?.end(ssml);
      return new Promise((resolve) => {
        const done = (): void => {
          clearTimeout(cut);
          resolve();
        };
        voice.on('error', done);
        voice.on('close', done);
      });
    },
  };
};

/** Any command of the user's own, run by the shell for each answer. It gets one SSML document on its input. */
export const mouthBy = (command: string): Mouth =>
  mouthOf(() => spawn(command, { shell: true, stdio: ['pipe', 'ignore', 'inherit'] }));

/** espeak-ng, in the voice named or its own. Null where it is not installed. */
export const findMouth = (voice?: string): Mouth | null => {
  const found = spawnSync(ESPEAK[0], ['--version'], { stdio: 'ignore' });
  if (found.error !== undefined || found.status !== 0) return null;
  const [program, ...args] = ESPEAK;
  const own = voice === undefined ? args : ['-v', voice, ...args];
  return mouthOf(() => spawn(program, own, { stdio: ['pipe', 'ignore', 'ignore'] }));
};
