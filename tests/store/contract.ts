/** What every store must do. Run on each adapter, against the real database. */
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  addMarker,
  applyChange,
  buildPlaces,
  emptyKitchen,
  finish,
  isRefused,
  mark,
  putAway,
  together,
  undo,
  type Change,
  type Doing,
  type Kitchen,
  type Op,
  type Result,
} from '../../src/kitchen/index.js';
import {
  StoreError,
  type Device,
  type DeviceDeed,
  type Store,
  type TellingStore,
  type TurnRecord,
} from '../../src/store/index.js';
import { deed, live } from '../kitchen/any-kitchen.js';

const at = '2026-05-14T18:00:00.000Z';

const householdOf = (id: string) =>
  ({
    id,
    name: `The ${id} kitchen`,
    timeZone: 'America/Chicago',
    locale: 'en-US',
    region: 'us',
    measures: 'us',
    microwaveWatts: 800,
    summaryAt: '20:00',
    quietHours: null,
    dotMeanings: { 1: 'eat soon' },
  }) as const;

let serial = 0;
const doing = (kitchen: Kitchen): Doing => ({
  kitchen,
  clock: { now: at, timeZone: 'America/Chicago' },
  speaker: { personId: null },
  newId: () => `n${++serial}`,
});

const made = (result: Result): Change => {
  if (isRefused(result)) throw new Error(JSON.stringify(result));
  return result;
};

const turnOf = (
  decidedOn: number,
  changes: readonly Change[],
  more: Partial<TurnRecord> = {},
): TurnRecord => ({
  turnId: `t${++serial}`,
  conversationId: 'default',
  deviceId: 'd1',
  personId: 'p1',
  at,
  decidedOn,
  changes,
  conversation: { said: serial },
  reply: { text: `reply ${serial}` },
  ...more,
});

const deviceOf = (householdId: string, id: string): Device => ({
  id,
  householdId,
  name: 'Kitchen speaker',
  tokenHash: `${householdId}-${id}-${'0'.repeat(40)}`,
  scope: 'own',
  personId: null,
  pairedAt: at,
  lastSeenAt: null,
  revokedAt: null,
});

const sameKitchen = (kitchen: Kitchen | null): unknown =>
  JSON.parse(
    JSON.stringify({
      ...kitchen,
      ...Object.fromEntries(
        Object.entries(kitchen ?? {}).map(([key, value]) => [
          key,
          value instanceof Map ? [...value].sort(([a], [b]) => (a < b ? -1 : 1)) : value,
        ]),
      ),
    }),
  );

/** Rejection, as fault code. */
const faultOf = async (promise: Promise<unknown>): Promise<string> => {
  try {
    await promise;
  } catch (error) {
    if (error instanceof StoreError) return error.fault;
    throw error;
  }
  return 'none';
};

export const storeContract = (
  name: string,
  open: () => Promise<{
    store: Store & TellingStore;
    second: Store & TellingStore;
    close: () => Promise<void>;
  }>,
  /** Every household in one database: a device that waits is let in once among all of them. */
  { oneDatabase = true }: { readonly oneDatabase?: boolean } = {},
): unknown =>
  describe(name, () => {
    let store: Store & TellingStore;
    let second: Store & TellingStore;
    let close: () => Promise<void>;
    let id: string;

    beforeAll(async () => {
      ({ store, second, close } = await open());
    });
    afterAll(() => close());
    beforeEach(async () => {
      id = `home${++serial}`;
      await store.createHousehold(emptyKitchen(householdOf(id)), at);
    });

    const load = async (from: Store = store): Promise<Kitchen> => {
      const kitchen = await from.loadKitchen(id);
      if (!kitchen) throw new Error('no kitchen');
      return kitchen;
    };
    const commit = async (build: (d: Doing) => Result, on?: Kitchen) => {
      const kitchen = on ?? (await load());
      return store.commitTurn(id, turnOf(kitchen.version, [made(build(doing(kitchen)))]));
    };

    it('migrates again, and side by side, without harm', async () => {
      await Promise.all([store.migrate(), second.migrate()]);
      expect((await load()).household).toEqual(householdOf(id));
    });

    it('keeps a whole kitchen as it was, whatever the names hold', async () => {
      const other = `${id}x`;
      let kitchen = emptyKitchen(householdOf(other));
      const names = [
        '<b>&"\'`; drop table item; --',
        '🥫 שימורים',
        'nul\u0000byte',
        'half \ud800 pair',
        'a'.repeat(5000),
      ];
      for (const item of names) {
        kitchen = applyChange(
          kitchen,
          made(putAway(doing(kitchen), { name: item, dates: { made: '2026-05-01' } })),
        );
      }
      await store.createHousehold(kitchen, at);
      expect(sameKitchen(await second.loadKitchen(other))).toEqual(sameKitchen(kitchen));
      expect(await faultOf(store.createHousehold(kitchen, at))).toBe('taken');
      expect(await store.householdIds()).toEqual(expect.arrayContaining([id, other]));
    });

    it('commits a turn whole, and reads back what the kitchen would say', async () => {
      const start = await load();
      const change = made(
        together(doing(start), [
          (d) => buildPlaces(d, { kind: 'fridge', parentId: null, names: ['fridge'] }),
          (d) => putAway(d, { name: 'milk', placeId: [...d.kitchen.places.keys()][0] ?? null }),
        ]),
      );
      const turn = turnOf(0, [change]);
      const result = await store.commitTurn(id, turn);
      expect(result).toMatchObject({
        outcome: 'done',
        version: 1,
        entries: [{ version: 1, verb: 'built a place' }],
      });
      expect(sameKitchen(await load(second))).toEqual(sameKitchen(applyChange(start, change)));
      expect(await second.beginTurn(id, 'default', 'other')).toMatchObject({
        version: 1,
        conversation: turn.conversation,
        earlierReply: undefined,
      });
      expect(await store.beginTurn(id, 'never spoken', turn.turnId)).toMatchObject({
        version: 1,
        conversation: null,
        earlierReply: turn.reply,
      });
      expect(await store.beginTurn('nobody', 'default', 't')).toBeNull();
    });

    it('does a turn once, however often it is sent', async () => {
      const kitchen = await load();
      const turn = turnOf(0, [made(putAway(doing(kitchen), { name: 'milk' }))]);
      const results = await Promise.all(
        [store, second, store, second].map((one) => one.commitTurn(id, { ...turn, reply: { first: true } })),
      );
      expect(results.map(({ outcome }) => outcome).sort()).toEqual(['done', 'repeat', 'repeat', 'repeat']);
      expect(results.find(({ outcome }) => outcome === 'repeat')).toEqual({
        outcome: 'repeat',
        reply: { first: true },
      });
      const quiet = turnOf(0, []);
      const outcomes = await Promise.all([store, second].map((one) => one.commitTurn(id, quiet)));
      expect(outcomes.map(({ outcome }) => outcome).sort()).toEqual(['done', 'repeat']);
      expect((await load()).items.size).toBe(1);
      expect(await store.journalLatest(id, 10)).toHaveLength(1);
    });

    it('tells of a commit no later than it settles, and by then others can read it', async () => {
      const kitchen = (await store.loadKitchen(id))!;
      const change = made(putAway(doing(kitchen), { name: 'milk' }));
      const order: string[] = [];
      let read: Promise<number | undefined> | null = null;
      await store.commitTurn(id, turnOf(kitchen.version, [change]), (result) => {
        order.push(result.outcome);
        read = second.loadKitchen(id).then((now) => now?.version);
      });
      order.push('settled');
      expect(order).toEqual(['done', 'settled']);
      expect(await read).toBe(kitchen.version + 1);
    });

    it('refuses a change decided on an older kitchen, keeping nothing of it', async () => {
      const kitchen = await load();
      await commit((d) => putAway(d, { name: 'milk' }), kitchen);
      const late = turnOf(0, [made(putAway(doing(kitchen), { name: 'eggs' }))]);
      expect(await second.commitTurn(id, late)).toEqual({ outcome: 'stale', version: 1 });
      expect([...(await load()).items.values()].map(({ name: item }) => item)).toEqual(['milk']);
      expect((await store.beginTurn(id, 'default', late.turnId))?.earlierReply).toBeUndefined();
      // Only asking is a true answer all the same.
      expect(await second.commitTurn(id, turnOf(0, []))).toMatchObject({ outcome: 'done', version: 1 });
    });

    it('lets one of many at once go first, each time, and loses none', async () => {
      const tries = Array.from({ length: 12 }, async (_, n) => {
        const through = n % 2 === 0 ? store : second;
        for (;;) {
          const kitchen = await load(through);
          const change = made(putAway(doing(kitchen), { name: `jar ${n}` }));
          const result = await through.commitTurn(id, turnOf(kitchen.version, [change]));
          if (result.outcome === 'done') return;
        }
      });
      await Promise.all(tries);
      const kitchen = await load();
      expect(kitchen.items.size).toBe(12);
      expect(kitchen.version).toBe(12);
      const journal = await store.journalAfter(id, 0);
      expect(journal.map(({ version }) => version)).toEqual(Array.from({ length: 12 }, (_, n) => n + 1));
    });

    it('journals every change with its inverse, and replays to the same kitchen', async () => {
      await commit((d) => addMarker(d, { touch: { shape: 'round' } }));
      await commit((d) =>
        putAway(d, { name: 'sorghum', markerId: [...d.kitchen.markers.keys()][0] ?? null }),
      );
      await commit((d) => finish(d, [...d.kitchen.items.keys()][0] ?? ''));
      const [newest] = await store.journalLatest(id, 1);
      await commit((d) => undo(d, newest!));
      const journal = await store.journalAfter(id, 0);
      expect(journal.map(({ verb, undoes }) => [verb, undoes])).toEqual([
        ['added a marker', undefined],
        ['put away', undefined],
        ['finished', undefined],
        ['undid', 'e3'],
      ]);
      expect(await store.journalAfter(id, 2, 1)).toEqual([journal[2]]);
      expect(await store.journalLatest(id, 2)).toEqual([journal[3], journal[2]]);
      const replayed = journal.reduce(applyChange, emptyKitchen(householdOf(id)));
      expect(sameKitchen(await load())).toEqual(sameKitchen(replayed));
    });

    it(
      'holds any life of a kitchen, however its changes are gathered into turns',
      { timeout: 60_000 },
      async () => {
        await fc.assert(
          fc.asyncProperty(
            fc.array(deed, { minLength: 20, maxLength: 60 }),
            fc.integer({ min: 1, max: 6 }),
            async (deeds, together) => {
              const { start, kitchen, journal } = live(deeds);
              const here = `life${++serial}`;
              // The life was lived under another household's id; its records are the same here.
              const asHere = (op: Op): Op =>
                op.kind === 'household'
                  ? {
                      ...op,
                      id: here,
                      before: op.before && { ...op.before, id: here },
                      after: op.after && { ...op.after, id: here },
                    }
                  : op;
              await store.createHousehold({ ...start, household: { ...start.household, id: here } }, at);
              for (let from = 0; from < journal.length; from += together) {
                const changes = journal
                  .slice(from, from + together)
                  .map(({ verb, about, ops }) => ({ verb, about, ops: ops.map(asHere) }));
                const result = await store.commitTurn(here, turnOf(from, changes));
                expect(result.outcome).toBe('done');
              }
              const kept = await second.loadKitchen(here);
              const wanted = { ...kitchen, household: { ...kitchen.household, id: here } };
              expect(sameKitchen(kept)).toEqual(sameKitchen(wanted));
              await store.deleteHousehold(here);
            },
          ),
          { numRuns: 8 },
        );
      },
    );

    it('keeps a marker on one living item, even against a faulty change', async () => {
      await commit((d) => addMarker(d, { touch: { shape: 'round' } }));
      await commit((d) => addMarker(d, { touch: { texture: 'rough' } }));
      const [round, rough] = [...(await load()).markers.keys()] as [string, string];
      await commit((d) => putAway(d, { name: 'sorghum', markerId: round }));
      await commit((d) => putAway(d, { name: 'aioli', markerId: rough }));
      const kitchen = await load();
      const [one, two] = [...kitchen.items.values()].sort((a, b) => (a.name < b.name ? 1 : -1));
      const swap: Change = {
        verb: 'marked',
        about: [],
        ops: [
          { kind: 'item', id: one!.id, before: one!, after: { ...one!, markerId: rough } },
          { kind: 'item', id: two!.id, before: two!, after: { ...two!, markerId: round } },
        ],
      };
      expect(await store.commitTurn(id, turnOf(kitchen.version, [swap]))).toMatchObject({ outcome: 'done' });
      const after = await load();
      expect(after.items.get(one!.id)?.markerId).toBe(rough);
      const both: Change = {
        verb: 'marked',
        about: [],
        ops: [{ kind: 'item', id: one!.id, before: one!, after: { ...one!, markerId: round } }],
      };
      expect(await faultOf(store.commitTurn(id, turnOf(after.version, [both])))).toBe('broken-rule');
      expect(sameKitchen(await load())).toEqual(sameKitchen(after));
      await commit((d) => mark(d, one!.id, round, { takeIt: true }));
      expect((await load()).items.get(two!.id)?.markerId).toBeNull();
    });

    it('knows devices by token hash, and by household', async () => {
      const device = deviceOf(id, 'd1');
      await store.addDevice(device);
      expect(await second.deviceByTokenHash(device.tokenHash)).toEqual({ ...device, rights: 1 });
      expect(await store.deviceByTokenHash('unknown')).toBeNull();
      await store.changeDevices(id, {
        deeds: [
          { kind: 'change', id: 'd1', name: 'Phone' },
          { kind: 'send-away', id: 'd1' },
        ],
        by: null,
        at,
      });
      expect(await store.devices(id)).toEqual([{ ...device, name: 'Phone', revokedAt: at }]);
      expect(await second.rightsOf(id)).toBe(2);
      expect(await faultOf(store.addDevice(device))).toBe('taken');
      expect(await faultOf(store.addDevice(deviceOf('nobody', 'd9')))).toBe('no-such-household');
      await store.deviceHeard(id, 'd1', at);
      expect((await store.devices(id))[0]?.lastSeenAt).toBe(at);
      expect(await second.rightsOf(id)).toBe(2);
      expect(await second.rightsOf('nobody')).toBeNull();
    });

    it('never looks across households', async () => {
      const other = `${id}y`;
      await store.createHousehold(emptyKitchen(householdOf(other)), at);
      await commit((d) => putAway(d, { name: 'milk' }));
      await store.addDevice(deviceOf(id, 'd1'));
      expect((await store.loadKitchen(other))?.items.size).toBe(0);
      expect(await store.journalAfter(other, 0)).toEqual([]);
      expect(await store.devices(other)).toEqual([]);
      expect((await store.beginTurn(other, 'default', 't1'))?.conversation).toBeNull();
      await store.deleteHousehold(other);
      expect(await store.loadKitchen(other)).toBeNull();
      expect((await load()).items.size).toBe(1);
    });

    it('deletes all of a household', async () => {
      await commit((d) => putAway(d, { name: 'milk' }));
      const device = deviceOf(id, 'd1');
      await store.addDevice(device);
      await store.deleteHousehold(id);
      expect(await store.loadKitchen(id)).toBeNull();
      expect(await store.journalAfter(id, 0)).toEqual([]);
      expect(await store.deviceByTokenHash(device.tokenHash)).toBeNull();
      expect(await store.householdIds()).not.toContain(id);
      expect(await faultOf(store.commitTurn(id, turnOf(0, [])))).toBe('no-such-household');
      // The token is free again with its household.
      await store.createHousehold(emptyKitchen(householdOf(id)), at);
      await store.addDevice(device);
    });

    it('gives all of a household as one document, and takes it back elsewhere', async () => {
      await commit((d) => addMarker(d, { touch: { shape: 'round' } }));
      await commit((d) =>
        putAway(d, { name: 'sorghum', markerId: [...d.kitchen.markers.keys()][0] ?? null }),
      );
      await store.addDevice(deviceOf(id, 'd1'));
      const before = { kitchen: await load(), journal: await store.journalAfter(id, 0) };
      const document = JSON.parse(JSON.stringify(await store.archiveHousehold(id)));
      expect(await faultOf(store.restoreHousehold(document))).toBe('taken');
      await store.deleteHousehold(id);
      expect(await second.restoreHousehold(document)).toBe(id);
      expect(sameKitchen(await load())).toEqual(sameKitchen(before.kitchen));
      expect(await store.journalAfter(id, 0)).toEqual(before.journal);
      expect(await store.deviceByTokenHash(deviceOf(id, 'd1').tokenHash)).toMatchObject(deviceOf(id, 'd1'));
      await commit((d) => putAway(d, { name: 'eggs' }));
      expect((await load()).version).toBe(3);
      expect(await store.archiveHousehold('nobody')).toBeNull();
      expect(await faultOf(store.restoreHousehold({ format: 'something else' }))).toBe('unreadable');
    });

    it('forgets old talk and no kitchen', async () => {
      const kitchen = await load();
      const change = made(putAway(doing(kitchen), { name: 'milk' }));
      await store.commitTurn(id, turnOf(0, [change], { turnId: 'old', conversationId: 'old' }));
      await store.commitTurn(
        id,
        turnOf(1, [], { turnId: 'new', conversationId: 'new', at: '2026-06-01T00:00:00.000Z' }),
      );
      expect(await store.forgetTalk(id, '2026-05-20T00:00:00.000Z')).toEqual({
        replies: 1,
        conversations: 1,
      });
      expect(await store.beginTurn(id, 'old', 'old')).toMatchObject({
        conversation: null,
        earlierReply: undefined,
      });
      expect((await store.beginTurn(id, 'new', 'new'))?.earlierReply).toBeDefined();
      expect((await load()).items.size).toBe(1);
    });

    it('tells what conversations were spoken in lately, latest first, and nobody else’s', async () => {
      const talk = (name: string, time: string) =>
        store.commitTurn(
          id,
          turnOf(0, [], { turnId: name, conversationId: name, at: time, conversation: { name } }),
        );
      await talk('early', '2026-05-14T08:00:00.000Z');
      await talk('first', '2026-05-14T10:00:00.000Z');
      await talk('last', '2026-05-14T11:00:00.000Z');
      const since = '2026-05-14T09:00:00.000Z';
      expect(await store.recentConversations(id, since, 20)).toEqual([{ name: 'last' }, { name: 'first' }]);
      expect(await store.recentConversations(id, since, 1)).toEqual([{ name: 'last' }]);
      expect(await store.recentConversations('somebody-else', since, 20)).toEqual([]);
    });

    it.each(['', 'a b', "x'; drop table item; --", 'x'.repeat(129), 'ü'])(
      'takes no id like %j',
      async (bad) => {
        expect(await faultOf(store.loadKitchen(bad))).toBe('bad-id');
        expect(await faultOf(store.createHousehold(emptyKitchen(householdOf(bad)), at))).toBe('bad-id');
      },
    );

    describe('where devices take notices', () => {
      const addressOf = (deviceId: string, name: string) => ({
        deviceId,
        endpoint: `https://push.example/${name}`,
        p256dh: `key of ${name}`,
        auth: `secret of ${name}`,
      });

      it('keeps one address a device, with whose it is, and none of a device sent away', async () => {
        await store.addDevice({ ...deviceOf(id, 'd1'), personId: 'p1' });
        await store.addDevice({ ...deviceOf(id, 'd2'), personId: null });
        await store.keepNoticeAddress(id, addressOf('d1', 'old'));
        await second.keepNoticeAddress(id, addressOf('d1', 'new'));
        await store.keepNoticeAddress(id, addressOf('d2', 'other'));
        expect(await second.noticeAddresses(id)).toEqual([
          { ...addressOf('d1', 'new'), personId: 'p1' },
          { ...addressOf('d2', 'other'), personId: null },
        ]);
        await store.changeDevices(id, { deeds: [{ kind: 'send-away', id: 'd2' }], by: null, at });
        expect((await store.noticeAddresses(id)).map(({ deviceId }) => deviceId)).toEqual(['d1']);
      });

      it('drops an address only while it is still that one, and all with the household', async () => {
        await store.addDevice(deviceOf(id, 'd1'));
        await store.keepNoticeAddress(id, addressOf('d1', 'new'));
        await store.dropNoticeAddress(id, 'd1', addressOf('d1', 'old').endpoint);
        expect(await store.noticeAddresses(id)).toHaveLength(1);
        await store.dropNoticeAddress(id, 'd1', addressOf('d1', 'new').endpoint);
        expect(await store.noticeAddresses(id)).toEqual([]);
        await store.keepNoticeAddress(id, addressOf('d1', 'again'));
        await store.dropNoticeAddress(id, 'd1');
        expect(await store.noticeAddresses(id)).toEqual([]);
        await store.keepNoticeAddress(id, addressOf('d1', 'last'));
        await store.deleteHousehold(id);
        await store.createHousehold(emptyKitchen(householdOf(id)), at);
        await store.addDevice(deviceOf(id, 'd1'));
        expect(await store.noticeAddresses(id)).toEqual([]);
        expect(await faultOf(store.keepNoticeAddress('nobody', addressOf('d1', 'x')))).not.toBeNull();
      });
    });

    describe('devices that wait to be let in', () => {
      const later = '2026-05-14T18:10:00.000Z';
      const pairingOf = (codeHash: string) => ({
        codeHash,
        name: 'pantry speaker',
        tokenHash: `${codeHash}-token`,
        expiresAt: later,
      });
      const when = { now: at, atMost: 100 };

      it('are taken once, by whichever server', async () => {
        const pairing = pairingOf(`${id}-once`);
        expect(await store.addPairing(pairing, when)).toBe('waiting');
        expect(await second.addPairing(pairing, when)).toBe('code-in-use');
        const taken = await Promise.all(
          [store, second, store].map((one) => one.takePairing(pairing.codeHash, at)),
        );
        expect(taken.filter((one) => one !== null)).toEqual([pairing]);
        expect(await store.takePairing(pairing.codeHash, at)).toBeNull();
      });

      it('are forgotten when their time is over, and are only so many', async () => {
        const old = pairingOf(`${id}-old`);
        await store.addPairing(old, when);
        expect(await store.takePairing(old.codeHash, later)).toBeNull();
        await store.addPairing(old, when);
        expect(await store.addPairing(pairingOf(`${id}-more`), { now: at, atMost: 1 })).toBe('full');
        const after = { ...pairingOf(`${id}-after`), expiresAt: '2026-05-14T18:20:00.000Z' };
        expect(await store.addPairing(after, { now: later, atMost: 1 })).toBe('waiting');
        expect(await store.takePairing(after.codeHash, later)).toEqual(after);
      });

      it('may be looked at without being let in, until they were', async () => {
        const pairing = pairingOf(`${id}-looked`);
        await store.addPairing(pairing, when);
        expect(await second.waitingPairing(pairing.codeHash, at)).toEqual(pairing);
        expect(await second.waitingPairing(pairing.codeHash, later)).toBeNull();
        await store.addDevice({ ...deviceOf(id, 'looked'), tokenHash: pairing.tokenHash });
        expect(await second.waitingPairing(pairing.codeHash, at)).toBeNull();
      });

      it('are only so many from one address', async () => {
        const from = (address: string) => ({ ...when, from: { address, atMost: 2 } });
        const ask = (code: string, address: string) =>
          store.addPairing(pairingOf(`${id}-share-${code}`), from(`${id}-${address}`));
        expect([await ask('a', 'one'), await ask('b', 'one'), await ask('c', 'one')]).toEqual([
          'waiting',
          'waiting',
          'share-full',
        ]);
        expect(await ask('d', 'two')).toBe('waiting');
      });

      it('and wrong codes are counted until they are forgotten, whatever was right in between', async () => {
        const count = (one: Store, now: string) => one.countGuess(id, { now, forgottenAt: later });
        const counts = await Promise.all([store, second, store].map((one) => count(one, at)));
        expect([...counts].sort()).toEqual([1, 2, 3]);
        await second.uncountGuess(id);
        expect(await count(store, at)).toBe(3);
        expect(await count(store, later)).toBe(1);
      });
    });

    describe('who may speak', () => {
      const deviceNamed = (name: string, scope: Device['scope']) => ({ ...deviceOf(id, name), scope });
      const change = (one: Store, by: string | null, ...deeds: DeviceDeed[]) =>
        one.changeDevices(id, { deeds, by, at });
      const away = (device: string) => ({ kind: 'send-away', id: device }) as const;
      const found = async (device: string) => (await store.devices(id)).find((one) => one.id === device);

      beforeEach(async () => {
        for (const [name, scope] of [
          ['one', 'own'],
          ['two', 'own'],
          ['guest', 'speak'],
        ] as const)
          await store.addDevice(deviceNamed(name, scope));
      });

      it('is gone for good once sent away, whatever is changed of it at the same moment', async () => {
        for (let round = 0; round < 10; round += 1) {
          const name = `round${round}`;
          await store.addDevice(deviceNamed(name, 'speak'));
          await Promise.all([
            change(store, 'one', { kind: 'change', id: name, name: 'renamed' }),
            change(second, 'two', away(name)),
            change(store, 'one', { kind: 'change', id: name, scope: 'help' }),
          ]);
          expect((await found(name))?.revokedAt).toBe(at);
        }
        expect(await change(store, 'one', { kind: 'change', id: 'round0', name: 'back' })).toMatchObject({
          why: 'sent-away',
        });
        // Asked again, it is as it was.
        const later = { deeds: [away('round0')], by: null, at: '2026-06-01T00:00:00.000Z' };
        expect(await second.changeDevices(id, later)).toMatchObject({ devices: [{ revokedAt: at }] });
      });

      it('keeps an owner, when two send each other away at once', async () => {
        const both = await Promise.all([
          change(store, 'one', away('two')),
          change(second, 'two', away('one')),
        ]);
        expect(both.map(({ outcome }) => outcome).sort()).toEqual(['done', 'refused']);
        const owners = (await store.devices(id)).filter((one) => one.scope === 'own' && !one.revokedAt);
        expect(owners).toHaveLength(1);
        // By hand on the machine it can be done: a new one is let in there.
        expect(await change(store, null, away(owners[0]!.id))).toMatchObject({ outcome: 'done' });
      });

      it('is asked of who may say so, as they are by then', async () => {
        expect(await change(store, 'guest', away('one'))).toMatchObject({ why: 'not-an-owner' });
        expect(await change(store, 'guest', { kind: 'change', id: 'guest', scope: 'own' })).toMatchObject({
          why: 'not-an-owner',
        });
        await change(store, 'one', { kind: 'change', id: 'two', scope: 'speak' });
        expect(await change(second, 'two', away('one'))).toMatchObject({ why: 'not-an-owner' });
        expect(await change(store, 'one', { kind: 'change', id: 'one', scope: 'speak' })).toMatchObject({
          why: 'last-owner',
        });
        expect(await change(store, 'one', away('nobody'))).toMatchObject({ why: 'no-such-device' });
      });

      it('is in a journal: what, who, and from where', async () => {
        const rights = (await store.rightsOf(id))!;
        await store.changeDevices(id, { deeds: [away('guest')], by: 'one', at, whence: '192.0.2.1' });
        expect(await second.rightsOf(id)).toBe(rights + 1);
        const [last] = await second.deviceJournal(id, 1);
        expect(last).toMatchObject({ deed: 'send-away', deviceId: 'guest', by: 'one', whence: '192.0.2.1' });
        expect(await store.deviceJournal(id, 100)).toHaveLength(4);
      });

      it('makes a turn that was decided under older rights be decided again', async () => {
        const rights = (await store.rightsOf(id))!;
        expect(await store.commitTurn(id, turnOf(0, [], { rights }))).toMatchObject({ outcome: 'done' });
        await change(second, 'one', { kind: 'change', id: 'guest', name: 'porch' });
        expect(await store.commitTurn(id, turnOf(0, [], { rights }))).toMatchObject({ outcome: 'stale' });
      });

      it('is rung to other processes', async () => {
        const rung: string[] = [];
        const stop = await store.subscribe(id, (what) => void rung.push(what));
        const hears = async (what: string): Promise<void> => {
          while (!rung.includes(what)) await new Promise((resolve) => setTimeout(resolve, 20));
        };
        await change(second, 'one', away('guest'));
        await hears('devices');
        stop();
      });
    });

    describe('what a turn does about devices', () => {
      const owner = () => deviceOf(id, 'owner');
      const guest = () => ({ ...deviceOf(id, 'guest'), scope: 'speak' as const });
      const letIn = (device: Device) => ({
        deviceId: 'owner',
        devices: [{ kind: 'let-in', device } as const],
      });
      const names = async () => (await store.devices(id)).map(({ name, revokedAt }) => [name, revokedAt]);

      it('is done with it, once, and seen by every server', async () => {
        await store.addDevice(owner());
        const turn = turnOf(0, [], letIn(guest()));
        expect(await store.commitTurn(id, turn)).toMatchObject({ outcome: 'done', devices: [guest()] });
        expect(await second.commitTurn(id, turn)).toMatchObject({ outcome: 'repeat' });
        expect(await second.deviceByTokenHash(guest().tokenHash)).toMatchObject(guest());
        const rename = {
          deviceId: 'owner',
          devices: [{ kind: 'change', id: 'guest', name: 'porch' } as const],
        };
        expect(await second.commitTurn(id, turnOf(0, [], rename))).toMatchObject({
          devices: [{ id: 'guest', name: 'porch' }],
        });
        const sendAway = { deviceId: 'owner', devices: [{ kind: 'send-away', id: 'guest' } as const] };
        expect(await store.commitTurn(id, turnOf(0, [], sendAway))).toMatchObject({ outcome: 'done' });
        expect(await names()).toContainEqual(['porch', at]);
      });

      it('leaves everything as it is where it can no longer be done', async () => {
        await store.addDevice(owner());
        await store.addDevice(guest());
        const before = await names();
        for (const devices of [
          [{ kind: 'send-away', id: 'owner' }],
          [{ kind: 'send-away', id: 'nobody' }],
          [{ kind: 'change', id: 'nobody', name: 'x' }],
          [{ kind: 'let-in', device: { ...guest(), id: 'twice' } }],
        ] as const)
          expect(await store.commitTurn(id, turnOf(0, [], { deviceId: 'owner', devices }))).toMatchObject({
            outcome: 'stale',
          });
        expect(await names()).toEqual(before);
      });

      it.skipIf(!oneDatabase)('lets a waiting device into one household, whoever is first', async () => {
        await store.addDevice(owner());
        const other = `${id}-too`;
        await store.createHousehold(emptyKitchen(householdOf(other)), at);
        const secret = `${id}-secret`;
        const results = await Promise.all([
          store.commitTurn(
            id,
            turnOf(0, [], { ...letIn({ ...guest(), tokenHash: secret }), deviceId: null }),
          ),
          second.commitTurn(
            other,
            turnOf(0, [], {
              ...letIn({ ...guest(), householdId: other, tokenHash: secret }),
              deviceId: null,
            }),
          ),
        ]);
        expect(results.map(({ outcome }) => outcome).sort()).toEqual(['done', 'stale']);
      });
    });

    it('finds what came due by its time, and what is to be planned by its mark', async () => {
      const due = (name: string, time: string) =>
        commit(() => {
          const reminder = {
            id: `${id}.${name}`,
            kind: 'timer',
            label: name,
            due: time,
            setAt: at,
            setBy: null,
            itemId: null,
            deliveredAt: null,
          } as const;
          return {
            verb: 'set',
            about: [],
            ops: [{ kind: 'reminder', id: reminder.id, before: null, after: reminder }],
          };
        });
      const mine = async (after: string, until: string) =>
        (await second.householdsDue(after, until)).includes(id);
      const toPlan = async () => (await second.toPlan(100_000)).includes(id);
      await store.planTellings(id, [], { carriers: 'a', version: 0 });
      expect(await toPlan()).toBe(false);
      await due('rice', '2026-05-14T18:30:00.000Z');
      expect(await toPlan()).toBe(true);
      expect(await mine('2026-05-14T18:29:59.000Z', '2026-05-14T18:30:00.000Z')).toBe(true);
      expect(await mine('2026-05-14T18:30:00.000Z', '2026-05-14T19:00:00.000Z')).toBe(false);
      expect(await mine('2026-05-14T18:00:00.000Z', '2026-05-14T18:29:59.999Z')).toBe(false);
      // Planned for a kitchen that changed meanwhile, it is planned again.
      await store.planTellings(id, [], { carriers: 'a', version: 0 });
      expect(await toPlan()).toBe(true);
      await store.planTellings(id, [], { carriers: 'a', version: 1 });
      expect(await toPlan()).toBe(false);
      const others = { carriers: 'a b', after: '' };
      expect(await second.toPlan(100_000, others)).toContain(id);
      expect(await second.toPlan(100_000, { ...others, after: id })).not.toContain(id);
      expect(await second.toPlan(100_000, { carriers: 'a', after: '' })).not.toContain(id);
    });

    describe('what is said unasked', () => {
      const planned = (tid: string, due: string) => ({ id: tid, kind: 'timer', due }) as const;
      const claim = (one: TellingStore, owner: string, now: string, until: string) =>
        one
          .claimDue({ now, owner, until, limit: 100 })
          .then((all) => all.filter((row) => row.householdId === id));
      const [t0, t1, t2, t3] = ['18:00', '18:01', '18:02', '18:03'].map(
        (time) => `2026-05-14T${time}:00.000Z`,
      ) as [string, string, string, string];

      it('is leased to one, made once, and settled', async () => {
        await store.planTellings(id, [planned('a', t0), planned('b', t3)]);
        const [mine, theirs] = await Promise.all([claim(store, 'one', t1, t2), claim(second, 'two', t1, t2)]);
        const all = [...mine, ...theirs];
        expect(all.map(({ id: tid, body, attempts }) => [tid, body, attempts])).toEqual([['a', null, 1]]);
        const owner = mine.length > 0 ? 'one' : 'two';
        expect(await store.makeTelling(id, 'a', 'someone else', { say: 1 }, t1)).toBe(false);
        expect(await store.makeTelling(id, 'a', owner, { say: 1 }, t1)).toBe(true);
        expect(await store.makeTelling(id, 'a', owner, { say: 2 }, t1)).toBe(false);
        expect(await store.settleTelling(id, 'a', owner, t1)).toBe(true);
        expect(await claim(store, 'one', t2, t3)).toEqual([]);
        // Planning the same id again does nothing; one that is no longer wanted goes.
        await store.planTellings(id, [planned('a', t0)]);
        expect(await claim(store, 'one', t3, t3)).toEqual([]);
      });

      it('is forgotten ten days after it was settled', async () => {
        const settle = async (tid: string, when: string): Promise<void> => {
          const until = new Date(Date.parse(when) + 60_000).toISOString();
          await store.planTellings(id, [planned(tid, when)]);
          expect(await claim(store, 'one', when, until)).toMatchObject([{ id: tid }]);
          await store.makeTelling(id, tid, 'one', {}, when);
          expect(await store.settleTelling(id, tid, 'one', when)).toBe(true);
        };
        await settle('a', t0);
        await settle('b', '2026-05-24T17:59:00.000Z');
        await store.planTellings(id, [planned('a', t0)]);
        expect(await claim(store, 'one', '2026-05-24T18:00:00.000Z', '2026-05-24T18:01:00.000Z')).toEqual([]);
        await settle('c', '2026-05-24T18:01:00.000Z');
        await store.planTellings(id, [planned('a', t0)]);
        expect(
          await claim(store, 'one', '2026-05-24T18:02:00.000Z', '2026-05-24T18:03:00.000Z'),
        ).toMatchObject([{ id: 'a' }]);
      });

      it('is free again when the lease ran out or was given up', async () => {
        await store.planTellings(id, [planned('a', t0)]);
        expect(await claim(store, 'dead', t0, t1)).toHaveLength(1);
        expect(await claim(second, 'two', t0, t1)).toEqual([]);
        const [again] = await claim(second, 'two', t1, t2);
        expect(again).toMatchObject({ id: 'a', attempts: 2, due: t0 });
        expect(await store.makeTelling(id, 'a', 'dead', {}, t1)).toBe(false);
        expect(await second.releaseTelling(id, 'a', 'two', t3)).toBe(true);
        expect(await claim(store, 'one', t2, t3)).toEqual([]);
        expect(await claim(store, 'one', t3, t3)).toMatchObject([{ due: t0, attempts: 3 }]);
      });

      it('moves with its plan while it is only planned', async () => {
        await store.planTellings(id, [planned('a', t0)]);
        await store.planTellings(id, [planned('a', t3)]);
        expect(await claim(store, 'one', t2, t3)).toEqual([]);
        await store.planTellings(id, []);
        expect(await claim(store, 'one', t3, t3)).toEqual([]);
      });
    });
  });
