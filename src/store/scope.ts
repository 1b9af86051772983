/** How the two databases open a transaction: the only thing the store's queries do not share. */
import type { Kysely } from 'kysely';
import type { Id } from '../kitchen/model.js';
import { commitErrorOf, storeErrorOf, StoreError } from './errors.js';
import type { Database } from './tables.js';

export type Work<T> = (db: Kysely<Database>) => Promise<T>;

export interface Keep<T> {
  /**
   * Whether what is written must outlast a power cut before anybody is told of it. It is always
   * written whole or not at all, and outlasts a killed process either way; and whatever must be kept
   * keeps with it all that was written before.
   */
  readonly surely: boolean;
  /** Called as soon as others can read it, which may be before it is on the disk. */
  readonly seen?: ((result: T) => void) | undefined;
}

export interface Scope {
  /** A transaction that writes, and on PostgreSQL sees one household's rows only. Kept surely unless told otherwise. */
  write<T>(householdId: Id, work: Work<T>, keep?: Keep<T>): Promise<T>;
  /** One statement that only reads. */
  glance<T>(householdId: Id, work: Work<T>): Promise<T>;
  /** A transaction that only reads, all at one moment. */
  read<T>(householdId: Id, work: Work<T>): Promise<T>;
  /** For the few questions asked across households; sees household names, tokens and tellings. */
  everyone<T>(how: 'read' | 'write', work: Work<T>): Promise<T>;
}

const ID = /^[\w.:-]{1,128}$/;

/** Ids are letters, digits, `_`, `.`, `:` and `-`; so they can stand in any statement, URL or file name. */
const checkId = (id: Id): void => {
  if (!ID.test(id)) throw new StoreError('bad-id', 'an id is 1 to 128 letters, digits, or _ . : -');
};

/** The same scope, which takes no household id that cannot be one. */
export const withCheckedIds = (scope: Scope): Scope => ({
  write: async (householdId, work, keep) => {
    checkId(householdId);
    return scope.write(householdId, work, keep);
  },
  glance: async (householdId, work) => {
    checkId(householdId);
    return scope.glance(householdId, work);
  },
  read: async (householdId, work) => {
    checkId(householdId);
    return scope.read(householdId, work);
  },
  everyone: scope.everyone,
});

/** Begins, works, and commits; anything thrown takes all of it back. */
export const inTransaction = async <T>(
  db: Kysely<Database>,
  begin: (connection: Kysely<Database>) => Promise<unknown>,
  end: (connection: Kysely<Database>, how: 'commit' | 'rollback') => Promise<unknown>,
  work: Work<T>,
): Promise<T> => {
  try {
    return await db.connection().execute(async (connection) => {
      await begin(connection);
      try {
        const result = await work(connection);
        await end(connection, 'commit').catch((error: unknown) => {
          throw commitErrorOf(error);
        });
        return result;
      } catch (error) {
        // The first fault is the one to tell; a connection that is gone has rolled back by itself.
        await end(connection, 'rollback').catch(() => undefined);
        throw error;
      }
    });
  } catch (error) {
    throw storeErrorOf(error);
  }
};
