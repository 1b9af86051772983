/** Power cuts, as the household's own records: every device knows of one, and every food in it. */
import type { Migration } from 'kysely';

export const powerCuts: Migration = {
  async up(db) {
    await db.schema
      .createTable('power_cut')
      .addColumn('household_id', 'text', (column) => column.notNull())
      .addColumn('id', 'text', (column) => column.notNull())
      .addColumn('since', 'text', (column) => column.notNull())
      .addColumn('back_at', 'text')
      .addColumn('body', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('power_cut_key', ['household_id', 'id'])
      .addForeignKeyConstraint(
        'power_cut_household',
        ['household_id'],
        'household',
        ['household_id'],
        (key) => key.onDelete('cascade'),
      )
      .execute();
  },
};
