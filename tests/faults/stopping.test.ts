/** Asked to end while its database answers nothing, the service ends all the same. */
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { openPostgresStore } from '../../src/store/index.js';
import { startPostgres } from '../store/postgres-server.js';
import { freePort } from '../support/free-port.js';
import { startProxy } from '../support/proxy.js';
import { bearer, kitchenOf, letIn, THURSDAY } from '../support/service.js';

/** Milliseconds after which whoever runs it would have killed it. */
const patience = 25_000;

const server = await startPostgres('stopping');
if (server === null) console.warn('NO POSTGRESQL on this machine: its tests are skipped');

it.skipIf(server === null)(
  'ends when asked, in the middle of turns that a silent database holds',
  async () => {
    const url = new URL(server!.url);
    const proxy = await startProxy(url.hostname, Number(url.port));
    const store = openPostgresStore(server!.url, { connections: 2 });
    await store.migrate();
    await store.createHousehold(kitchenOf('marta'), THURSDAY);
    const { token } = await letIn(store, 'marta', 'own');
    url.hostname = '127.0.0.1';
    url.port = String(proxy.port);
    const port = await freePort();
    const service = spawn(process.execPath, [projectFile('.run.mjs'), 'serve'], {
      cwd: projectFile(),
      env: {
        ...process.env,
        DATABASE_URL: url.href,
        PORT: String(port),
        LOG_LEVEL: 'fatal',
        DRAIN_SECONDS: '1',
        LAG_MS: '60000',
      },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const ended = once(service, 'exit');
    const ask = async (): Promise<number | null> => {
      const answer = await fetch(`http://127.0.0.1:${port}/v1/turns`, {
        method: 'POST',
        headers: { ...bearer(token), 'content-type': 'application/json' },
        body: JSON.stringify({ id: randomUUID(), hypotheses: [{ text: 'where is the milk' }] }),
      }).catch(() => null);
      return answer?.status ?? null;
    };
    try {
      let before: number | null = null;
      while (before !== 200 && service.exitCode === null) {
        before = await ask();
        if (before !== 200) await sleep(100);
      }
      expect(before).toBe(200);
      proxy.freeze();
      const held = [ask(), ask(), ask()];
      await sleep(100);
      service.kill('SIGTERM');
      // Its own deadline is four seconds; without one each thing to be closed waits the database out in turn.
      const [code, signal] = await Promise.race([ended, sleep(patience, ['still there', null])]);
      expect([0, 1]).toContain(code);
      expect(signal).toBeNull();
      // Nobody was told that it was done.
      expect(await Promise.all(held)).not.toContain(200);
    } finally {
      service.kill('SIGKILL');
      await proxy.close();
      await store.close();
      await server?.close();
    }
  },
  120_000,
);
