/**
 * Where log lines go: to a file descriptor, never holding up the service. A full disk or a reader that
 * stands still costs lines, not the service; how many is told when there is room again.
 */
import { write, writeSync } from 'node:fs';

export interface LogLines {
  write(line: string): void;
  /** Lines given up so far. */
  readonly dropped: number;
  /** Writes what waits, for at most so many milliseconds. */
  close(milliseconds: number): Promise<void>;
}

/** Bytes that may wait. Beyond, lines are dropped. */
const WAITING_AT_MOST = 1024 * 1024;

type Write = (fd: number, text: Buffer, done: (error: Error | null, written: number) => void) => void;

export const createLogLines = (fd: number, writeTo: Write = write): LogLines => {
  let waiting: Buffer[] = [];
  let bytes = 0;
  let writing = false;
  let dropped = 0;
  let untold = 0;

  const drop = (lines: number): void => {
    dropped += lines;
    untold += lines;
  };

  const next = (): void => {
    if (writing || waiting.length === 0) return;
    writing = true;
    const batch = Buffer.concat(waiting);
    waiting = [];
    bytes = 0;
    rest(batch);
  };

  const rest = (batch: Buffer): void =>
    writeTo(fd, batch, (error, written) => {
      if (!error && written < batch.length) return rest(batch.subarray(written));
      writing = false;
      if (error) drop(batch.toString('latin1').split('\n').length - 1);
      else if (untold > 0) {
        const told = `{"level":40,"msg":"log lines dropped","dropped":${untold}}\n`;
        untold = 0;
        waiting.unshift(Buffer.from(told));
      }
      next();
    });

  return {
    write(line) {
      const text = Buffer.from(line);
      if (bytes + text.length > WAITING_AT_MOST) return drop(1);
      waiting.push(text);
      bytes += text.length;
      next();
    },
    get dropped() {
      return dropped;
    },
    async close(milliseconds) {
      const steps = Math.ceil(milliseconds / 10);
      for (let step = 0; step < steps && (writing || waiting.length > 0); step += 1)
        await new Promise((resolve) => setTimeout(resolve, 10));
    },
  };
};

/** The last words of a process that ends now: what cannot be written at once is lost. */
export const lastLine = (fd: number, line: string): void => {
  try {
    writeSync(fd, line);
  } catch {
    // Nobody is left to tell.
  }
};
