/** Everything the service kept on its first day. Works on both databases. */
import { sql, type CreateTableBuilder, type Kysely, type Migration } from 'kysely';

type Table<C extends string> = CreateTableBuilder<string, C>;

/** Household first in the key, and gone with its household. */
const ofHousehold = (db: Kysely<unknown>, name: string) =>
  db.schema
    .createTable(name)
    .addColumn('household_id', 'text', (column) => column.notNull())
    .addForeignKeyConstraint(`${name}_household`, ['household_id'], 'household', ['household_id'], (key) =>
      key.onDelete('cascade'),
    );

const records = async (
  db: Kysely<unknown>,
  name: string,
  columns: (table: Table<'household_id' | 'id' | 'body'>) => CreateTableBuilder<string, string>,
): Promise<void> => {
  const table = ofHousehold(db, name)
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint(`${name}_key`, ['household_id', 'id']);
  await columns(table as Table<'household_id' | 'id' | 'body'>).execute();
};

const index = (db: Kysely<unknown>, table: string, columns: readonly string[]) =>
  db.schema
    .createIndex(`${table}_by_${columns.join('_')}`)
    .on(table)
    .columns(['household_id', ...columns])
    .execute();

export const kitchens: Migration = {
  async up(db) {
    await db.schema
      .createTable('household')
      .addColumn('household_id', 'text', (column) => column.primaryKey().notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('time_zone', 'text', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addColumn('created_at', 'text', (column) => column.notNull())
      .execute();

    const text = 'text' as const;
    const required = (column: { notNull(): unknown }) => column.notNull() as never;
    await records(db, 'person', (t) => t.addColumn('name', text, required));
    await records(db, 'place', (t) =>
      t.addColumn('name', text, required).addColumn('parent_id', text).addColumn('kind', text, required),
    );
    await records(db, 'marker', (t) => t.addColumn('last_item_id', text));
    await records(db, 'item', (t) =>
      t
        .addColumn('name', text, required)
        .addColumn('place_id', text)
        .addColumn('marker_id', text)
        .addColumn('batch_id', text)
        .addColumn('added_at', text, required)
        .addColumn('gone_at', text),
    );
    await records(db, 'purchase', (t) => t.addColumn('name', text, required));
    await records(db, 'note', (t) => t.addColumn('for_person_id', text).addColumn('at', text, required));
    await records(db, 'reminder', (t) => t.addColumn('due', text, required).addColumn('delivered_at', text));
    await records(db, 'stock_take', (t) =>
      t.addColumn('place_id', text, required).addColumn('finished_at', text),
    );
    await db.schema
      .createIndex('item_marker_on_one_living_item')
      .on('item')
      .columns(['household_id', 'marker_id'])
      .unique()
      .where(sql<boolean>`gone_at is null and marker_id is not null`)
      .execute();
    await index(db, 'item', ['name']);
    await index(db, 'item', ['place_id']);
    await index(db, 'item', ['batch_id']);
    await index(db, 'reminder', ['due']);

    await ofHousehold(db, 'journal')
      .addColumn('version', 'integer', required)
      .addColumn('id', text, required)
      .addColumn('at', text, required)
      .addColumn('person_id', text)
      .addColumn('device_id', text)
      .addColumn('turn_id', text)
      .addColumn('verb', text, required)
      .addColumn('undoes', text)
      .addColumn('body', text, required)
      .addPrimaryKeyConstraint('journal_key', ['household_id', 'version'])
      .execute();
    await ofHousehold(db, 'conversation')
      .addColumn('id', text, required)
      .addColumn('at', text, required)
      .addColumn('body', text, required)
      .addPrimaryKeyConstraint('conversation_key', ['household_id', 'id'])
      .execute();
    await ofHousehold(db, 'turn')
      .addColumn('id', text, required)
      .addColumn('conversation_id', text, required)
      .addColumn('at', text, required)
      .addColumn('version', 'integer', required)
      .addColumn('reply', text, required)
      .addPrimaryKeyConstraint('turn_key', ['household_id', 'id'])
      .execute();
    await index(db, 'turn', ['at']);

    await ofHousehold(db, 'device')
      .addColumn('id', text, required)
      .addColumn('name', text, required)
      .addColumn('token_hash', text, required)
      .addColumn('scope', text, required)
      .addColumn('person_id', text)
      .addColumn('paired_at', text, required)
      .addColumn('last_seen_at', text)
      .addColumn('revoked_at', text)
      .addPrimaryKeyConstraint('device_key', ['household_id', 'id'])
      .execute();
    await db.schema
      .createTable('device_token')
      .addColumn('token_hash', text, (column) => column.primaryKey().notNull())
      .addColumn('household_id', text, required)
      .addColumn('device_id', text, required)
      .execute();

    await ofHousehold(db, 'telling')
      .addColumn('id', text, required)
      .addColumn('kind', text, required)
      .addColumn('due', text, required)
      .addColumn('claim_from', text, required)
      .addColumn('body', text)
      .addColumn('made_at', text)
      .addColumn('attempts', 'integer', (column) => column.notNull().defaultTo(0))
      .addColumn('owner', text)
      .addColumn('leased_until', text)
      .addColumn('settled_at', text)
      .addPrimaryKeyConstraint('telling_key', ['household_id', 'id'])
      .execute();
    // The one index that does not begin with the household: what is due is asked across all of them.
    await db.schema
      .createIndex('telling_due')
      .on('telling')
      .columns(['claim_from'])
      .where(sql<boolean>`settled_at is null`)
      .execute();
  },
};
