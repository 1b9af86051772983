/**
 * Changes are rung after their transaction (see `postgres-ring.ts`), no longer by a trigger inside it.
 * A server of the version before, while both run, changes kitchens without ringing: the others see it
 * at their next turn.
 */
import { sql, type Migration } from 'kysely';

export const ringAfter: Migration = {
  async up(db) {
    await sql`drop trigger kitchen_changed on household`.execute(db);
  },
};
