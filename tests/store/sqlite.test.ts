import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { emptyKitchen, isRefused, putAway, type Doing } from '../../src/kitchen/index.js';
import { openSqliteStore, StoreError } from '../../src/store/index.js';
import { sqliteLibrary } from '../../src/store/sqlite-library.js';
import { storeContract } from './contract.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = '2026-05-14T18:00:00.000Z';

storeContract('SQLite', async () => {
  const path = join(folder, 'contract.db');
  // Two connections to one file, as two processes would have.
  const store = openSqliteStore(path);
  await store.migrate();
  const second = openSqliteStore(path);
  return {
    store,
    second,
    close: async () => {
      await store.close();
      await second.close();
    },
  };
});

const household = {
  id: 'h1',
  name: 'Small kitchen',
  timeZone: 'UTC',
  locale: 'en-GB',
  region: 'uk',
  measures: 'metric',
  microwaveWatts: null,
  summaryAt: null,
  quietHours: null,
  dotMeanings: {},
} as const;

describe('an SQLite file', () => {
  it('that is not one is refused in words', () => {
    const path = join(folder, 'letter.txt');
    writeFileSync(path, 'Dear Marta, this is not a database. '.repeat(200));
    expect(() => openSqliteStore(path)).toThrowError(StoreError);
    expect(() => openSqliteStore(join(folder, 'no', 'such', 'folder.db'))).toThrowError(/store/);
  });

  it('on a full disk keeps every change that was answered and none that was not', async () => {
    const path = join(folder, 'full.db');
    const setUp = openSqliteStore(path);
    await setUp.migrate();
    await setUp.createHousehold(emptyKitchen(household), at);
    await setUp.close();
    const store = openSqliteStore(path, { maxPages: 120 });
    let answered = 0;
    let fault: string | null = null;
    for (let n = 0; n < 500 && fault === null; n += 1) {
      const kitchen = (await store.loadKitchen('h1'))!;
      let serial = 0;
      const doing: Doing = {
        kitchen,
        clock: { now: at, timeZone: 'UTC' },
        speaker: { personId: null },
        newId: () => `n${n}.${++serial}`,
      };
      const change = putAway(doing, { name: `jar ${n}`, notes: ['x'.repeat(2_000)] });
      if (isRefused(change)) throw new Error('refused');
      try {
        await store.commitTurn('h1', {
          turnId: `t${n}`,
          conversationId: 'default',
          deviceId: null,
          personId: null,
          at,
          decidedOn: kitchen.version,
          changes: [change],
          conversation: null,
          reply: n,
        });
        answered += 1;
      } catch (error) {
        fault = error instanceof StoreError ? error.fault : String(error);
      }
    }
    expect(fault).toBe('disk-full');
    expect(answered).toBeGreaterThan(3);
    // Still readable at once, and after the disk has room again.
    expect((await store.loadKitchen('h1'))?.items.size).toBe(answered);
    await store.close();
    const roomy = openSqliteStore(path);
    const kitchen = await roomy.loadKitchen('h1');
    expect([kitchen?.items.size, kitchen?.version]).toEqual([answered, answered]);
    expect((await roomy.beginTurn('h1', 'default', `t${answered}`))?.earlierReply).toBeUndefined();
    await roomy.close();
  });

  it('that a newer version of the program made is left alone', async () => {
    const path = join(folder, 'newer.db');
    const store = openSqliteStore(path);
    await store.migrate();
    await store.createHousehold(emptyKitchen(household), at);
    await store.close();
    const file = new (sqliteLibrary())(path);
    file.exec(`insert into kysely_migration (name, timestamp) values ('999-from-tomorrow', '2099-01-01')`);
    file.close();
    const older = openSqliteStore(path);
    await expect(older.migrate()).rejects.toMatchObject({ name: 'StoreError', fault: 'unreadable' });
    expect(await older.householdIds()).toEqual(['h1']);
    await older.close();
  });

  it('held by another writer is waited for without holding up this process, then told to be busy', async () => {
    const path = join(folder, 'held.db');
    const store = openSqliteStore(path, { busyTimeout: 150 });
    await store.migrate();
    const other = new (sqliteLibrary())(path);
    other.exec('begin immediate');
    let ticks = 0;
    const ticking = setInterval(() => (ticks += 1), 10);
    await expect(store.createHousehold(emptyKitchen(household), at)).rejects.toMatchObject({ fault: 'busy' });
    clearInterval(ticking);
    expect(ticks).toBeGreaterThan(0);
    other.exec('rollback');
    other.close();
    await store.createHousehold(emptyKitchen(household), at);
    await store.close();
  });

  it('that was taken away takes no more changes', async () => {
    const path = join(folder, 'taken.db');
    let told = 0;
    const store = openSqliteStore(path, { disk: { onFailed: () => (told += 1) } });
    await store.migrate();
    await store.probe();
    renameSync(path, `${path}.elsewhere`);
    await expect(store.createHousehold(emptyKitchen(household), at)).rejects.toMatchObject({
      fault: 'unavailable',
    });
    await expect(store.probe()).rejects.toMatchObject({ fault: 'unavailable' });
    expect(told).toBeGreaterThan(0);
    await store.close();
  });

  it('is copied while it is in use, and the copy opens', async () => {
    const store = openSqliteStore(join(folder, 'live.db'));
    await store.migrate();
    await store.createHousehold(emptyKitchen(household), at);
    const copyAt = join(folder, 'copy.db');
    await store.backup(copyAt);
    const copy = openSqliteStore(copyAt);
    await copy.migrate();
    expect(await copy.loadKitchen('h1')).toEqual(emptyKitchen(household));
    await copy.close();
    await store.close();
  });
});
