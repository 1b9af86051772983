/**
 * One server process, as far as the schedule goes, on a store it shares with others:
 * `process.ts STORE-FILE WEBHOOK-URL SECRET NOW`. Ticks until it is told to stop.
 */
import { createScheduler, createWebhook } from '../../src/schedule/index.js';
import { openSqliteStore } from '../../src/store/index.js';
import { householdsOver } from './port.js';

const [file = '', url = '', secret = '', now = ''] = process.argv.slice(2);
const store = openSqliteStore(file);
const scheduler = createScheduler({
  store,
  households: householdsOver(store, () => now),
  carriers: [createWebhook({ url, secret })],
  owner: `process ${process.pid}`,
  now: () => now,
});
await scheduler.planAll();
process.send?.('ready');
process.once('message', () => {
  void (async () => {
    for (let round = 0; round < 5; round++) await scheduler.tick();
    await scheduler.close();
    await store.close();
    process.disconnect();
  })();
});
