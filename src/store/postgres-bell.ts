/** Hearing from PostgreSQL that a kitchen changed, whichever server changed it (LISTEN/NOTIFY). */
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import type { Id } from '../kitchen/model.js';
import { askWithin } from './postgres-pool.js';
import type { Rung } from './port.js';

export interface Bell {
  /** Starts listening with the first hearer; what it returns stops this one. */
  subscribe(householdId: Id, hear: (what: Rung) => void): Promise<() => void>;
  close(): Promise<void>;
}

/** Milliseconds before listening again after the connection was lost. */
const PAUSE = 500;
/** Milliseconds between asking whether the connection still is one: a silent one looks like no news. */
const ASK_EVERY = 10_000;

export const createBell = (connectionString: string, answerWithin: number): Bell => {
  const hearers = new Map<Id, Set<(what: Rung) => void>>();
  let listening: Promise<void> | null = null;
  let client: pg.Client | null = null;
  let closed = false;

  const ring = (householdId: Id, what: Rung): void => {
    for (const hear of hearers.get(householdId) ?? []) hear(what);
  };

  const connect = async (): Promise<void> => {
    const next = new pg.Client({
      connectionString,
      application_name: 'tellshelf bell',
      connectionTimeoutMillis: 5_000,
      keepAlive: true,
    });
    next.on('notification', ({ payload }) => {
      const [householdId, what] = (payload ?? '').split(' ');
      if (householdId && (what === 'kitchen' || what === 'telling' || what === 'devices'))
        ring(householdId, what);
    });
    next.on('error', () => undefined);
    next.on('end', () => {
      clearInterval(asking);
      if (client !== next || closed) return;
      client = null;
      listening = again();
    });
    const ask = (text: string): Promise<unknown> => askWithin(next, answerWithin, () => next.query(text));
    const asking = setInterval(() => void ask('select 1').catch(() => undefined), ASK_EVERY).unref();
    await next.connect();
    await ask('listen tellshelf');
    client = next;
  };

  const again = async (): Promise<void> => {
    while (!closed) {
      await sleep(PAUSE, undefined, { ref: false });
      try {
        await connect();
      } catch {
        continue;
      }
      // Whatever rang while nobody listened was missed: everyone looks for themselves.
      for (const householdId of hearers.keys()) {
        ring(householdId, 'kitchen');
        ring(householdId, 'telling');
        ring(householdId, 'devices');
      }
      return;
    }
  };

  return {
    async subscribe(householdId, hear) {
      const here = hearers.get(householdId) ?? new Set();
      hearers.set(householdId, here.add(hear));
      listening ??= connect().catch(() => again());
      await listening;
      return () => {
        here.delete(hear);
        if (here.size === 0 && hearers.get(householdId) === here) hearers.delete(householdId);
      };
    },
    async close() {
      closed = true;
      const last = client;
      if (last) await askWithin(last, answerWithin, () => last.end()).catch(() => undefined);
    },
  };
};
