/** All of a household as one JSON document, and back: for leaving, moving and restoring. */
import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import { z } from 'zod';
import type { Id } from '../kitchen/model.js';
import { deviceOf, insertDevice } from './device-rows.js';
import { StoreError } from './errors.js';
import { entryRow, readJournal } from './journal-rows.js';
import { householdRow, readKitchen, writeKitchen } from './kitchen-rows.js';
import type { Device, HouseholdArchive } from './port.js';
import type { Database } from './tables.js';
import { RECORD_TABLES, type MappedKind } from './records.js';
import {
  emptyKitchen,
  SHELF,
  recordShapes,
  type Household,
  type JournalEntry,
  type Kitchen,
} from '../kitchen/index.js';

const { household, ...kinds } = recordShapes;
const entryOp = z.union(
  Object.entries(recordShapes).map(([kind, shape]) =>
    z.strictObject({
      kind: z.literal(kind),
      id: z.string(),
      before: shape.nullable(),
      after: shape.nullable(),
    }),
  ),
);
const archiveShape = z.strictObject({
  format: z.literal('tellshelf household 1'),
  createdAt: z.iso.datetime(),
  version: z.int().nonnegative(),
  household,
  records: z.strictObject(
    Object.fromEntries(Object.entries(kinds).map(([kind, shape]) => [kind, z.array(shape)])),
  ),
  journal: z.array(
    z.strictObject({
      id: z.string(),
      version: z.int().positive(),
      at: z.iso.datetime(),
      personId: z.string().nullable(),
      deviceId: z.string().nullable(),
      turnId: z.string().nullable(),
      verb: z.string(),
      about: z.array(z.string()),
      ops: z.array(entryOp),
      undoes: z.string().optional(),
    }),
  ),
  devices: z.array(
    z.strictObject({
      id: z.string(),
      householdId: z.string(),
      name: z.string(),
      tokenHash: z.string(),
      scope: z.enum(['speak', 'help', 'own']),
      personId: z.string().nullable(),
      pairedAt: z.iso.datetime(),
      lastSeenAt: z.iso.datetime().nullable(),
      revokedAt: z.iso.datetime().nullable(),
    }),
  ),
});

const KINDS = Object.keys(RECORD_TABLES) as readonly MappedKind[];

/** Conversations and replies are left out: they are for the moment, and say what people said. */
export const archiveOf = async (db: Kysely<Database>, householdId: Id): Promise<HouseholdArchive | null> => {
  const kitchen = await readKitchen(db, householdId);
  if (!kitchen) return null;
  const { created_at: createdAt } = await db
    .selectFrom('household')
    .select('created_at')
    .where('household_id', '=', householdId)
    .executeTakeFirstOrThrow();
  const devices = await db.selectFrom('device').selectAll().where('household_id', '=', householdId).execute();
  return {
    format: 'tellshelf household 1',
    createdAt,
    version: kitchen.version,
    household: kitchen.household,
    records: Object.fromEntries(KINDS.map((kind) => [kind, [...kitchen[SHELF[kind]].values()]])),
    journal: await readJournal(db, householdId, { after: -1, limit: Number.MAX_SAFE_INTEGER, order: 'asc' }),
    devices: devices.map(deviceOf),
  };
};

/** @throws StoreError `unreadable` when it is no such document. */
export const readArchive = (document: unknown): HouseholdArchive => {
  const read = archiveShape.safeParse(document);
  if (!read.success) {
    throw new StoreError('unreadable', `not a household's archive: ${z.prettifyError(read.error)}`, {
      cause: read.error,
    });
  }
  return read.data as unknown as HouseholdArchive;
};

export const kitchenOf = (archive: HouseholdArchive): Kitchen => ({
  ...emptyKitchen(archive.household as Household),
  ...Object.fromEntries(
    KINDS.map((kind) => [SHELF[kind], new Map((archive.records[kind] ?? []).map((one) => [one.id, one]))]),
  ),
  version: archive.version,
});

/** Writes all of it, as another generation; the household must not be there. */
export const writeArchive = async (
  db: Kysely<Database>,
  archive: HouseholdArchive,
  rights: number,
): Promise<void> => {
  const kitchen = kitchenOf(archive);
  const householdId = kitchen.household.id;
  const there = await db
    .selectFrom('household')
    .select('version')
    .where('household_id', '=', householdId)
    .executeTakeFirst();
  if (there) throw new StoreError('taken', 'there is a household with this id already');
  await db
    .insertInto('household')
    .values({
      ...householdRow(kitchen.household, kitchen.version),
      created_at: archive.createdAt,
      rights,
      generation: randomUUID(),
    })
    .execute();
  await writeKitchen(db, kitchen);
  for (const entry of archive.journal as readonly JournalEntry[]) {
    await db.insertInto('journal').values(entryRow(householdId, entry)).execute();
  }
  for (const device of archive.devices as readonly Device[])
    await insertDevice(db, { ...device, householdId });
};
