/** Speaks aloud with espeak-ng, where it is installed. */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';

export interface Mouth {
  /** Speaks; whatever was being said stops. */
  say(ssml: string): void;
  hush(): void;
}

const SILENT: Mouth = { say: () => undefined, hush: () => undefined };

/** espeak-ng reads SSML with -m. Null when it is not installed. */
export const findMouth = (): Mouth | null => {
  const found = spawnSync('espeak-ng', ['--version'], { stdio: 'ignore' });
  if (found.error !== undefined || found.status !== 0) return null;
  let speaking: ChildProcess | null = null;
  const hush = (): void => {
    speaking?.kill();
    speaking = null;
  };
  return {
    say(ssml) {
      hush();
      const voice = spawn('espeak-ng', ['-m', '--stdin'], { stdio: ['pipe', 'ignore', 'ignore'] });
      // A machine without a sound card: the words are on the screen.
      voice.on('error', () => undefined);
      voice.stdin.on('error', () => undefined);
      voice.stdin.end(ssml);
      speaking = voice;
    },
    hush,
  };
};

export const silentMouth = (): Mouth => SILENT;
