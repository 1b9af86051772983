/**
 * Something to measure over the network, in a process of its own:
 *   `tsx served.ts echo`               a bare fastify that answers JSON with JSON
 *   `tsx served.ts classifier [ITEMS]` the toolkit of `classifier.ts` with the names of so many items, nothing kept
 *   `tsx served.ts kitchen [ITEMS]`       the whole service, embedded store on disk (or DATABASE_URL)
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
import { bigKitchen, sentences } from './big-kitchen.js';
import { trainClassifier } from './classifier.js';

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

const classifier = async (items: number): Promise<void> => {
  const filled = bigKitchen('bench', items, { now: new Date().toISOString(), timeZone: 'America/Chicago' });
  const names = [...filled.items.values()].filter((item) => item.gone === null).map((item) => item.name);
  // What is said and what it asks for: a request is what is left of a sentence without the name.
  const examples = sentences(filled).map((text) => ({
    text,
    intent: names.reduce((left, name) => left.replace(name, '…'), text),
  }));
  const { classify } = await trainClassifier(examples, names);
  const app = Fastify();
  app.post<{ Body: { hypotheses: { text: string }[] } }>('/v1/turns', (request) =>
    classify(request.body.hypotheses[0]!.text, true),
  );
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
const count = Number(items ?? 500);
await (what === 'echo' ? echo() : what === 'classifier' ? classifier(count) : kitchen(count));
