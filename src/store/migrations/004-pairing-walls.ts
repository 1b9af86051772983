/** PostgreSQL only: the walls of 002 around the tables of 003. */
import { sql, type Migration } from 'kysely';

export const pairingWalls: Migration = {
  async up(db) {
    for (const table of ['pairing', 'pairing_guess']) {
      await sql`alter table ${sql.table(table)} enable row level security`.execute(db);
      await sql`alter table ${sql.table(table)} force row level security`.execute(db);
    }
    await sql`create policy one_household on pairing_guess
      using (household_id = current_setting('tellshelf.household', true))
      with check (household_id = current_setting('tellshelf.household', true))`.execute(db);
    // Waiting devices belong to no household yet; no transaction of a household sees them.
    await sql`create policy everyone on pairing
      using (current_setting('tellshelf.everyone', true) = 'on')
      with check (current_setting('tellshelf.everyone', true) = 'on')`.execute(db);
  },
};
