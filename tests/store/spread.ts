/**
 * Households spread over several ordinary PostgreSQL databases by a hash of their id, behind the store's own port: a
 * simulation of what an engine that spreads tables does, to prove that households are all the unit there is. Each
 * statement goes to one database but for those `statements.ts` lists, which ask each in turn. A household can be moved
 * while it is talked to: its statements wait while its rows are copied.
 */
import { createHash } from 'node:crypto';
import pg from 'pg';
import type { Id } from '../../src/kitchen/model.js';
import {
  openPostgresStore,
  StoreError,
  type PresentDevice,
  type Store,
  type Telling,
} from '../../src/store/index.js';

export interface Spread extends Store {
  /** Number of the database a household is in. */
  placeOf(householdId: Id): number;
  /** Takes a household to another database, with all that is kept of its talk. */
  move(householdId: Id, to: number): Promise<void>;
}

const hashed = (text: string, among: number): number =>
  createHash('sha256').update(text).digest().readUInt32BE(0) % among;

/** Tables in an order in which rows may be put: what others refer to first. */
const tablesOf = async (client: pg.Client): Promise<readonly string[]> => {
  const { rows } = await client.query<{ table_name: string }>(
    `select table_name from information_schema.columns
     where table_schema = 'public' and column_name = 'household_id' order by table_name`,
  );
  const first = ['household', 'device'];
  const all = rows.map(({ table_name }) => table_name);
  return [...first, ...all.filter((name) => !first.includes(name))];
};

/** All rows of a household from one database to another: there whole, then gone here. */
const copyRows = async (from: string, to: string, householdId: Id): Promise<void> => {
  const [source, target] = [from, to].map((connectionString) => new pg.Client({ connectionString }));
  for (const client of [source!, target!]) client.on('error', () => undefined);
  try {
    await source!.connect();
    await target!.connect();
    const tables = await tablesOf(source!);
    await target!.query('begin');
    for (const table of tables) {
      const { rows } = await source!.query<{ all: unknown }>(
        `select coalesce(json_agg(t), '[]') as all from "${table}" t where household_id = $1`,
        [householdId],
      );
      await target!.query(
        `insert into "${table}" select * from json_populate_recordset(null::"${table}", $1)`,
        [JSON.stringify(rows[0]!.all)],
      );
    }
    await target!.query('commit');
    await source!.query('delete from device_token where household_id = $1', [householdId]);
    await source!.query('delete from household where household_id = $1', [householdId]);
  } finally {
    await source!.end().catch(() => undefined);
    await target!.end().catch(() => undefined);
  }
};

export const openSpread = (urls: readonly string[], connections = 4): Spread => {
  const stores = urls.map((url) => openPostgresStore(url, { connections, answerWithin: 2_000 }));
  /** Where a household is that is not where its hash says. */
  const moved = new Map<Id, number>();
  /** Statements under way of each household, and the moving they wait for. */
  const busy = new Map<Id, number>();
  const moving = new Map<Id, Promise<void>>();
  const placeOf = (householdId: Id): number => moved.get(householdId) ?? hashed(householdId, stores.length);

  const at = async <T>(householdId: Id, ask: (store: Store) => Promise<T>): Promise<T> => {
    while (moving.has(householdId)) await moving.get(householdId);
    busy.set(householdId, (busy.get(householdId) ?? 0) + 1);
    try {
      return await ask(stores[placeOf(householdId)]!);
    } finally {
      busy.set(householdId, busy.get(householdId)! - 1);
    }
  };
  /** Asks each; what one that is out of reach has is asked again another time. */
  const each = async <T>(ask: (store: Store) => Promise<readonly T[]>): Promise<T[]> => {
    const answers = await Promise.allSettled(stores.map(ask));
    if (answers.every(({ status }) => status === 'rejected'))
      throw new StoreError('unavailable', 'no database answers');
    return answers.flatMap((answer) => (answer.status === 'fulfilled' ? answer.value : []));
  };
  /** Devices that wait have no household yet, and are counted all together: they are all in the first. */
  const [waiting] = stores as [Store];

  const deviceByTokenHash = async (tokenHash: string): Promise<PresentDevice | null> => {
    for (const store of stores) {
      const device = await store.deviceByTokenHash(tokenHash);
      if (device) return device;
    }
    return null;
  };

  return {
    placeOf,
    move: async (householdId, to) => {
      const from = placeOf(householdId);
      if (from === to) return;
      const done = (async () => {
        while ((busy.get(householdId) ?? 0) > 0) await new Promise((resolve) => setTimeout(resolve, 2));
        await copyRows(urls[from]!, urls[to]!, householdId);
        moved.set(householdId, to);
      })();
      moving.set(
        householdId,
        done.catch(() => undefined),
      );
      try {
        await done;
      } finally {
        moving.delete(householdId);
      }
    },

    migrate: async () => {
      for (const store of stores) await store.migrate();
    },
    close: async () => {
      for (const store of stores) await store.close();
    },
    probe: async () => {
      await Promise.all(stores.map((store) => store.probe()));
    },
    backup: async (target) => {
      for (const store of stores) await store.backup(target);
    },

    householdIds: async () => (await each((store) => store.householdIds())).sort(),
    toPlan: (limit, since) => each((store) => store.toPlan(limit, since)),
    householdsDue: (after, until) => each((store) => store.householdsDue(after, until)),
    claimDue: (claim) => each<Telling>((store) => store.claimDue(claim)),
    deviceByTokenHash,

    addPairing: (pairing, how) => waiting.addPairing(pairing, how),
    waitingPairing: async (codeHash, now) => {
      const pairing = await waiting.waitingPairing(codeHash, now);
      return pairing && (await deviceByTokenHash(pairing.tokenHash)) ? null : pairing;
    },
    takePairing: (codeHash, now) => waiting.takePairing(codeHash, now),

    createHousehold: (kitchen, when) =>
      at(kitchen.household.id, (store) => store.createHousehold(kitchen, when)),
    addDevice: (device) => at(device.householdId, (store) => store.addDevice(device)),
    restoreHousehold: (archive, how) =>
      at((archive as { household?: { id?: Id } } | null)?.household?.id ?? '', (store) =>
        store.restoreHousehold(archive, how),
      ),
    deleteHousehold: (id) => at(id, (store) => store.deleteHousehold(id)),
    loadKitchen: (id) => at(id, (store) => store.loadKitchen(id)),
    beginTurn: (id, conversation, turn) => at(id, (store) => store.beginTurn(id, conversation, turn)),
    commitTurn: (id, turn, seen) => at(id, (store) => store.commitTurn(id, turn, seen)),
    journalAfter: (id, after, limit) => at(id, (store) => store.journalAfter(id, after, limit)),
    journalLatest: (id, limit) => at(id, (store) => store.journalLatest(id, limit)),
    changeDevices: (id, change) => at(id, (store) => store.changeDevices(id, change)),
    devices: (id) => at(id, (store) => store.devices(id)),
    rightsOf: (id) => at(id, (store) => store.rightsOf(id)),
    deviceJournal: (id, limit) => at(id, (store) => store.deviceJournal(id, limit)),
    deviceHeard: (id, device, when) => at(id, (store) => store.deviceHeard(id, device, when)),
    archiveHousehold: (id) => at(id, (store) => store.archiveHousehold(id)),
    recentConversations: (id, since, limit) => at(id, (store) => store.recentConversations(id, since, limit)),
    forgetTalk: (id, before) => at(id, (store) => store.forgetTalk(id, before)),
    subscribe: (id, hear) => at(id, (store) => store.subscribe(id, hear)),
    countGuess: (id, when) => at(id, (store) => store.countGuess(id, when)),
    uncountGuess: (id) => at(id, (store) => store.uncountGuess(id)),
    noticeAddresses: (id) => at(id, (store) => store.noticeAddresses(id)),
    keepNoticeAddress: (id, address) => at(id, (store) => store.keepNoticeAddress(id, address)),
    dropNoticeAddress: (id, device, endpoint) =>
      at(id, (store) => store.dropNoticeAddress(id, device, endpoint)),
    planTellings: (id, wanted, as) => at(id, (store) => store.planTellings(id, wanted, as)),
    makeTelling: (id, telling, owner, body, when) =>
      at(id, (store) => store.makeTelling(id, telling, owner, body, when)),
    settleTelling: (id, telling, owner, when) =>
      at(id, (store) => store.settleTelling(id, telling, owner, when)),
    releaseTelling: (id, telling, owner, retry) =>
      at(id, (store) => store.releaseTelling(id, telling, owner, retry)),
  };
};
