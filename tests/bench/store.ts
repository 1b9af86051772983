/** What a turn costs in each store: its one read, its one write, and reading a kitchen whole. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyChange, isRefused, putAway, type Kitchen } from '../../src/kitchen/index.js';
import { openPostgresStore, openSqliteStore, type Store } from '../../src/store/index.js';
import { startPostgres } from '../store/postgres-server.js';
import { bigKitchen } from './big-kitchen.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' };
const ROUNDS = 300;

const timed = async (
  rounds: number,
  run: (n: number) => Promise<unknown>,
): Promise<readonly [number, number]> => {
  const times: number[] = [];
  for (let n = 0; n < rounds; n += 1) {
    const start = performance.now();
    await run(n);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number =>
    times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? NaN;
  return [at(0.5), at(0.99)];
};

const measure = async (name: string, store: Store, items: number): Promise<void> => {
  const id = `bench-${items}`;
  let kitchen: Kitchen = bigKitchen(id, items, clock);
  await store.createHousehold(kitchen, clock.now);
  const commit = async (n: number): Promise<void> => {
    let serial = 0;
    const change = putAway(
      { kitchen, clock, speaker: { personId: null }, newId: () => `${n}.${++serial}` },
      { name: `jar ${n}` },
    );
    if (isRefused(change)) throw new Error(change.refused);
    const result = await store.commitTurn(id, {
      turnId: `t${n}`,
      conversationId: 'default',
      deviceId: null,
      personId: null,
      at: clock.now,
      decidedOn: kitchen.version,
      changes: [change],
      conversation: { said: n },
      reply: { text: 'Put away.' },
    });
    if (result.outcome !== 'done') throw new Error(result.outcome);
    kitchen = applyChange(kitchen, change);
  };
  const rows = {
    'begin a turn': await timed(ROUNDS, (n) => store.beginTurn(id, 'default', `x${n}`)),
    'commit a change': await timed(ROUNDS, commit),
    'load the kitchen': await timed(20, () => store.loadKitchen(id)),
  };
  for (const [what, [p50, p99]] of Object.entries(rows)) {
    process.stdout.write(
      `  ${name.padEnd(11)}${String(items).padStart(5)} items  ${what.padEnd(18)}${p50.toFixed(2).padStart(8)}${p99.toFixed(2).padStart(9)}\n`,
    );
  }
};

export const benchStore = async (): Promise<void> => {
  process.stdout.write('Store, milliseconds (median, 99th in a hundred)\n');
  const folder = mkdtempSync(join(tmpdir(), 'tellshelf-bench-'));
  const sqlite = openSqliteStore(join(folder, 'bench.db'));
  await sqlite.migrate();
  for (const items of [100, 2_000]) await measure('SQLite', sqlite, items);
  await sqlite.close();
  rmSync(folder, { recursive: true, force: true });
  const server = await startPostgres('bench');
  if (!server) {
    process.stdout.write('  no PostgreSQL on this machine\n');
    return;
  }
  const postgres = openPostgresStore(server.url);
  await postgres.migrate();
  for (const items of [100, 2_000]) await measure('PostgreSQL', postgres, items);
  await postgres.close();
  await server.close();
};
