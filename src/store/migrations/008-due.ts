/** What is due is found by time, and what is to be planned by a mark, without a look at every household. */
import { sql, type Migration } from 'kysely';

export const due: Migration = {
  async up(db) {
    // For which carriers what is told was planned; empty: a change that is told of came since.
    await db.schema
      .alterTable('household')
      .addColumn('planned', 'text', (column) => column.notNull().defaultTo(''))
      .execute();
    await db.schema
      .createIndex('household_to_plan')
      .on('household')
      .columns(['household_id'])
      .where(sql<boolean>`planned = ''`)
      .execute();
    await db.schema
      .createIndex('reminder_due')
      .on('reminder')
      .columns(['due'])
      .where(sql<boolean>`delivered_at is null`)
      .execute();
  },
};
