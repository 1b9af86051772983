/** PostgreSQL only: the walls of 002 around the table of 012. */
import { sql, type Migration } from 'kysely';

export const powerCutWall: Migration = {
  async up(db) {
    await sql`alter table power_cut enable row level security`.execute(db);
    await sql`alter table power_cut force row level security`.execute(db);
    await sql`create policy one_household on power_cut
      using (household_id = current_setting('tellshelf.household', true))
      with check (household_id = current_setting('tellshelf.household', true))`.execute(db);
  },
};
