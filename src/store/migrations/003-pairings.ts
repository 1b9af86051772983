/** Devices that wait to be let in, and wrong codes that owners entered: seen by every server. */
import type { Migration } from 'kysely';

export const pairings: Migration = {
  async up(db) {
    // No household yet: whoever enters the code says which it is to be.
    await db.schema
      .createTable('pairing')
      .addColumn('code_hash', 'text', (column) => column.primaryKey().notNull())
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('token_hash', 'text', (column) => column.notNull())
      .addColumn('expires_at', 'text', (column) => column.notNull())
      .execute();
    await db.schema.createIndex('pairing_expires').on('pairing').columns(['expires_at']).execute();
    await db.schema
      .createTable('pairing_guess')
      .addColumn('household_id', 'text', (column) => column.notNull())
      .addColumn('device_id', 'text', (column) => column.notNull())
      .addColumn('guesses', 'integer', (column) => column.notNull())
      .addColumn('forgotten_at', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('pairing_guess_key', ['household_id', 'device_id'])
      .addForeignKeyConstraint(
        'pairing_guess_household',
        ['household_id'],
        'household',
        ['household_id'],
        (key) => key.onDelete('cascade'),
      )
      .execute();
  },
};
