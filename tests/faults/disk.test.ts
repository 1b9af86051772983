/** A disk that keeps nothing: what was asked is not said to be undone, and the service gives itself up. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { openSqliteStore } from '../../src/store/index.js';
import { bearer, startService } from '../support/service.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-disk-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('a sync that fails', async () => {
  let broken = false;
  let given = 0;
  const path = join(folder, 'kitchen.sqlite');
  const store = openSqliteStore(path, {
    disk: {
      syncData: () => (broken ? Promise.reject(new Error('EIO: i/o error, fdatasync')) : Promise.resolve()),
      onFailed: () => (given += 1),
    },
  });
  const service = await startService({}, { store });
  const ask = (id: string, words: string) =>
    service.app.inject({
      method: 'POST',
      url: '/v1/turns',
      headers: bearer(service.tokens.speak),
      payload: { id, hypotheses: [{ text: words }] },
    });
  expect((await ask(randomUUID(), 'put oats on the list')).statusCode).toBe(200);
  broken = true;
  const id = randomUUID();
  const unsure = await ask(id, 'put barley on the list');
  expect(unsure.json()).toMatchObject({ status: 503, code: 'not-known' });
  expect(unsure.body).not.toMatch(/nothing was changed/i);
  expect(given).toBe(1);
  // Nothing more is written, and the same id is not called done.
  expect((await ask(randomUUID(), 'put rye on the list')).json()).toMatchObject({ code: 'overloaded' });
  expect((await ask(id, 'put barley on the list')).json()).toMatchObject({ code: 'not-known' });
  expect((await service.app.inject('/health/ready')).statusCode).toBe(503);
  await service.close();
  await store.close();

  // Whoever restarts it finds out with the same id what became of it.
  const again = openSqliteStore(path);
  const restarted = await startService({}, { store: again });
  const reply = await restarted.app.inject({
    method: 'POST',
    url: '/v1/turns',
    headers: bearer(service.tokens.speak),
    payload: { id, hypotheses: [{ text: 'put barley on the list' }] },
  });
  expect(reply.statusCode).toBe(200);
  const lines = [...((await again.loadKitchen('marta'))?.purchases.values() ?? [])];
  expect(lines.filter(({ name }) => name === 'barley')).toHaveLength(1);
  expect(lines.filter(({ name }) => name === 'rye')).toEqual([]);
  await restarted.close();
  await again.close();
});
