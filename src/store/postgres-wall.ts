/**
 * Which role the store's transactions run as. Row-level security does not bind superusers and
 * roles that bypass it; connected as one of those, each transaction steps down to a role of our own.
 */
import { sql, type Kysely } from 'kysely';
import type { Database } from './tables.js';

const ROWS_ROLE = 'tellshelf_rows';
/** Any number nobody else uses, so that two servers do not make the role at once. */
const LOCK = 7_305_811;

/** The role to step down to, or null when the connected one is bound by the walls anyway. */
export const roleToTake = async (db: Kysely<Database>): Promise<string | null> => {
  const { rows } = await sql<{ bypasses: boolean }>`
    select rolsuper or rolbypassrls as bypasses from pg_roles where rolname = current_user`.execute(db);
  return rows[0]?.bypasses === true ? ROWS_ROLE : null;
};

/** Makes the role where it is needed and lets it use the tables. Run after each migration. */
export const raiseWall = async (db: Kysely<Database>): Promise<void> => {
  if ((await roleToTake(db)) === null) return;
  const role = sql.ref(ROWS_ROLE);
  await db.transaction().execute(async (trx) => {
    await sql`select pg_advisory_xact_lock(${sql.lit(LOCK)})`.execute(trx);
    const { rows } = await sql`select 1 from pg_roles where rolname = ${ROWS_ROLE}`.execute(trx);
    // Roles belong to the whole server: another database of it may have made this one.
    if (rows.length === 0) await sql`create role ${role} nologin`.execute(trx);
    await sql`grant usage on schema public to ${role}`.execute(trx);
    await sql`grant select, insert, update, delete on all tables in schema public to ${role}`.execute(trx);
  });
};
