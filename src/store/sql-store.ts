/** The store's queries, the same on both databases. */
import type { Kysely } from 'kysely';
import type { Id } from '../kitchen/model.js';
import { archiveOf, readArchive, writeArchive } from './archive.js';
import { doDeviceDeeds } from './device-deeds.js';
import { deviceOf, deviceRow, insertDevice } from './device-rows.js';
import { StoreError } from './errors.js';
import { entriesOf, entryRow, readJournal } from './journal-rows.js';
import { householdRow, readKitchen, writeKitchen, writeOps } from './kitchen-rows.js';
import type { CommitResult, Device, PairingStore, Store, TellingStore, TurnRecord } from './port.js';
import type { Scope } from './scope.js';
import type { Database } from './tables.js';
import { turnQueries, type TurnQueries } from './turn-queries.js';

const JOURNAL_AT_ONCE = 10_000;

const devicesOf = async (db: Kysely<Database>, householdId: Id): Promise<Device[]> => {
  const rows = await db
    .selectFrom('device')
    .selectAll()
    .where('household_id', '=', householdId)
    .orderBy('paired_at')
    .orderBy('id')
    .execute();
  return rows.map(deviceOf);
};

/** Everything of a household; most of it goes with its row (on delete cascade). */
const deleteAll = async (db: Kysely<Database>, householdId: Id): Promise<void> => {
  await db.deleteFrom('device_token').where('household_id', '=', householdId).execute();
  await db.deleteFrom('household').where('household_id', '=', householdId).execute();
};

type SqlStore = Omit<
  Store,
  'migrate' | 'close' | 'probe' | 'backup' | keyof TellingStore | keyof PairingStore
>;

/** `lockRows`: PostgreSQL takes a row's lock; SQLite's writers already have the whole file to themselves. */
export const createSqlStore = (
  scope: Scope,
  lockRows: boolean,
  turns: TurnQueries = turnQueries(lockRows),
): SqlStore => ({
  createHousehold: async (kitchen, at) => {
    await scope.write(kitchen.household.id, async (db) => {
      const made = await db
        .insertInto('household')
        .values({ ...householdRow(kitchen.household, kitchen.version), created_at: at })
        .onConflict((conflict) => conflict.column('household_id').doNothing())
        .executeTakeFirst();
      if (made.numInsertedOrUpdatedRows !== 1n) {
        throw new StoreError('taken', 'there is a household with this id already');
      }
      await writeKitchen(db, kitchen);
    });
  },

  deleteHousehold: async (householdId) => {
    await scope.write(householdId, (db) => deleteAll(db, householdId));
  },

  householdIds: () =>
    scope.everyone('read', async (db) => {
      const rows = await db.selectFrom('household').select('household_id').orderBy('household_id').execute();
      return rows.map(({ household_id }) => household_id);
    }),

  loadKitchen: (householdId) => scope.read(householdId, (db) => readKitchen(db, householdId)),

  beginTurn: (householdId, conversationId, turnId) =>
    scope.glance(householdId, async (db) => {
      const [row] = await turns.begin(db, {
        household: householdId,
        conversation: conversationId,
        turn: turnId,
      });
      return row
        ? {
            version: row.version,
            conversation: row.conversation === null ? null : JSON.parse(row.conversation),
            earlierReply: row.reply === null ? undefined : JSON.parse(row.reply),
          }
        : null;
    }),

  commitTurn: (householdId, turn, seen) =>
    scope.write(householdId, (db) => commit(db, turns, householdId, turn), {
      // What a turn without changes leaves behind is a reply and where the talk stood: after a power
      // cut it is simply asked again.
      surely: turn.changes.length > 0 || (turn.devices ?? []).length > 0,
      seen,
    }),

  journalAfter: (householdId, after, limit = JOURNAL_AT_ONCE) =>
    scope.read(householdId, (db) => readJournal(db, householdId, { after, limit, order: 'asc' })),

  journalLatest: (householdId, limit) =>
    scope.read(householdId, (db) => readJournal(db, householdId, { after: -1, limit, order: 'desc' })),

  addDevice: async (device) => {
    try {
      await scope.write(device.householdId, (db) => insertDevice(db, device));
    } catch (error) {
      if (!(error instanceof StoreError) || error.fault !== 'broken-rule') throw error;
      throw new StoreError('taken', 'there is a device with this id or token, or no such household', {
        cause: error,
      });
    }
  },

  deviceByTokenHash: async (tokenHash) => {
    const token = await scope.everyone('read', (db) =>
      db.selectFrom('device_token').selectAll().where('token_hash', '=', tokenHash).executeTakeFirst(),
    );
    if (!token) return null;
    const row = await scope.read(token.household_id, (db) =>
      db
        .selectFrom('device')
        .selectAll()
        .where('household_id', '=', token.household_id)
        .where('id', '=', token.device_id)
        .executeTakeFirst(),
    );
    return row ? deviceOf(row) : null;
  },

  devices: (householdId) => scope.read(householdId, (db) => devicesOf(db, householdId)),

  archiveHousehold: (householdId) => scope.read(householdId, (db) => archiveOf(db, householdId)),

  restoreHousehold: async (document, { replace } = { replace: false }) => {
    const archive = readArchive(document);
    const { id } = archive.household;
    await scope.write(id, async (db) => {
      const kept = replace ? await devicesOf(db, id) : [];
      if (replace) await deleteAll(db, id);
      const ids = new Set(kept.map((device) => device.id));
      const others = archive.devices.filter((device) => !ids.has(device.id));
      await writeArchive(db, { ...archive, devices: [...kept, ...others] });
    });
    return id;
  },

  recentConversations: (householdId, since, limit) =>
    scope.read(householdId, async (db) => {
      const rows = await db
        .selectFrom('conversation')
        .select('body')
        .where('household_id', '=', householdId)
        .where('at', '>=', since)
        .orderBy('at', 'desc')
        .limit(limit)
        .execute();
      return rows.map(({ body }) => JSON.parse(body) as unknown);
    }),

  forgetTalk: (householdId, before) =>
    scope.write(householdId, async (db) => {
      const old = (table: 'turn' | 'conversation') =>
        db
          .deleteFrom(table)
          .where('household_id', '=', householdId)
          .where('at', '<', before)
          .executeTakeFirst();
      const replies = await old('turn');
      const conversations = await old('conversation');
      return { replies: Number(replies.numDeletedRows), conversations: Number(conversations.numDeletedRows) };
    }),

  updateDevice: async (device) => {
    await scope.write(device.householdId, async (db) => {
      // A token is for life: a new one is a new device.
      const { household_id, id, token_hash: _, ...columns } = deviceRow(device);
      const { numUpdatedRows } = await db
        .updateTable('device')
        .set(columns)
        .where('household_id', '=', household_id)
        .where('id', '=', id)
        .executeTakeFirst();
      if (numUpdatedRows === 0n) throw new StoreError('no-such-device', 'this household has no such device');
    });
  },
});

/**
 * All of a turn, or nothing of it. The household's row is taken first, so that two who write
 * to one household go one after the other; whatever is then found wrong, nothing was written yet.
 */
const commit = async (
  db: Kysely<Database>,
  turns: TurnQueries,
  householdId: Id,
  turn: TurnRecord,
): Promise<CommitResult> => {
  const [locked] = await turns.takeVersion(db, { household: householdId });
  if (!locked) throw new StoreError('no-such-household', 'this household is not in the store');
  const [earlier] = await turns.earlierReply(db, { household: householdId, turn: turn.turnId });
  if (earlier) return { outcome: 'repeat', reply: JSON.parse(earlier.reply) };
  // A turn that changes nothing was a true answer when it was decided, whatever has changed since.
  if (turn.changes.length > 0 && locked.version !== turn.decidedOn) {
    return { outcome: 'stale', version: locked.version };
  }

  const devices = await doDeviceDeeds(db, householdId, turn);
  // Found out before anything was written.
  if (devices === 'no-longer') return { outcome: 'stale', version: locked.version };

  const entries = entriesOf(turn, locked.version);
  const version = locked.version + entries.length;
  if (entries.length > 0) {
    await writeOps(
      db,
      householdId,
      entries.flatMap(({ ops }) => ops),
    );
    await db
      .insertInto('journal')
      .values(entries.map((entry) => entryRow(householdId, entry)))
      .execute();
    await turns.raiseVersion(db, { household: householdId, version });
  }
  await turns.keepReply(db, {
    household_id: householdId,
    id: turn.turnId,
    conversation_id: turn.conversationId,
    at: turn.at,
    version,
    reply: JSON.stringify(turn.reply ?? null),
  });
  await turns.keepConversation(db, {
    household_id: householdId,
    id: turn.conversationId,
    at: turn.at,
    body: JSON.stringify(turn.conversation ?? null),
  });
  return { outcome: 'done', version, entries, devices };
};
