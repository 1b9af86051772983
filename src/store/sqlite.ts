/** The embedded store: one SQLite file, for one household or a few on one machine. */
import { existsSync, realpathSync, statSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import type Sqlite from 'better-sqlite3';
import { Kysely, Migrator, SqliteDialect, sql, type SqliteDatabase, type SqliteStatement } from 'kysely';
import { holdFolder } from './folder-lock.js';
import { createFileBell } from './sqlite-bell.js';
import { createDiskSync, type DiskSyncOptions } from './disk-sync.js';
import { migrateWith } from './migrate.js';
import { sqliteMigrations } from './migrations/index.js';
import type { Store, TellingStore } from './port.js';
import { createNotices } from './notices.js';
import { createPairings } from './pairings.js';
import { inTransaction, withCheckedIds } from './scope.js';
import { createSqlStore } from './sql-store.js';
import { sqliteLibrary } from './sqlite-library.js';
import type { Database } from './tables.js';
import { createTellings } from './tellings.js';
import { StoreError, storeErrorOf } from './errors.js';

export interface SqliteOptions {
  /** Milliseconds to wait for another process that is writing. Default 5,000. */
  readonly busyTimeout?: number;
  /** The file may not grow past this many pages of 4,096 bytes. Default: as SQLite allows. */
  readonly maxPages?: number;
  /** See `DiskSyncOptions`. */
  readonly disk?: DiskSyncOptions;
}

const openFile = (path: string, options: SqliteOptions): Sqlite.Database => {
  const file = new (sqliteLibrary())(path, { timeout: options.busyTimeout ?? 5_000 });
  // Write-ahead log: readers never wait for a writer. NORMAL: what was answered has reached the disk
  // all the same, see disk-sync.ts.
  file.pragma('journal_mode = WAL');
  file.pragma('synchronous = NORMAL');
  file.pragma('foreign_keys = ON');
  // From here on nothing blocks: see `whenFree`.
  file.pragma('busy_timeout = 0');
  if (options.maxPages !== undefined) file.pragma(`max_page_count = ${Math.trunc(options.maxPages)}`);
  return file;
};

const BEGIN = sql`begin`;
const BEGIN_IMMEDIATE = sql`begin immediate`;
const END = { commit: sql`commit`, rollback: sql`rollback` };
const end = (connection: Kysely<Database>, how: 'commit' | 'rollback') => END[how].execute(connection);

/** Statements kept prepared; a turn's are two dozen or so. */
const STATEMENTS_KEPT = 200;

/** Preparing a statement takes longer than running it, so each is prepared once. */
const prepareOnce = (file: Sqlite.Database): SqliteDatabase => {
  const prepared = new Map<string, Sqlite.Statement>();
  return {
    close: () => void file.close(),
    prepare: (text) => {
      const statement = prepared.get(text) ?? file.prepare(text);
      if (prepared.size >= STATEMENTS_KEPT) prepared.clear();
      prepared.set(text, statement);
      return statement as unknown as SqliteStatement;
    },
  };
};

/**
 * Tries until no other connection holds the file, for so many milliseconds in all. It waits here and
 * not inside SQLite, which would hold up everything else this process does, or even the very
 * connection that is waited for.
 */
const whenFree = async <T>(patience: number, attempt: () => Promise<T>): Promise<T> => {
  for (let waited = 0, pause = 1; ; waited += pause, pause = Math.min(pause * 2, 50)) {
    try {
      return await attempt();
    } catch (error) {
      const fault = storeErrorOf(error);
      if (fault.fault !== 'busy' || waited >= patience) throw fault;
      await sleep(pause);
    }
  }
};

/**
 * Opens a store in a file, made when it is not there (`:memory:` for one that lives as long as the
 * process). Call `migrate()` before anything else.
 * @throws StoreError `unreadable` for a file that is not a SQLite database, `unavailable` when it cannot be made.
 */
export const openSqliteStore = (path: string, options: SqliteOptions = {}): Store & TellingStore => {
  let file: Sqlite.Database;
  let letGo = (): void => undefined;
  try {
    if (path !== ':memory:') letGo = holdFolder(path, 'together');
    file = openFile(path, options);
  } catch (error) {
    letGo();
    throw storeErrorOf(error);
  }
  const inode = file.memory ? null : statSync(path).ino;
  /** What is written to a file that was taken away or replaced is gone with the process. */
  const stillThere = (): void => {
    if (inode === null || (existsSync(path) && statSync(path).ino === inode)) return;
    const error = new StoreError('unavailable', 'the store’s file was taken away; nothing more is written');
    options.disk?.onFailed?.(error);
    throw error;
  };
  const db = new Kysely<Database>({ dialect: new SqliteDialect({ database: prepareOnce(file) }) });
  const patience = options.busyTimeout ?? 5_000;
  const disk = createDiskSync(file.memory ? null : realpathSync(path), options.disk);
  const scope = withCheckedIds({
    write: async (_household, work, keep) => {
      stillThere();
      if (disk.failed)
        throw new StoreError('unavailable', 'the disk has failed; nothing more is written', {
          cause: disk.failed,
        });
      const result = await inTransaction(
        db,
        // IMMEDIATE: a writer waits at the start, where waiting is safe, and not halfway.
        (connection) => whenFree(patience, () => BEGIN_IMMEDIATE.execute(connection)),
        end,
        work,
      );
      keep?.seen?.(result);
      // What is told was decided on changes that may still be on their way to the disk.
      await (keep?.surely === false ? disk.othersReached() : disk.reached());
      return result;
    },
    glance: (_household, work) =>
      whenFree(patience, async () => {
        try {
          return await work(db);
        } catch (error) {
          throw storeErrorOf(error);
        }
      }),
    read: (_household, work) =>
      whenFree(patience, () => inTransaction(db, (connection) => BEGIN.execute(connection), end, work)),
    everyone: (how, work) => (how === 'read' ? scope.read('everyone', work) : scope.write('everyone', work)),
  });
  const store = createSqlStore(scope, false);
  let othersCommits = file.pragma('data_version', { simple: true });
  const bell = createFileBell(
    () => {
      const seen = othersCommits;
      othersCommits = file.pragma('data_version', { simple: true });
      return seen !== othersCommits;
    },
    (ids) =>
      scope.everyone('read', async (db) => {
        const rows = await db
          .selectFrom('household')
          .select(['household_id', 'version', 'rights'])
          .where('household_id', 'in', [...ids])
          .execute();
        return new Map(rows.map(({ household_id: id, version, rights }) => [id, { version, rights }]));
      }),
  );
  return {
    ...store,
    ...createTellings(scope),
    ...createPairings(scope),
    ...createNotices(scope),

    beginTurn: async (...turn) => {
      const start = await store.beginTurn(...turn);
      // An answer is given again only once what it tells of is on the disk.
      if (start?.earlierReply !== undefined) await disk.reached();
      return start;
    },

    migrate: () =>
      // One writer at a time, in whichever process: the second finds the work done.
      inTransaction(
        db,
        (connection) => whenFree(patience, () => BEGIN_IMMEDIATE.execute(connection)),
        end,
        (connection) => migrateWith(new Migrator({ db: connection, provider: sqliteMigrations })),
      ),

    probe: () =>
      // Writes the file's first page, with what is there already.
      scope.everyone('write', async (db) => {
        await sql`pragma user_version = 1`.execute(db);
      }),

    subscribe: (householdId, hear) => bell.subscribe(householdId, hear),

    close: async () => {
      bell.close();
      await disk.close();
      await db.destroy();
      letGo();
    },

    backup: async (target) => {
      try {
        // One moment's copy, whoever writes meanwhile; a page-by-page copy begins anew at each write.
        file.prepare('vacuum into ?').run(target);
      } catch (error) {
        throw storeErrorOf(error);
      }
    },
  };
};
