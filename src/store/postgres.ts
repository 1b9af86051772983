/** The shared store: PostgreSQL 15 or later, for many households and several servers. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Kysely, Migrator, PostgresDialect, sql } from 'kysely';
import { migrateWith } from './migrate.js';
import { postgresMigrations } from './migrations/index.js';
import type { Store, TellingStore } from './port.js';
import { createBell } from './postgres-bell.js';
import { createPool } from './postgres-pool.js';
import { createRing } from './postgres-ring.js';
import { raiseWall, roleToTake } from './postgres-wall.js';
import { createNotices } from './notices.js';
import { createPairings } from './pairings.js';
import { inTransaction, withCheckedIds, type Scope } from './scope.js';
import { createSqlStore } from './sql-store.js';
import type { Database } from './tables.js';
import { createTellings } from './tellings.js';
import { storeErrorOf } from './errors.js';

export interface PostgresOptions {
  /** Connections this process holds at most. Default 10. */
  readonly connections?: number;
  /** Milliseconds the server has to answer one message. Default 8,000. */
  readonly answerWithin?: number;
}

/** Seconds after which the server itself drops a transaction whose owner fell silent, and its locks. */
const SILENT_OWNER_SECONDS = 10;

/**
 * Opens a store in a PostgreSQL database. Call `migrate()` before anything else.
 *
 * Connect as a role that owns the tables and nothing more: row-level security binds it. Connected as
 * a superuser, transactions step down to the role `tellshelf_rows`, which `migrate()` makes.
 * @param url e.g. `postgres://user@host:5432/database`
 */
export const openPostgresStore = (url: string, options: PostgresOptions = {}): Store & TellingStore => {
  const answerWithin = options.answerWithin ?? 8_000;
  const pool = createPool(url, { connections: options.connections ?? 10, answerWithin });
  const db = new Kysely<Database>({ dialect: new PostgresDialect({ pool }) });
  const bell = createBell(url, answerWithin);
  const ring = createRing(pool);

  let stepDown: Promise<string> | null = null;
  const stepDownSql = (): Promise<string> => {
    stepDown ??= roleToTake(db).then((role) => (role === null ? '' : `set local role ${role};`));
    stepDown.catch(() => (stepDown = null));
    return stepDown;
  };

  // Said in each transaction, not on connecting: a pooler in between passes those on. The server gives up
  // on a lock before we give up on the server.
  const limits = `set local statement_timeout = ${Math.ceil(answerWithin * 0.8)}; set local idle_in_transaction_session_timeout = '${SILENT_OWNER_SECONDS}s';`;

  /** One message to the server: begin, step down, and say whose rows are to be seen. */
  const begin = async (connection: Kysely<Database>, how: string, setting: string): Promise<void> => {
    await sql.raw(`begin ${how}; ${limits} ${await stepDownSql()} ${setting}`).execute(connection);
  };
  const end = (connection: Kysely<Database>, how: 'commit' | 'rollback') => sql.raw(how).execute(connection);
  // Ids were checked to hold nothing but letters, digits and _.:- (see scope.ts).
  const only = (householdId: string): string => `set local tellshelf.household = '${householdId}'`;
  const READ = 'isolation level repeatable read read only';

  const prepared = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      await stepDownSql();
    } catch (error) {
      throw storeErrorOf(error);
    }
    return work();
  };

  const read: Scope['read'] = (householdId, work) =>
    prepared(() => inTransaction(db, (connection) => begin(connection, READ, only(householdId)), end, work));

  const scope = withCheckedIds({
    write: (householdId, work, keep) =>
      prepared(async () => {
        // The server need not wait for its disk; the next transaction that does takes this one along.
        const pace = keep?.surely === false ? 'set local synchronous_commit = off; ' : '';
        const result = await inTransaction(
          db,
          (connection) => begin(connection, '', `${pace}${only(householdId)}`),
          end,
          work,
        );
        keep?.seen?.(result);
        return result;
      }),
    read,
    // Whose rows may be seen is a setting of the transaction, so even one statement needs one.
    glance: read,
    everyone: (how, work) =>
      prepared(() =>
        inTransaction(
          db,
          (connection) =>
            begin(connection, how === 'read' ? READ : '', `set local tellshelf.everyone = 'on'`),
          end,
          work,
        ),
      ),
  });

  const store = createSqlStore(scope, true);
  return {
    ...store,
    ...createTellings(scope),
    ...createPairings(scope),
    ...createNotices(scope),

    migrate: async () => {
      // A migration takes as long as it takes.
      const patient = new Kysely<Database>({
        dialect: new PostgresDialect({ pool: createPool(url, { connections: 2, answerWithin: null }) }),
      });
      try {
        // Kysely takes an advisory lock: the second server waits, then finds the work done.
        await migrateWith(new Migrator({ db: patient, provider: postgresMigrations }));
        await raiseWall(patient);
      } catch (error) {
        throw storeErrorOf(error);
      } finally {
        await patient.destroy();
      }
    },

    commitTurn: async (householdId, turn, seen) => {
      const result = await store.commitTurn(householdId, turn, seen);
      if (result.outcome === 'done') {
        if (result.entries.length > 0) ring.changed(householdId, 'kitchen');
        if (result.devices.length > 0) ring.changed(householdId, 'devices');
      }
      return result;
    },

    changeDevices: async (householdId, change) => {
      const result = await store.changeDevices(householdId, change);
      if (result.outcome === 'done') ring.changed(householdId, 'devices');
      return result;
    },

    deleteHousehold: async (householdId) => {
      await store.deleteHousehold(householdId);
      ring.changed(householdId, 'devices');
    },

    restoreHousehold: async (archive, how) => {
      const id = await store.restoreHousehold(archive, how);
      ring.changed(id, 'kitchen');
      ring.changed(id, 'devices');
      return id;
    },

    probe: () =>
      // Takes a transaction's number, so that its commit is written and kept.
      scope.everyone('write', async (db) => {
        await sql`select pg_current_xact_id()`.execute(db);
      }),

    close: async () => {
      await ring.close();
      await bell.close();
      await db.destroy();
    },

    subscribe: (householdId, hear) => bell.subscribe(householdId, hear),

    backup: async (target) => {
      await mkdir(target, { recursive: true });
      for (const id of await store.householdIds()) {
        const archive = await store.archiveHousehold(id);
        if (archive) await writeFile(join(target, `${id}.json`), JSON.stringify(archive, null, 1));
      }
    },
  };
};
