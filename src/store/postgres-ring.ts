/**
 * Rings the bell after a change is committed, many households at once.
 *
 * NOTIFY inside the change's own transaction makes every commit of the database wait for every other
 * (PostgreSQL orders notifications by a lock held over the commit): measured, a third of the changes a
 * second (`npm run bench bell`). Told afterwards, together, it costs next to nothing. A process that
 * dies between the two leaves a change unrung; whoever did not hear sees it at their next turn.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import type pg from 'pg';
import type { Id } from '../kitchen/model.js';
import type { Rung } from './port.js';

export interface Ring {
  /** Never waits and never fails; rings as soon as the last ringing is done. */
  changed(householdId: Id, what: Rung): void;
  /** Rings what waits, once, and no more after it. */
  close(): Promise<void>;
}

/** Milliseconds before ringing again what could not be rung. */
const PAUSE = 500;

export const createRing = (pool: Pick<pg.Pool, 'query'>): Ring => {
  /** What is to be said, each once: a household and what changed. */
  let waiting = new Set<string>();
  let ringing: Promise<void> | null = null;
  let closed = false;

  const run = async (): Promise<void> => {
    while (waiting.size > 0) {
      const rung = waiting;
      waiting = new Set();
      try {
        await pool.query(`select pg_notify('tellshelf', rung) from unnest($1::text[]) as rung`, [[...rung]]);
      } catch {
        // The server is away: it is tried again, unless nobody will be there to.
        if (closed) break;
        for (const one of rung) waiting.add(one);
        await sleep(PAUSE, undefined, { ref: false });
      }
    }
    // Here, not in a `finally` of the caller's: nothing may come in between unrung.
    ringing = null;
  };

  return {
    changed(householdId, what) {
      if (closed) return;
      waiting.add(`${householdId} ${what}`);
      ringing ??= run();
    },
    async close() {
      closed = true;
      await ringing;
    },
  };
};
