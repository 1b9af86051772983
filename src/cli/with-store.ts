/** What commands that look into the store have in common. */
import type { Command } from 'commander';
import type { Store } from '../store/port.js';

export interface Where {
  readonly data: string;
  readonly household?: string;
}

const usual = (): string => process.env['DATA_DIR'] ?? '.data';

/** The folder as the next command is to be told of it; nothing where it is the usual one. */
export const dataFlag = (data: string): string =>
  data === usual() ? '' : ` --data ${/^[\w./-]+$/.test(data) ? data : `'${data.replaceAll("'", "'\\''")}'`}`;

/** Adds `--data`, and `--household` where the command is about one. */
export const whereabouts = (command: Command, one: boolean): Command => {
  const placed = command.option('--data <dir>', 'folder of the store', usual());
  return one ? placed.option('--household <id>', 'which household, where there are several') : placed;
};

/** Opens the store (PostgreSQL when DATABASE_URL names one), works on it, and closes it. */
export const withStore = async <T>(where: Where, work: (store: Store) => Promise<T>): Promise<T> => {
  const { openStore } = await import('./open-store.js');
  const store = await openStore({ data: where.data, databaseUrl: process.env['DATABASE_URL'] });
  try {
    return await work(store);
  } finally {
    await store.close();
  }
};
