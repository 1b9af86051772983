/**
 * SQLite itself. One library in two releases: 13 carries its own binaries and needs Node 22, where 12 would
 * abort; 12 is compiled for Node 20 by `.setup.mjs`, which also fetches 13 where npm left it out. Only the one that
 * fits is ever loaded.
 */
import { createRequire } from 'node:module';
import type Sqlite from 'better-sqlite3';
import { projectFile } from '../project-files.js';
import { StoreError } from './errors.js';

type Library = typeof Sqlite;

const requireHere = createRequire(import.meta.url);
const NAME = 'better-sqlite3';
const MAJOR = Number.parseInt(process.versions.node, 10) >= 22 ? '13' : '12';

/** Where it may be; what `.setup.mjs` fetched goes first. */
const PATHS = [projectFile('node_modules', `.sqlite-${MAJOR}`, 'node_modules', NAME), NAME];

const isRelease = (path: string, major: string): boolean => {
  try {
    return (requireHere(`${path}/package.json`) as { version: string }).version.startsWith(`${major}.`);
  } catch {
    return false;
  }
};

const load = (): Library => {
  const path = PATHS.find((one) => isRelease(one, MAJOR));
  try {
    if (path === undefined) throw new Error(`${NAME} ${MAJOR} is not installed`);
    const library = requireHere(path) as Library;
    // The binary is looked for when the first file is opened.
    new library(':memory:').close();
    return library;
  } catch (error) {
    // The first line; what a list of places would follow is no part of it.
    const why = (error as Error).message.split('\n', 1)[0]?.replace(/\.? Tried:$|\.$/, '') ?? '';
    throw new StoreError(
      'unavailable',
      `SQLite cannot be loaded by Node ${process.versions.node} on ${process.platform}-${process.arch}: ${why}.\nRun "node .setup.mjs" in ${projectFile()}: it says what is missing. Or name a PostgreSQL server with DATABASE_URL.`,
      { cause: error },
    );
  }
};

let loaded: Library | null = null;

/** @throws StoreError `unavailable`, in two lines that say how to get it. */
export const sqliteLibrary = (): Library => (loaded ??= load());
