/**
 * What tells other servers of a change: PostgreSQL's LISTEN/NOTIFY, beside NATS. Each change is a
 * small transaction, told inside it (a NOTIFY of its own) or after it (ours: NOTIFY for many at once; NATS). Measured from before the
 * transaction to when another connection has heard, and how many changes a second go through.
 * NATS_URL names the broker (default: this machine's usual port); loopback, bounded.
 */
import { randomUUID } from 'node:crypto';
import { connect as connectNats, type NatsConnection } from '@nats-io/transport-node';
import pg from 'pg';
import { createRing } from '../../src/store/postgres-ring.js';
import { startPostgres } from '../store/postgres-server.js';

const ROUNDS = 1_000;
const WRITERS = 8;
const SECONDS = 4;

interface Way {
  readonly name: string;
  /** Makes one change and tells of it. */
  change(client: pg.Client, id: string): Promise<void>;
}

const inTransaction = async (client: pg.Client, id: string, tell: boolean): Promise<void> => {
  await client.query('begin');
  await client.query('insert into change (id) values ($1)', [id]);
  if (tell) await client.query("select pg_notify('tellshelf', $1 || ' kitchen')", [id]);
  await client.query('commit');
};

const percentile = (sorted: readonly number[], share: number): string =>
  (sorted[Math.floor(sorted.length * share)] ?? NaN).toFixed(2);

const clients = async (url: string, count: number): Promise<pg.Client[]> => {
  const made = Array.from({ length: count }, () => new pg.Client({ connectionString: url }));
  await Promise.all(made.map((client) => client.connect()));
  return made;
};

const measure = async (
  { name, change }: Way,
  writers: readonly pg.Client[],
  heard: Map<string, () => void>,
): Promise<void> => {
  const [first] = writers;
  if (!first) return;
  const tag = randomUUID();
  const waits: number[] = [];
  for (let n = 0; n < ROUNDS; n += 1) {
    const id = `${tag}-${n}`;
    const started = performance.now();
    const arrived = new Promise<void>((resolve) => heard.set(id, resolve));
    await change(first, id);
    await arrived;
    heard.delete(id);
    if (n >= ROUNDS / 10) waits.push(performance.now() - started);
  }
  waits.sort((a, b) => a - b);
  let made = 0;
  const until = performance.now() + SECONDS * 1000;
  await Promise.all(
    writers.map(async (client, which) => {
      for (let n = 0; performance.now() < until; n += 1, made += 1)
        await change(client, `${tag}-${which}.${n}`);
    }),
  );
  process.stdout.write(
    `  ${name.padEnd(28)} heard after p50 ${percentile(waits, 0.5)} ms, p99 ${percentile(waits, 0.99)} ms; ${(made / SECONDS).toFixed(0)} changes a second by ${WRITERS} writers\n`,
  );
};

const openNats = (): Promise<NatsConnection | null> =>
  connectNats({
    servers: process.env['NATS_URL'] ?? '127.0.0.1:4222',
    timeout: 2_000,
    reconnect: false,
  }).catch(() => null);

export const benchBell = async (): Promise<void> => {
  process.stdout.write('Telling other servers of a change\n');
  const server = await startPostgres('bell');
  if (!server) {
    process.stdout.write('  No PostgreSQL answers and Debian’s is not installed: not measured.\n');
    return;
  }
  const nats = await openNats();
  const writers = await clients(server.url, WRITERS);
  const [listener, teller] = await clients(server.url, 2);
  if (!listener || !teller) return;
  const ring = createRing({ query: teller.query.bind(teller) } as Pick<pg.Pool, 'query'>);
  try {
    await writers[0]?.query('create table change (id text primary key)');
    const heard = new Map<string, () => void>();
    listener.on('notification', ({ payload }) => heard.get((payload ?? '').split(' ')[0] ?? '')?.());
    await listener.query('listen tellshelf');
    await measure(
      {
        name: 'not told (for comparison)',
        change: async (client, id) => {
          await inTransaction(client, id, false);
          heard.get(id)?.();
        },
      },
      writers,
      heard,
    );
    await measure(
      { name: 'LISTEN/NOTIFY, inside it', change: (client, id) => inTransaction(client, id, true) },
      writers,
      heard,
    );
    await measure(
      {
        name: 'LISTEN/NOTIFY, after, together',
        change: async (client, id) => {
          await inTransaction(client, id, false);
          ring.changed(id, 'kitchen');
        },
      },
      writers,
      heard,
    );
    if (!nats) {
      process.stdout.write('  NATS: no broker answers; not measured.\n');
      return;
    }
    nats.subscribe('bell', { callback: (_error, message) => heard.get(message.string())?.() });
    await nats.flush();
    await measure(
      {
        name: 'NATS, after it',
        change: async (client, id) => {
          await inTransaction(client, id, false);
          nats.publish('bell', id);
        },
      },
      writers,
      heard,
    );
  } finally {
    await ring.close();
    await nats?.close();
    await Promise.all([...writers, listener, teller].map((client) => client.end()));
    await server.close();
  }
};
