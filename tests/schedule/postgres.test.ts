/** Once, by many schedulers on one PostgreSQL. */
import { afterAll, describe, expect, it } from 'vitest';
import { createScheduler } from '../../src/schedule/index.js';
import { openPostgresStore } from '../../src/store/index.js';
import { startPostgres } from '../store/postgres-server.js';
import { kitchenWith, reminder } from './kitchens.js';
import { carrier, householdsOver } from './port.js';

const NOON = '2026-05-14T17:00:00.000Z';
const server = await startPostgres('schedule');

describe.skipIf(server === null)('five schedulers on PostgreSQL', () => {
  afterAll(() => server?.close());

  it('send each telling of each household once by each carrier', async () => {
    const stores = Array.from({ length: 5 }, () => openPostgresStore(server?.url ?? ''));
    try {
      await Promise.all(stores.map((store) => store.migrate()));
      for (const id of ['h1', 'h2'])
        await stores[0]?.createHousehold(
          kitchenWith({
            household: { id, summaryAt: null },
            reminders: Array.from({ length: 25 }, (_, i) => reminder(`t${i}`, NOON, { label: `dish ${i}` })),
          }),
          NOON,
        );
      const now = (): string => '2026-05-14T17:00:05.000Z';
      const ways = [carrier('a'), carrier('b')];
      const running = stores.map((store, i) =>
        createScheduler({
          store,
          households: householdsOver(store, now),
          carriers: ways,
          owner: `process ${i}`,
          now,
        }),
      );
      await Promise.all(running.map((one) => one.planAll()));
      for (let round = 0; round < 4; round++) await Promise.all(running.map((one) => one.tick()));
      for (const way of ways) {
        const sent = way.carried.map(({ household, id }) => `${household} ${id}`);
        expect(new Set(sent).size).toBe(50);
        expect(sent).toHaveLength(50);
      }
    } finally {
      for (const store of stores) await store.close();
    }
  }, 60_000);
});
