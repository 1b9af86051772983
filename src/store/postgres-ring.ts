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

export interface Ring {
  /** Never waits and never fails; rings as soon as the last ringing is done. */
  changed(householdId: Id): void;
  /** Rings what waits, once, and no more after it. */
  close(): Promise<void>;
}

/** Milliseconds before ringing again what could not be rung. */
const PAUSE = 500;

export const createRing = (pool: Pick<pg.Pool, 'query'>): Ring => {
  let waiting = new Set<Id>();
  let ringing: Promise<void> | null = null;
  let closed = false;

  const run = async (): Promise<void> => {
    while (waiting.size > 0) {
      const ids = waiting;
      waiting = new Set();
      try {
        await pool.query(`select pg_notify('tellshelf', id || ' kitchen') from unnest($1::text[]) as id`, [
          [...ids],
        ]);
      } catch {
        // The server is away: it is tried again, unless nobody will be there to.
        if (closed) break;
        for (const id of ids) waiting.add(id);
        await sleep(PAUSE, undefined, { ref: false });
      }
    }
    // Here, not in a `finally` of the caller's: nothing may come in between unrung.
    ringing = null;
  };

  return {
    changed(householdId) {
      if (closed) return;
      waiting.add(householdId);
      ringing ??= run();
    },
    async close() {
      closed = true;
      await ringing;
    },
  };
};
