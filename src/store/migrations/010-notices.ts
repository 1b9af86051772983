/** Where a device's browser takes notices (W3C Push API), so that a timer rings while no page is open. */
import type { Migration } from 'kysely';

export const notices: Migration = {
  async up(db) {
    await db.schema
      .createTable('notice_address')
      .addColumn('household_id', 'text', (column) => column.notNull())
      .addColumn('device_id', 'text', (column) => column.notNull())
      .addColumn('endpoint', 'text', (column) => column.notNull())
      .addColumn('p256dh', 'text', (column) => column.notNull())
      .addColumn('auth', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('notice_address_key', ['household_id', 'device_id'])
      .addForeignKeyConstraint(
        'notice_address_household',
        ['household_id'],
        'household',
        ['household_id'],
        (key) => key.onDelete('cascade'),
      )
      .execute();
  },
};
