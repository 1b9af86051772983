import { fork, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Served } from './served.js';

export interface Running extends Served {
  readonly process: ChildProcess;
  /** Bytes in use, after a collection. */
  memory(): Promise<NodeJS.MemoryUsage>;
  /** Milliseconds of processor time spent so far. */
  processor(): Promise<number>;
  stop(): Promise<void>;
}

/** Starts one of the things in `served.ts` and waits until it listens. */
export const startServed = async (
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Running> => {
  const child = fork(fileURLToPath(new URL('served.ts', import.meta.url)), args, {
    execArgv: ['--import', 'tsx', '--expose-gc'],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    env: { ...process.env, ...environment },
  });
  const heard = <T>(): Promise<T> =>
    new Promise((resolve, reject) => {
      child.once('message', (message) => resolve(message as T));
      child.once('exit', (code) => reject(new Error(`${args.join(' ')} ended with ${code}`)));
    });
  const served = await heard<Served>();
  return {
    ...served,
    process: child,
    memory: async () => {
      const answer = heard<{ memory: NodeJS.MemoryUsage }>();
      child.send('memory');
      return (await answer).memory;
    },
    processor: async () => {
      const answer = heard<{ processor: NodeJS.CpuUsage }>();
      child.send('processor');
      const { user, system } = (await answer).processor;
      return (user + system) / 1000;
    },
    stop: () =>
      new Promise((resolve) => {
        child.removeAllListeners('exit');
        child.once('exit', () => resolve());
        child.kill('SIGTERM');
      }),
  };
};
