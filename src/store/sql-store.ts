/** The store's queries, the same on both databases. */
import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { Id } from '../kitchen/model.js';
import { archiveOf, readArchive, writeArchive } from './archive.js';
import { doDeviceDeeds } from './device-deeds.js';
import { deviceOf } from './device-rows.js';
import { StoreError } from './errors.js';
import { entriesOf, entryRow, readJournal } from './journal-rows.js';
import { householdRow, readKitchen, writeKitchen, writeOps } from './kitchen-rows.js';
import type {
  CommitResult,
  Device,
  DeviceChange,
  DeviceEntry,
  DevicesChanged,
  NoticeStore,
  PairingStore,
  Store,
  TellingStore,
  TurnRecord,
} from './port.js';
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
  | 'migrate'
  | 'close'
  | 'probe'
  | 'backup'
  | 'subscribe'
  | keyof TellingStore
  | keyof PairingStore
  | keyof NoticeStore
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
        .values({
          ...householdRow(kitchen.household, kitchen.version),
          created_at: at,
          generation: randomUUID(),
        })
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
            generation: row.generation,
            rights: row.rights,
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
    const done = await changeDevices(scope, turns, device.householdId, {
      deeds: [{ kind: 'let-in', device }],
      by: null,
      at: device.pairedAt,
    });
    if (done.outcome === 'refused')
      throw new StoreError('taken', 'there is a device with this id or token already');
  },

  changeDevices: (householdId, change) => changeDevices(scope, turns, householdId, change),

  rightsOf: (householdId) =>
    scope.glance(
      householdId,
      async (db) => (await turns.rights(db, { household: householdId }))[0]?.rights ?? null,
    ),

  deviceJournal: (householdId, limit) =>
    scope.read(householdId, async (db) => {
      const rows = await db
        .selectFrom('device_journal')
        .selectAll()
        .where('household_id', '=', householdId)
        .orderBy('rights', 'desc')
        .orderBy('device_id')
        .limit(limit)
        .execute();
      return rows.map((row): DeviceEntry => ({
        at: row.at,
        deed: row.deed as DeviceEntry['deed'],
        deviceId: row.device_id,
        name: row.name,
        scope: row.scope as Device['scope'],
        by: row.by_device_id,
        whence: row.whence,
      }));
    }),

  deviceHeard: async (householdId, deviceId, at) => {
    await scope.write(
      householdId,
      (db) =>
        db
          .updateTable('device')
          .set({ last_seen_at: at })
          .where('household_id', '=', householdId)
          .where('id', '=', deviceId)
          .execute(),
      // Lost in a power cut, it is written the next time.
      { surely: false },
    );
  },

  deviceByTokenHash: async (tokenHash) => {
    const token = await scope.everyone('read', (db) =>
      db.selectFrom('device_token').selectAll().where('token_hash', '=', tokenHash).executeTakeFirst(),
    );
    if (!token) return null;
    const row = await scope.read(token.household_id, (db) =>
      db
        .selectFrom('device')
        .innerJoin('household', 'household.household_id', 'device.household_id')
        .selectAll('device')
        .select('household.rights')
        .where('device.household_id', '=', token.household_id)
        .where('device.id', '=', token.device_id)
        .executeTakeFirst(),
    );
    return row ? { ...deviceOf(row), rights: row.rights } : null;
  },

  devices: (householdId) => scope.read(householdId, (db) => devicesOf(db, householdId)),

  archiveHousehold: (householdId) => scope.read(householdId, (db) => archiveOf(db, householdId)),

  restoreHousehold: async (document, { replace } = { replace: false }) => {
    const archive = readArchive(document);
    const { id } = archive.household;
    await scope.write(id, async (db) => {
      const [before] = replace ? await turns.takeVersion(db, { household: id }) : [];
      const kept = before ? await devicesOf(db, id) : [];
      if (before) await deleteAll(db, id);
      const ids = new Set(kept.map((device) => device.id));
      const others = archive.devices.filter((device) => !ids.has(device.id));
      await writeArchive(db, { ...archive, devices: [...kept, ...others] }, (before?.rights ?? 0) + 1);
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
});

const changeDevices = (
  scope: Scope,
  turns: TurnQueries,
  householdId: Id,
  change: DeviceChange,
): Promise<DevicesChanged> =>
  scope.write(householdId, async (db) => {
    const [locked] = await turns.takeVersion(db, { household: householdId });
    if (!locked) throw new StoreError('no-such-household', 'this household is not in the store');
    const done = await doDeviceDeeds(db, householdId, change);
    return 'refused' in done
      ? { outcome: 'refused', why: done.refused }
      : { outcome: 'done', devices: done.devices };
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
  const moved =
    (turn.generation !== undefined && turn.generation !== locked.generation) ||
    (turn.rights !== undefined && turn.rights !== locked.rights);
  if (moved) return { outcome: 'stale', version: locked.version };
  // A turn that changes nothing was a true answer when it was decided, whatever has changed since.
  if (turn.changes.length > 0 && locked.version !== turn.decidedOn) {
    return { outcome: 'stale', version: locked.version };
  }

  const deeds = await doDeviceDeeds(db, householdId, {
    deeds: turn.devices ?? [],
    by: turn.deviceId,
    at: turn.at,
  });
  // Found out before anything was written.
  if ('refused' in deeds) return { outcome: 'stale', version: locked.version };
  const { devices } = deeds;

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
    const toPlan = entries.some(({ ops }) =>
      ops.some(({ kind }) => kind === 'reminder' || kind === 'household'),
    );
    const raise = toPlan ? turns.raiseVersionAndPlan : turns.raiseVersion;
    await raise(db, { household: householdId, version });
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
