/**
 * Who works with a store file. Everybody holds the lock together with the others; who puts another file in
 * its place must hold it alone. It is SQLite's own lock on a file beside the store, so it ends with the
 * process, however that ends.
 */
import { StoreError } from './errors.js';
import { sqliteLibrary } from './sqlite-library.js';

/** @throws StoreError `busy` when it is held in a way that does not go together. Returns how to let go. */
export const holdFolder = (storePath: string, how: 'together' | 'alone'): (() => void) => {
  const file = new (sqliteLibrary())(`${storePath}.in-use`, { timeout: 0 });
  try {
    // Not write-ahead: there a reader and a writer would go together.
    file.pragma('journal_mode = delete');
    if (how === 'alone') file.exec('begin exclusive');
    else {
      file.exec('begin');
      file.prepare('select count(*) from sqlite_master').get();
    }
  } catch (error) {
    file.close();
    throw new StoreError(
      'busy',
      how === 'alone'
        ? 'the store is in use: stop the service and whatever else works with it first'
        : 'the store is being restored: try again when that is done',
      { cause: error },
    );
  }
  return () => void file.close();
};
