/** PostgreSQL only: the walls of 002 around the table of 010. */
import { sql, type Migration } from 'kysely';

export const noticeWall: Migration = {
  async up(db) {
    await sql`alter table notice_address enable row level security`.execute(db);
    await sql`alter table notice_address force row level security`.execute(db);
    await sql`create policy one_household on notice_address
      using (household_id = current_setting('tellshelf.household', true))
      with check (household_id = current_setting('tellshelf.household', true))`.execute(db);
  },
};
