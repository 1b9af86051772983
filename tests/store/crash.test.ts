import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { applyChange, emptyKitchen, type Item, type Kitchen } from '../../src/kitchen/index.js';
import { openPostgresStore, openSqliteStore, type Store } from '../../src/store/index.js';
import { startPostgres } from './postgres-server.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-crash-'));
const server = await startPostgres('crash');
if (server === null) console.warn('NO POSTGRESQL on this machine: its crash test is skipped');
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await server?.close();
});

/** Each takes a few seconds, most of it to start three processes. More: TELLSHELF_CRASH_ROUNDS=40. */
const ROUNDS = Number(process.env['TELLSHELF_CRASH_ROUNDS'] ?? 2);
const SPOONS = 1_000_000;
const at = '2026-05-14T18:00:00.000Z';

const startKitchen = (): Kitchen => {
  const kitchen = emptyKitchen({
    id: 'h1',
    name: 'Crash kitchen',
    timeZone: 'UTC',
    locale: 'en-GB',
    region: 'uk',
    measures: 'metric',
    microwaveWatts: null,
    summaryAt: null,
    quietHours: null,
    dotMeanings: {},
  });
  const jar: Item = {
    id: 'jar',
    name: 'sugar',
    batchId: null,
    amount: { value: SPOONS, unit: 'spoon' },
    amountAtFirst: { value: SPOONS, unit: 'spoon' },
    touch: {},
    placeId: null,
    spot: null,
    markerId: null,
    dates: {},
    outSince: null,
    timesReheated: 0,
    maker: null,
    ownerId: null,
    diets: [],
    contains: [],
    freeFrom: [],
    cautions: [],
    preparations: [],
    notes: [],
    addedAt: at,
    addedBy: null,
    gone: null,
  };
  return { ...kitchen, items: new Map([['jar', jar]]) };
};

interface Writer {
  readonly process: ChildProcess;
  readonly said: string[];
}

const startWriter = (kind: string, target: string, name: string): Writer => {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', join(import.meta.dirname, 'writer.ts'), kind, target, 'h1', name],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const said: string[] = [];
  let rest = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    said.push(...lines);
  });
  return { process: child, said };
};

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) resolve();
    else child.once('close', () => resolve());
  });

const words = (writers: readonly Writer[], first: 'try' | 'ack'): ReadonlySet<string> =>
  new Set(
    writers.flatMap(({ said }) =>
      said.flatMap((line) => (line.startsWith(`${first} `) ? [line.slice(4)] : [])),
    ),
  );

/** Rounds of three writers each, all killed at some moment under way. */
const killedUnderWrites = async (
  kind: string,
  target: string,
  rounds: number,
): Promise<readonly Writer[]> => {
  const all: Writer[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const writers = ['a', 'b', 'c'].map((letter) => startWriter(kind, target, `r${round}${letter}`));
    all.push(...writers);
    // Not before each has written something; then at a moment of no significance to any of them.
    while (writers.some(({ said }) => !said.some((line) => line.startsWith('ack')))) await sleep(20);
    for (const writer of writers) {
      await sleep(37 + ((round * 53) % 90));
      writer.process.kill('SIGKILL');
    }
    await Promise.all(writers.map((writer) => ended(writer.process)));
  }
  return all;
};

const check = async (store: Store, writers: readonly Writer[]): Promise<void> => {
  const kitchen = await store.loadKitchen('h1');
  if (!kitchen) throw new Error('the household is gone');
  const journal = await store.journalAfter('h1', 0, 100_000);
  const names = [...kitchen.items.values()].map(({ name }) => name).filter((name) => name !== 'sugar');
  const [acknowledged, tried] = [words(writers, 'ack'), words(writers, 'try')];
  expect(acknowledged.size).toBeGreaterThan(writers.length);
  // Exactly once: as a thing put away, and as an entry of the journal.
  expect(new Set(names).size).toBe(names.length);
  const turns = journal.map(({ turnId }) => turnId);
  expect(new Set(turns).size).toBe(turns.length);
  expect([...acknowledged].filter((turn) => !names.includes(turn))).toEqual([]);
  expect([...acknowledged].filter((turn) => !turns.includes(turn))).toEqual([]);
  // What was under way when it was killed is there whole or not at all; nothing else is.
  expect(names.filter((name) => !tried.has(name))).toEqual([]);
  expect(kitchen.items.get('jar')?.amount?.value).toBe(SPOONS - names.length);
  expect([kitchen.version, journal.length]).toEqual([names.length, names.length]);
  const replayed = journal.reduce(applyChange, startKitchen());
  expect(Object.fromEntries(replayed.items)).toEqual(Object.fromEntries(kitchen.items));
  // Each can be sent again and is answered from the record.
  const unsure = [...tried].filter((turn) => !acknowledged.has(turn));
  for (const turnId of [...unsure, ...[...acknowledged].slice(0, 3)]) {
    const start = await store.beginTurn('h1', 'again', turnId);
    expect(start?.earlierReply).toEqual(names.includes(turnId) ? { turnId } : undefined);
  }
};

describe('processes killed while they write', () => {
  it(
    'leave SQLite with every acknowledged change once, and none half done',
    { timeout: 60_000 + ROUNDS * 30_000 },
    async () => {
      const path = join(folder, 'killed.db');
      const store = openSqliteStore(path);
      await store.migrate();
      await store.createHousehold(startKitchen(), at);
      await store.close();
      const writers = await killedUnderWrites('sqlite', path, ROUNDS);
      const after = openSqliteStore(path);
      await check(after, writers);
      await after.close();
    },
  );

  it.skipIf(server === null)(
    'leave PostgreSQL with every acknowledged change once, and none half done',
    { timeout: 60_000 + ROUNDS * 30_000 },
    async () => {
      const url = server?.url ?? '';
      const store = openPostgresStore(url);
      await store.migrate();
      await store.createHousehold(startKitchen(), at);
      await check(store, await killedUnderWrites('postgres', url, ROUNDS));
      await store.close();
    },
  );
});
