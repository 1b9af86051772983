/**
 * Three servers over one PostgreSQL, killed at random (SIGKILL) while clients write through whichever
 * answers: every acknowledged change is there exactly once, nothing is half done, and a conversation
 * hops between servers. `KILL_SECONDS=120` for the long run.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { openPostgresStore } from '../../src/store/postgres.js';
import type { Store } from '../../src/store/index.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import { startPostgres, type TestPostgres } from '../store/postgres-server.js';
import { freePort } from '../support/free-port.js';
import { bearer, kitchenOf, letIn, THURSDAY } from '../support/service.js';

const SECONDS = Number(process.env['KILL_SECONDS'] ?? 10);
const SERVERS = 3;
const CLIENTS = 4;

let postgres: TestPostgres;
let store: Store;
let token: string;
const running: { port: number; process: ChildProcess }[] = [];

const start = (port: number): ChildProcess =>
  spawn(process.execPath, [projectFile('.run.mjs'), 'serve'], {
    cwd: projectFile(),
    env: {
      ...process.env,
      DATABASE_URL: postgres.url,
      PORT: String(port),
      LOG_LEVEL: 'fatal',
      DEVICE_RATE: '10000000',
      ADDRESS_RATE: '10000000',
      LAG_MS: '60000',
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });

const ready = async (port: number): Promise<void> => {
  for (;;) {
    const answer = await fetch(`http://127.0.0.1:${port}/health/ready`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
};

beforeAll(async () => {
  const found = await startPostgres('servers');
  if (!found) throw new Error('No PostgreSQL answers and Debian’s is not installed.');
  postgres = found;
  store = openPostgresStore(postgres.url, { connections: 3 });
  await store.migrate();
  await store.createHousehold(kitchenOf('marta'), THURSDAY);
  token = (await letIn(store, 'marta', 'own')).token;
  for (let n = 0; n < SERVERS; n += 1) {
    const port = await freePort();
    running.push({ port, process: start(port) });
  }
  await Promise.all(running.map(({ port }) => ready(port)));
}, 120_000);

afterAll(async () => {
  for (const { process } of running) process.kill('SIGKILL');
  await store?.close();
  await postgres?.close();
}, 60_000);

const pick = <T>(all: readonly T[]): T => all[Math.floor(Math.random() * all.length)]!;

/** Sends until some server answers; the same id each time. */
const insist = async (path: string, headers: Record<string, string>, body: unknown): Promise<unknown> => {
  for (let tries = 0; tries < 600; tries += 1) {
    const { port } = pick(running);
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...bearer(token), ...headers },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(10_000),
    }).catch(() => null);
    if (answer?.ok) return answer.json().catch(() => null) ?? insist(path, headers, body);
    // A server that is being killed, or a moment of contention, is tried again; anything else is a fault.
    if (answer && ![409, 429, 503].includes(answer.status)) {
      throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('no server answered for half a minute');
};

const speak = (id: string, text: string): Promise<TurnReply> =>
  insist('/v1/turns', {}, { id, hypotheses: [{ text }] }) as Promise<TurnReply>;

describe('several servers over one store', () => {
  it('hold one conversation that hops between them', async () => {
    await speak('h1', 'put the barley soup on the top shelf of the fridge');
    expect((await speak('h2', 'where is it')).speech.text).toMatch(/shelf/i);
    const asked = await speak('h3', 'put the pickled beets away');
    expect(asked.changes).toEqual([]);
    const done = await speak('h4', 'the second shelf of the fridge');
    expect(done.changes[0]).toMatchObject({ verb: 'put away' });
  }, 60_000);

  it(
    `lose and double nothing while they are killed for ${SECONDS} seconds`,
    async () => {
      const until = performance.now() + SECONDS * 1000;
      const acknowledged: string[] = [];
      const replies = new Map<string, unknown>();
      const client = async (which: number): Promise<void> => {
        for (let n = 0; performance.now() < until; n += 1) {
          const name = `crate ${which} number ${n}`;
          const key = { 'idempotency-key': `k.${which}.${n}` };
          const reply = await insist('/v1/kitchen/list', key, { name });
          acknowledged.push(name);
          replies.set(name, reply);
          // Now and then a client that did not hear the answer asks again, of another server.
          if (n % 5 === 0) expect(await insist('/v1/kitchen/list', key, { name })).toEqual(reply);
        }
      };
      let kills = 0;
      const killer = async (): Promise<void> => {
        while (performance.now() < until) {
          await new Promise((resolve) => setTimeout(resolve, 500 + Math.random() * 1_500));
          const victim = pick(running);
          victim.process.kill('SIGKILL');
          kills += 1;
          victim.process = start(victim.port);
        }
      };
      await Promise.all([...Array.from({ length: CLIENTS }, (_, which) => client(which)), killer()]);

      expect(kills).toBeGreaterThan(1);
      expect(acknowledged.length).toBeGreaterThan(CLIENTS);
      const kitchen = await store.loadKitchen('marta');
      const listed = [...(kitchen?.purchases.values() ?? [])].map(({ name }) => name);
      const journal = await store.journalAfter('marta', 0);
      const entries = journal.map((entry) => entry.about[0]).filter((about) => about?.startsWith('crate'));
      expect([...listed].filter((name) => name.startsWith('crate')).sort()).toEqual([...acknowledged].sort());
      expect([...entries].sort()).toEqual([...acknowledged].sort());
      expect(journal.map(({ version }) => version)).toEqual(journal.map((_, n) => n + 1));
      expect(kitchen?.version).toBe(journal.length);
    },
    60_000 + SECONDS * 3_000,
  );
});
