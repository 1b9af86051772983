/** PostgreSQL restarts, or falls silent: an error in seconds, then on. Nothing lost, nothing doubled. */
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPostgresStore, type Store } from '../../src/store/index.js';
import { startProxy, type Proxy } from '../support/proxy.js';
import { bearer, startService, type Service } from '../support/service.js';
import { startPostgres } from '../store/postgres-server.js';

const server = await startPostgres('faults');
if (server === null) console.warn('NO POSTGRESQL on this machine: its tests are skipped');

describe.skipIf(server === null)('PostgreSQL behind a proxy', () => {
  let proxy: Proxy;
  let store: Store;
  let service: Service;
  beforeAll(async () => {
    const url = new URL(server!.url);
    proxy = await startProxy(url.hostname, Number(url.port));
    url.hostname = '127.0.0.1';
    url.port = String(proxy.port);
    store = openPostgresStore(url.href, { connections: 4, answerWithin: 1_500 });
    service = await startService({}, { store });
  });
  afterAll(async () => {
    await service?.close();
    await store?.close();
    await proxy?.close();
    await server?.close();
  });

  const ask = (id: string, words: string) =>
    service.app.inject({
      method: 'POST',
      url: '/v1/turns',
      headers: bearer(service.tokens.speak),
      payload: { id, hypotheses: [{ text: words }] },
    });

  const list = (id: string, name: string) =>
    service.app.inject({
      method: 'POST',
      url: '/v1/kitchen/list',
      headers: { ...bearer(service.tokens.help), 'idempotency-key': id },
      payload: { name },
    });

  /** Asks for the same until it is answered. */
  const insist = async (send: () => ReturnType<typeof ask>): Promise<{ refused: number }> => {
    for (let refused = 0; ; refused += 1) {
      const { statusCode, body } = await send();
      if (statusCode === 200) return { refused };
      if (![429, 503].includes(statusCode)) throw new Error(`${statusCode} ${body}`);
      expect(body).not.toMatch(/nothing was changed/i);
      if (refused > 60) throw new Error(`not answered again: ${body}`);
      await sleep(50);
    }
  };

  it('goes on after all connections broke in the middle of turns', async () => {
    const names = Array.from({ length: 40 }, (_, n) => `spelt ${n}`);
    const breaking = (async () => {
      for (let n = 0; n < 8; n += 1) {
        await sleep(60);
        proxy.breakAll();
      }
    })();
    const client = async (mine: readonly string[]): Promise<void> => {
      for (const name of mine) {
        const id = randomUUID();
        await insist(() => list(id, name));
      }
    };
    await Promise.all([0, 1, 2, 3].map((which) => client(names.filter((_, n) => n % 4 === which))));
    await breaking;
    const kitchen = await store.loadKitchen('marta');
    const listed = [...(kitchen?.purchases.values() ?? [])].map((line) => line.name);
    expect(listed.filter((name) => name.startsWith('spelt')).sort()).toEqual([...names].sort());
  }, 120_000);

  it('refuses, then goes on, when every connection fell silent', async () => {
    await ask(randomUUID(), 'where is the milk');
    const warm = Array.from({ length: 6 }, () => ask(randomUUID(), 'where is the milk'));
    proxy.silence();
    await Promise.all(warm);
    const id = randomUUID();
    // Not once for each connection there was: the first that is found out makes the others suspect.
    const { refused } = await insist(() => ask(id, 'put barley on the list'));
    expect(refused).toBeLessThan(10);
    expect((await ask(randomUUID(), 'what is on the list')).statusCode).toBe(200);
    expect((await service.app.inject('/health/ready')).statusCode).toBe(200);
  }, 120_000);
});
