/** The store the command line works on: a PostgreSQL server when one is named, else a file. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Store } from '../store/port.js';

export interface WhichStore {
  /** Folder of the embedded store; made when missing. */
  readonly data: string;
  readonly databaseUrl?: string | undefined;
  /** Called when the embedded store's disk has failed: nothing more can be kept. */
  readonly onLost?: (error: Error) => void;
}

/** Opens it, brought up to the present schema. The caller closes it. */
export const openStore = async ({ data, databaseUrl, onLost }: WhichStore): Promise<Store> => {
  if (databaseUrl !== undefined && databaseUrl !== '') {
    const { openPostgresStore } = await import('../store/postgres.js');
    const store = await openPostgresStore(databaseUrl);
    await store.migrate();
    return store;
  }
  await mkdir(data, { recursive: true, mode: 0o700 });
  const { openSqliteStore } = await import('../store/sqlite.js');
  const store = await openSqliteStore(
    join(data, 'kitchen.sqlite'),
    onLost === undefined ? {} : { disk: { onFailed: onLost } },
  );
  await store.migrate();
  return store;
};
