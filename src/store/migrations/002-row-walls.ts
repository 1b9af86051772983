/**
 * PostgreSQL only. A second wall between households: even a query that forgets its household sees
 * one household's rows, the one named when its transaction began. And a bell: other servers hear
 * that a kitchen changed.
 */
import { sql, type Migration } from 'kysely';

const OF_HOUSEHOLD = [
  'household',
  'person',
  'place',
  'marker',
  'item',
  'purchase',
  'note',
  'reminder',
  'stock_take',
  'journal',
  'conversation',
  'turn',
  'device',
  'device_token',
  'telling',
] as const;

/** What may also be seen when a transaction was begun for everyone, and how. */
const FOR_EVERYONE = [
  ['household', 'select'],
  ['device_token', 'select'],
  ['telling', 'select'],
  ['telling', 'update'],
] as const;

export const rowWalls: Migration = {
  async up(db) {
    for (const table of OF_HOUSEHOLD) {
      await sql`alter table ${sql.table(table)} enable row level security`.execute(db);
      // The owner of a table would otherwise walk through its wall.
      await sql`alter table ${sql.table(table)} force row level security`.execute(db);
      await sql`create policy one_household on ${sql.table(table)}
        using (household_id = current_setting('tellshelf.household', true))
        with check (household_id = current_setting('tellshelf.household', true))`.execute(db);
    }
    for (const [table, how] of FOR_EVERYONE) {
      await sql`create policy ${sql.ref(`everyone_${how}`)} on ${sql.table(table)} for ${sql.raw(how)}
        using (current_setting('tellshelf.everyone', true) = 'on')`.execute(db);
    }
    await sql`
      create function tellshelf_ring() returns trigger language plpgsql as $$
      begin
        perform pg_notify('tellshelf', new.household_id || ' ' || tg_argv[0]);
        return null;
      end $$`.execute(db);
    await sql`create trigger kitchen_changed after update of version on household
      for each row when (old.version is distinct from new.version)
      execute function tellshelf_ring('kitchen')`.execute(db);
    await sql`create trigger telling_made after update of body on telling
      for each row when (old.body is null and new.body is not null)
      execute function tellshelf_ring('telling')`.execute(db);
  },
};
