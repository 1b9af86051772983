/**
 * Connections to PostgreSQL that keep nobody waiting for good. A connection may break at any moment
 * (the server restarts) or fall silent for ever (a cable, a frozen machine): each message has a time to
 * be answered in, a silent connection is thrown away, and with it those not heard from since.
 */
import type { PostgresPool, PostgresPoolClient } from 'kysely';
import pg from 'pg';

export interface PoolOptions {
  readonly connections: number;
  /** Milliseconds the server has to answer one message. Null: as long as it takes. */
  readonly answerWithin: number | null;
}

export type Pool = PostgresPool & Pick<pg.Pool, 'query'>;

/** A broken connection fails what is asked over it, and is replaced; that is all there is to do. */
const nothing = (): void => undefined;

const cut = (client: pg.ClientBase): void => {
  // No farewell: it would wait for the silent server too. What was asked fails at once.
  (client as unknown as { connection: { stream: { destroy(): void } } }).connection.stream.destroy();
};

/** Asks and, when nothing comes back in time, cuts the connection. */
export const askWithin = async <T>(
  client: pg.ClientBase,
  within: number | null,
  ask: () => Promise<T>,
  onSilence: () => void = nothing,
): Promise<T> => {
  if (within === null) return ask();
  const timer = setTimeout(() => {
    onSilence();
    cut(client);
  }, within);
  try {
    return await ask();
  } finally {
    clearTimeout(timer);
  }
};

/** @param url e.g. `postgres://user@host:5432/database` */
export const createPool = (url: string, { connections, answerWithin }: PoolOptions): Pool => {
  const pool = new pg.Pool({
    connectionString: url,
    max: connections,
    application_name: 'tellshelf',
    connectionTimeoutMillis: 5_000,
    keepAlive: true,
    keepAliveInitialDelayMillis: 10_000,
  });
  pool.on('error', nothing);
  // Node ends the process for an error nobody hears, and the pool hears idle connections only.
  pool.on('connect', (client) => void client.on('error', nothing));

  /** Raised with each silence; a connection last heard from before that is as doubtful. */
  let silences = 0;
  const heard = new WeakMap<pg.PoolClient, number>();

  const take = async (): Promise<pg.PoolClient> => {
    for (;;) {
      const client = await pool.connect();
      if ((heard.get(client) ?? silences) === silences) return client;
      cut(client);
      client.release(true);
    }
  };

  const ask = async <T>(client: pg.PoolClient, text: string, values: readonly unknown[]): Promise<T> => {
    const answer = await askWithin(
      client,
      answerWithin,
      () => client.query(text, [...values]),
      () => (silences += 1),
    );
    heard.set(client, silences);
    return answer as T;
  };

  return {
    connect: async () => {
      const client = await take();
      return {
        query: (text: string, values: readonly unknown[]) => ask(client, text, values),
        release: (destroy?: boolean) => client.release(destroy),
      } as PostgresPoolClient;
    },
    query: (async (text: string, values: readonly unknown[] = []) => {
      const client = await take();
      try {
        return await ask(client, text, values);
      } finally {
        client.release();
      }
    }) as unknown as pg.Pool['query'],
    end: () => pool.end(),
  };
};
