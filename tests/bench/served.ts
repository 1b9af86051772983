/**
 * Something to measure over the network, in a process of its own:
 *   `tsx served.ts echo`               a bare fastify that answers JSON with JSON
 *   `tsx served.ts kitchen [ITEMS]`    the whole service, embedded store on disk (or DATABASE_URL)
 * Tells its address and a token to the process that started it.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import websocket from '@fastify/websocket';
import Fastify from 'fastify';
import { pino } from 'pino';
import { createApp, hashOf, newToken, readConfig } from '../../src/server/index.js';
import { openPostgresStore, openSqliteStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { bigKitchen } from './big-kitchen.js';

export interface Served {
  readonly address: string;
  readonly token: string;
}

const tell = (served: Served): void => void process.send?.(served);

/** Processor time so far, which other work on the machine does not change as it changes the clock's. */
const answerProcessor = (): void => {
  process.on('message', (asked) => {
    if (asked === 'processor') process.send?.({ processor: process.cpuUsage() });
  });
};

const echo = async (): Promise<void> => {
  const app = Fastify();
  await app.register(websocket);
  app.post('/v1/turns', async (request) => request.body);
  app.get('/v1/conversation', { websocket: true }, (socket) => {
    socket.on('message', (data: Buffer) => socket.send(JSON.stringify(JSON.parse(data.toString('utf8')))));
  });
  answerProcessor();
  tell({ address: await app.listen({ host: '127.0.0.1', port: 0 }), token: '' });
  process.once('SIGTERM', () => void app.close().then(() => process.exit(0)));
};

const kitchen = async (items: number): Promise<void> => {
  const now = (): string => new Date().toISOString();
  const folder = mkdtempSync(join(tmpdir(), 'tellshelf-bench-'));
  const url = process.env['DATABASE_URL'];
  const store = url ? openPostgresStore(url) : openSqliteStore(join(folder, 'kitchen.sqlite'));
  await store.migrate();
  const token = newToken();
  await store.createHousehold(bigKitchen('bench', items, { now: now(), timeZone: 'America/Chicago' }), now());
  await store.addDevice({
    id: 'bench',
    householdId: 'bench',
    name: 'bench',
    tokenHash: hashOf(token),
    scope: 'own',
    personId: null,
    pairedAt: now(),
    lastSeenAt: null,
    revokedAt: null,
  });
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => {
      throw error;
    }),
    now,
  });
  const config = readConfig({
    ADDRESS_RATE: '100000000',
    DEVICE_RATE: '100000000',
    SOCKET_RATE: '100000000',
    SOCKETS: '100000',
    SOCKETS_A_DEVICE: '100000',
  });
  const app = await createApp({ store, households, now, config }, pino({ level: 'silent' }));
  tell({ address: await app.listen({ host: '127.0.0.1', port: 0 }), token });
  answerProcessor();
  process.on('message', (asked) => {
    if (asked === 'memory') {
      globalThis.gc?.();
      process.send?.({ memory: process.memoryUsage() });
    }
  });
  process.once('SIGTERM', () => {
    void app
      .close()
      .then(() => store.close())
      .then(() => {
        rmSync(folder, { recursive: true, force: true });
        process.exit(0);
      });
  });
};

const [what, items] = process.argv.slice(2);
await (what === 'echo' ? echo() : kitchen(Number(items ?? 500)));
