/** A kitchen's records to rows and back. */
import type { Kysely } from 'kysely';
import {
  emptyKitchen,
  SHELF,
  type Household,
  type Id,
  type Kitchen,
  type Op,
  type Records,
} from '../kitchen/index.js';
import { columnText, RECORD_TABLES, rowOf, type MappedKind } from './records.js';
import type { Database, RecordTable } from './tables.js';

const KINDS = Object.keys(RECORD_TABLES) as readonly MappedKind[];

/** SQLite takes up to 32,766 values in a statement, PostgreSQL 65,535; the widest row has nine. */
const ROWS_AT_ONCE = 500;

/** All record tables have the same key and body; queries over any of them are typed by what they share. */
const asRecords = (db: Kysely<Database>, kind: MappedKind) => {
  const table = RECORD_TABLES[kind];
  return { db: db as unknown as Kysely<Record<typeof table, RecordTable>>, table };
};

export const householdRow = (household: Household, version: number) => ({
  household_id: household.id,
  version,
  name: columnText(household.name),
  time_zone: household.timeZone,
  body: JSON.stringify(household),
});

/** Reads a whole kitchen. The caller's transaction makes it one moment's. */
export const readKitchen = async (db: Kysely<Database>, householdId: Id): Promise<Kitchen | null> => {
  const household = await db
    .selectFrom('household')
    .select(['version', 'body'])
    .where('household_id', '=', householdId)
    .executeTakeFirst();
  if (!household) return null;
  const maps: Record<string, ReadonlyMap<Id, unknown>> = {};
  for (const kind of KINDS) {
    const { db: records, table } = asRecords(db, kind);
    const rows = await records
      .selectFrom(table)
      .select(['id', 'body'])
      .where('household_id', '=', householdId)
      .orderBy('id')
      .execute();
    maps[SHELF[kind]] = new Map(rows.map(({ id, body }) => [id, JSON.parse(body)]));
  }
  return {
    ...emptyKitchen(JSON.parse(household.body) as Household),
    ...maps,
    version: household.version,
  };
};

/** Writes every record of a new household. */
export const writeKitchen = async (db: Kysely<Database>, kitchen: Kitchen): Promise<void> => {
  for (const kind of KINDS) {
    const { db: records, table } = asRecords(db, kind);
    const all = [...(kitchen[SHELF[kind]] as ReadonlyMap<Id, Records[typeof kind]>).values()];
    for (let from = 0; from < all.length; from += ROWS_AT_ONCE) {
      const rows = all
        .slice(from, from + ROWS_AT_ONCE)
        .map((record) => ({ household_id: kitchen.household.id, ...rowOf(kind, record) }));
      await records.insertInto(table).values(rows).execute();
    }
  }
};

/** The last word on each record that a turn's changes touch, with what it was before all of them. */
export const netOps = (ops: readonly Op[]): readonly Op[] => {
  const net = new Map<string, Op>();
  for (const op of ops) {
    const key = `${op.kind} ${op.id}`;
    const earlier = net.get(key);
    net.set(key, earlier ? ({ ...op, before: earlier.before } as Op) : op);
  }
  return [...net.values()];
};

/** Writes what ops leave behind. */
export const writeOps = async (db: Kysely<Database>, householdId: Id, ops: readonly Op[]): Promise<void> => {
  const net = netOps(ops);
  // Markers are taken off first, whatever order they were moved in, so that no two items
  // bear one even for a moment: the index that guards it looks at every statement.
  const losing = net.flatMap((op) =>
    op.kind === 'item' && op.before?.markerId && op.before.markerId !== op.after?.markerId ? [op.id] : [],
  );
  if (losing.length > 0) {
    await db
      .updateTable('item')
      .set({ marker_id: null })
      .where('household_id', '=', householdId)
      .where('id', 'in', losing)
      .execute();
  }
  for (const op of net) {
    if (op.kind === 'household') {
      if (op.after) await writeHousehold(db, op.after);
    } else if (op.after) {
      await writeRecord(db, householdId, op.kind, op.after);
    } else {
      const { db: records, table } = asRecords(db, op.kind);
      await records
        .deleteFrom(table)
        .where('household_id', '=', householdId)
        .where('id', '=', op.id)
        .execute();
    }
  }
};

const writeHousehold = async (db: Kysely<Database>, household: Household): Promise<void> => {
  const { household_id, name, time_zone, body } = householdRow(household, 0);
  await db
    .updateTable('household')
    .set({ name, time_zone, body })
    .where('household_id', '=', household_id)
    .execute();
};

const writeRecord = async <K extends MappedKind>(
  db: Kysely<Database>,
  householdId: Id,
  kind: K,
  record: Records[K],
): Promise<void> => {
  const { db: records, table } = asRecords(db, kind);
  const { id, ...columns } = rowOf(kind, record);
  await records
    .insertInto(table)
    .values({ household_id: householdId, id, ...columns })
    .onConflict((conflict) => conflict.columns(['household_id', 'id']).doUpdateSet(columns))
    .execute();
};
