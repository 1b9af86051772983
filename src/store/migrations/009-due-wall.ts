/** PostgreSQL only: which households have something due may be asked of all, and nothing else of their reminders. */
import { sql, type Migration } from 'kysely';

export const dueWall: Migration = {
  async up(db) {
    await sql`create policy everyone_select on reminder for select
      using (current_setting('tellshelf.everyone', true) = 'on')`.execute(db);
  },
};
