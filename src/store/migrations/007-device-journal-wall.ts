/** PostgreSQL only: the wall of 002 around the table of 006. */
import { sql, type Migration } from 'kysely';

export const deviceJournalWall: Migration = {
  async up(db) {
    await sql`alter table device_journal enable row level security`.execute(db);
    await sql`alter table device_journal force row level security`.execute(db);
    await sql`create policy one_household on device_journal
      using (household_id = current_setting('tellshelf.household', true))
      with check (household_id = current_setting('tellshelf.household', true))`.execute(db);
  },
};
