/** `tellshelf restore`: brings back what `backup` or `export --as archive` wrote. */
import { access, copyFile, mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import type { openSqliteStore } from '../store/index.js';
import { whereabouts, withStore, type Where } from './with-store.js';

interface Flags extends Where {
  readonly replace?: boolean;
}

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

const read = async (file: string): Promise<unknown> => {
  try {
    return JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    throw new Error(`${file}: ${error instanceof Error ? error.message : 'not JSON'}`);
  }
};

const restoreArchives = (files: readonly string[], flags: Flags): Promise<void> =>
  withStore(flags, async (store) => {
    // All are read before the first is written: a file that is no archive stops everything early.
    const documents = await Promise.all(files.map(read));
    for (const document of documents) {
      const id = await store.restoreHousehold(document, { replace: flags.replace ?? false });
      process.stdout.write(`Restored household ${id}\n`);
    }
  });

/** A whole store file: checked first, then put in place; the old one is kept beside it. */
const restoreFile = async (source: string, { data, replace }: Flags): Promise<void> => {
  await mkdir(data, { recursive: true, mode: 0o700 });
  const target = join(data, 'kitchen.sqlite');
  if ((await isThere(target)) && !replace) {
    throw new Error(
      `There is a store in ${data} already. Stop the service and say --replace; the old one is kept.`,
    );
  }
  const { holdFolder, openSqliteStore } = await import('../store/index.js');
  // Nobody else may go on in a file that is no longer there.
  const letGo = holdFolder(target, 'alone');
  try {
    await putInPlace(source, target, openSqliteStore);
  } finally {
    letGo();
  }
};

const putInPlace = async (source: string, target: string, open: typeof openSqliteStore): Promise<void> => {
  const fresh = `${target}.restoring`;
  await rm(fresh, { force: true });
  await copyFile(source, fresh);
  try {
    const store = open(fresh);
    try {
      await store.migrate();
      process.stdout.write(`Restoring ${(await store.householdIds()).length} household(s)\n`);
    } finally {
      await store.close();
    }
  } catch (error) {
    for (const part of ['', '.in-use']) await rm(fresh + part, { force: true });
    throw error;
  }
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
  for (const part of ['', '-wal', '-shm']) {
    if (await isThere(target + part)) await rename(target + part, `${target}.before-${stamp}${part}`);
  }
  await rename(fresh, target);
  await rm(`${fresh}.in-use`, { force: true });
};

export const addRestoreCommand = (program: Command): void => {
  whereabouts(program.command('restore <source>'), false)
    .description('Bring back a backup: a store file, one archive (.json), or a folder of archives.')
    .option('--replace', 'also where there is something already')
    .action(async (source: string, flags: Flags) => {
      if (!(await isThere(source))) throw new Error(`There is no "${source}".`);
      if ((await stat(source)).isDirectory()) {
        const files = (await readdir(source)).filter((name) => name.endsWith('.json')).sort();
        if (files.length === 0) throw new Error(`There is no archive in "${source}".`);
        await restoreArchives(
          files.map((name) => join(source, name)),
          flags,
        );
      } else if (/\.json$/i.test(source)) {
        await restoreArchives([source], flags);
      } else {
        if (process.env['DATABASE_URL'])
          throw new Error('A store file cannot be restored into PostgreSQL; an archive can.');
        await restoreFile(source, flags);
      }
    });
};
