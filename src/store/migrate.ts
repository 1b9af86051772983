/** Runs migrations and makes of a failure an error. */
import type { Migrator } from 'kysely';
import { StoreError } from './errors.js';

/** @throws StoreError `unreadable` when the store is newer than the program; the database's own error else. */
export const migrateWith = async (migrator: Migrator): Promise<void> => {
  const { error } = await migrator.migrateToLatest();
  if (error === undefined) return;
  if (error instanceof Error && /corrupted migrations|previously executed migration/.test(error.message)) {
    throw new StoreError('unreadable', 'this store was made by a newer version of the program', {
      cause: error,
    });
  }
  throw error;
};
