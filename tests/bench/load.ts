/**
 * `npm run bench:load [PART…]`: the service under load, beside a bare fastify in the same run.
 * Parts: `turns` (HTTP and socket, embedded store), `postgres` (the same over PostgreSQL),
 * `households` (what a turn costs among few households and among many, in one PostgreSQL), `half` (latency at half the saturation rate), `idle` (open
 * sockets that say nothing), `soak` (memory over time), `start` (start to first answer), `fuzz` (talk at random,
 * nothing thrown). Loopback only, bounded in time. LOAD_SECONDS, IDLE_SOCKETS, HOUSEHOLDS, SOAK_SECONDS, FUZZ_TURNS
 * and FUZZ_SEED change the sizes.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import WebSocket from 'ws';
import { projectFile } from '../../src/project-files.js';
import { bigKitchen, sentences } from './big-kitchen.js';
import { fire, rate } from './http.js';
import { manyHouseholds } from './many-households.js';
import { pace } from './paced.js';
import { startPostgres } from '../store/postgres-server.js';
import { talkAtRandom } from '../turn/any-talk.js';
import { startServed, type Running } from './start-served.js';

const SECONDS = Number(process.env['LOAD_SECONDS'] ?? 10);
const IDLE = Number(process.env['IDLE_SOCKETS'] ?? 5_000);
const SOAK = Number(process.env['SOAK_SECONDS'] ?? 60);
const HOUSEHOLDS = Number(process.env['HOUSEHOLDS'] ?? 10_000);
const ITEMS = 500;

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const said = sentences(
  bigKitchen('bench', ITEMS, { now: new Date().toISOString(), timeZone: 'America/Chicago' }),
);

const withServed = async <T>(
  args: readonly string[],
  work: (running: Running) => Promise<T>,
  environment: Readonly<Record<string, string>> = {},
): Promise<T> => {
  const running = await startServed(args, environment);
  try {
    return await work(running);
  } finally {
    await running.stop();
  }
};

const connect = async ({ address, token }: Running): Promise<WebSocket> => {
  const socket = new WebSocket(`${address.replace(/^http/, 'ws')}/v1/conversation`, {
    headers: { authorization: `Bearer ${token}` },
  });
  await once(socket, 'open');
  return socket;
};

/** Each of ten sockets sends its next turn when the last is answered. Turns a second. */
const overSockets = async (running: Running): Promise<number> => {
  const sockets = await Promise.all(Array.from({ length: 10 }, () => connect(running)));
  let answered = 0;
  let n = 0;
  const until = performance.now() + SECONDS * 1000;
  await Promise.all(
    sockets.map(async (socket, which) => {
      const next = (): void => {
        n += 1;
        const turn = {
          id: `s${n}`,
          conversation: `s${which}`,
          hypotheses: [{ text: said[n % said.length] }],
        };
        socket.send(JSON.stringify({ type: 'turn', turn }));
      };
      const done = new Promise<void>((resolve, reject) => {
        socket.on('close', () => reject(new Error('the server closed a conversation')));
        socket.on('message', (data: Buffer) => {
          const { type } = JSON.parse(data.toString('utf8')) as { type: string };
          if (type === 'error') reject(new Error(`refused: ${data.toString('utf8')}`));
          // The echo sends back what it got; the service sends replies, and other things beside.
          if (type !== 'reply' && type !== 'turn') return;
          answered += 1;
          if (performance.now() > until) resolve();
          else next();
        });
      });
      next();
      await done;
      socket.terminate();
    }),
  );
  return answered / SECONDS;
};

/** How many a second, and the server's processor time for each, which a busy machine does not change. */
const measured = async (running: Running) => {
  const spent = await running.processor();
  const result = await fire(running, said, SECONDS);
  const processor = ((await running.processor()) - spent) / result['2xx'];
  return { http: rate(result), processor, socket: await overSockets(running) };
};

const share = (part: number, of: number): string => `${((part / of) * 100).toFixed(1)}%`;

/** Turns beside an echo; `environment` says over which store. */
const beside = async (store: string, environment: Readonly<Record<string, string>> = {}): Promise<void> => {
  const echo = await withServed(['echo'], measured);
  const kitchen = await withServed(
    ['kitchen', String(ITEMS)],
    async (running) => {
      await fire(running, said, 3);
      return measured(running);
    },
    environment,
  );
  say(`Turns a second, ${ITEMS} items, ${store}; the machine's load was ${loadavg()[0]?.toFixed(1)}`);
  for (const way of ['http', 'socket'] as const) {
    say(
      `  ${way.padEnd(6)}  echo ${echo[way].toFixed(0)}   whole turn ${kitchen[way].toFixed(0)}   ${share(kitchen[way], echo[way])}`,
    );
  }
  say(
    `  the server's processor time, HTTP: echo ${echo.processor.toFixed(3)} ms   whole turn ${kitchen.processor.toFixed(3)} ms   ${share(echo.processor, kitchen.processor)}`,
  );
};

const turns = (): Promise<void> => beside('embedded store on disk');

const withPostgres = async (name: string, work: (url: string) => Promise<void>): Promise<void> => {
  const server = await startPostgres(name);
  if (!server) return say('No PostgreSQL answers and Debian’s is not installed: not measured.');
  try {
    await work(server.url);
  } finally {
    await server.close();
  }
};

const postgres = (): Promise<void> =>
  withPostgres('load', (url) => beside('PostgreSQL on the same machine', { DATABASE_URL: url }));

const households = (): Promise<void> => withPostgres('many', (url) => manyHouseholds(url, HOUSEHOLDS, say));

const half = async (): Promise<void> =>
  withServed(['kitchen', String(ITEMS)], async (running) => {
    await fire(running, said, 3);
    const most = rate(await fire(running, said, SECONDS));
    const asked = most / 2;
    const { answered, refused, p50, p99 } = await pace(running, said, SECONDS, asked);
    say(
      `At half the saturation rate (${asked.toFixed(0)} of ${most.toFixed(0)} a second): p50 ${p50.toFixed(1)} ms, p99 ${p99.toFixed(1)} ms; ${answered} answered, ${refused} refused`,
    );
  });

const idle = async (): Promise<void> =>
  withServed(['kitchen', String(ITEMS)], async (running) => {
    // Some first, so that what is made once is made.
    const first = await Promise.all(Array.from({ length: 50 }, () => connect(running)));
    await new Promise((resolve) => setTimeout(resolve, 1_000));
    const before = await running.memory();
    const sockets: WebSocket[] = [];
    while (sockets.length < IDLE) {
      const some = Math.min(100, IDLE - sockets.length);
      sockets.push(...(await Promise.all(Array.from({ length: some }, () => connect(running)))));
    }
    await new Promise((resolve) => setTimeout(resolve, 2_000));
    const after = await running.memory();
    const each = (of: (memory: NodeJS.MemoryUsage) => number): string =>
      ((of(after) - of(before)) / IDLE / 1024).toFixed(1);
    say(
      `${IDLE} idle conversations: ${each(({ heapUsed, external }) => heapUsed + external)} KB each in the process, ${each(({ rss }) => rss)} KB by what the system counts as resident`,
    );
    for (const socket of [...first, ...sockets]) socket.terminate();
  });

const soak = async (): Promise<void> =>
  withServed(['kitchen', String(ITEMS)], async (running) => {
    say(`Memory over ${SOAK} seconds of turns`);
    for (let spent = 0; spent < SOAK; spent += Math.max(5, SOAK / 6)) {
      const seconds = Math.max(5, Math.round(SOAK / 6));
      const result = await fire(running, said, seconds);
      const { heapUsed, rss } = await running.memory();
      say(
        `  ${String(spent + seconds).padStart(5)} s  ${rate(result).toFixed(0).padStart(6)} a second   heap ${(heapUsed / 1e6).toFixed(1)} MB   resident ${(rss / 1e6).toFixed(1)} MB`,
      );
    }
  });

/** From starting the command to its first answer, the bundle being there already. */
const start = async (): Promise<void> => {
  const data = mkdtempSync(join(tmpdir(), 'tellshelf-start-'));
  const times: number[] = [];
  for (let n = 0; n < 6; n += 1) {
    const started = performance.now();
    const child = spawn(process.execPath, [projectFile('.run.mjs'), 'talk', '--data', data], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    child.stdin.end('what should I use first\n');
    await once(child.stdout, 'data');
    times.push(performance.now() - started);
    await once(child, 'close');
  }
  rmSync(data, { recursive: true, force: true });
  const [made, ...others] = times;
  say(
    `Start to first answer: ${(Math.min(...others) / 1000).toFixed(2)} s at best, ${(Math.max(...others) / 1000).toFixed(2)} s at worst (first, making the demo kitchen: ${((made ?? 0) / 1000).toFixed(2)} s)`,
  );
};

/** 0 thrown is what is asked for; what is dear is printed with its words. */
const fuzz = async (): Promise<void> => {
  const turns = Number(process.env['FUZZ_TURNS'] ?? 20_000);
  const seed = Number(process.env['FUZZ_SEED'] ?? 1);
  const { broken, changes, spent, dearest } = await talkAtRandom(turns, seed);
  const sorted = [...spent].sort((a, b) => a - b);
  say(
    `${turns} turns at random (seed ${seed}), ${changes} changes: ${broken.length} thrown or faulty; processor p50 ${sorted[turns >> 1]!.toFixed(1)} ms, p99 ${sorted[Math.floor(turns * 0.99)]!.toFixed(0)} ms, ${sorted.filter((one) => one > 100).length} over 100 ms`,
  );
  for (const { said, why } of broken.slice(0, 20)) say(`  BROKEN  ${said}\n    ${why}`);
  for (const { said, spent: ms, turn } of dearest.slice(0, 10))
    say(`  ${ms.toFixed(0).padStart(5)} ms  turn ${turn}  ${said.slice(0, 160)}`);
  if (broken.length > 0) process.exitCode = 1;
};

const parts: Readonly<Record<string, () => Promise<unknown>>> = {
  start,
  turns,
  half,
  postgres,
  households,
  idle,
  soak,
  fuzz,
};
const asked = process.argv.slice(2);
for (const name of asked.length > 0 ? asked : Object.keys(parts)) {
  const part = parts[name];
  if (!part) throw new Error(`There is no part "${name}". There are: ${Object.keys(parts).join(', ')}.`);
  await part();
}
