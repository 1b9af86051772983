/** What devices may do changes by a version of its own, with a journal; a restored household is another generation. */
import type { Migration } from 'kysely';

export const deviceRights: Migration = {
  async up(db) {
    await db.schema
      .alterTable('household')
      .addColumn('rights', 'integer', (column) => column.notNull().defaultTo(0))
      .execute();
    await db.schema
      .alterTable('household')
      .addColumn('generation', 'text', (column) => column.notNull().defaultTo(''))
      .execute();
    await db.schema
      .alterTable('pairing')
      .addColumn('asked_from', 'text', (column) => column.notNull().defaultTo(''))
      .execute();
    await db.schema.createIndex('pairing_asked_from').on('pairing').columns(['asked_from']).execute();
    await db.schema
      .createTable('device_journal')
      .addColumn('household_id', 'text', (column) => column.notNull())
      .addColumn('rights', 'integer', (column) => column.notNull())
      .addColumn('device_id', 'text', (column) => column.notNull())
      .addColumn('at', 'text', (column) => column.notNull())
      .addColumn('deed', 'text', (column) => column.notNull())
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('scope', 'text', (column) => column.notNull())
      .addColumn('by_device_id', 'text')
      .addColumn('whence', 'text')
      .addPrimaryKeyConstraint('device_journal_key', ['household_id', 'rights', 'device_id'])
      .addForeignKeyConstraint(
        'device_journal_household',
        ['household_id'],
        'household',
        ['household_id'],
        (key) => key.onDelete('cascade'),
      )
      .execute();
  },
};
