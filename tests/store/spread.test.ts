/**
 * Three servers over three databases that hold households by hash: each household is whole in one, a database that is
 * away leaves the others' households alone, and a household moves while it is talked to. Nothing is lost or doubled.
 * SPREAD_TURNS makes it longer.
 */
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StoreError } from '../../src/store/index.js';
import { createHouseholds, createTongues, TurnProblem, type Households } from '../../src/turn/index.js';
import { kitchenOf, THURSDAY } from '../support/service.js';
import { openSpread, type Spread } from './spread.js';
import { storeContract } from './contract.js';
import { startPostgres, type TestPostgres } from './postgres-server.js';

const TURNS = Number(process.env['SPREAD_TURNS'] ?? 25);
const FOODS = ['oats', 'salt', 'rice', 'flour', 'honey', 'butter', 'yeast', 'cumin', 'thyme', 'pepper'];
const IDS = ['ash', 'birch', 'cedar', 'elm', 'fir', 'hazel', 'larch', 'maple', 'oak'];
const DATABASES = [0, 1, 2].map((n) => `tellshelf_spread_${process.pid}_${n}`);

const server = await startPostgres('spread');
const at = (url: string, database: string): string =>
  Object.assign(new URL(url), { pathname: `/${database}` }).href;

describe.skipIf(server === null)('households over three databases', () => {
  const { url, close } = server as TestPostgres;
  const urls = DATABASES.map((database) => at(url, database));
  let admin: pg.Client;
  let stores: Spread[] = [];
  let servers: Households[] = [];

  beforeAll(async () => {
    admin = new pg.Client({ connectionString: url });
    await admin.connect();
    for (const database of DATABASES) await admin.query(`create database ${database}`);
    // All servers know where a household is at the same moment: they share what tells it.
    const store = openSpread(urls, 6);
    await store.migrate();
    stores = [store];
    const tongues = createTongues(() => undefined);
    servers = [0, 1, 2].map(() => createHouseholds({ store, tongues, now: () => THURSDAY }));
    for (const id of IDS) await store.createHousehold(kitchenOf(id), THURSDAY);
  }, 120_000);
  afterAll(async () => {
    for (const store of stores) await store.close();
    for (const database of DATABASES) await admin.query(`drop database if exists ${database} with (force)`);
    await admin.end();
    await close();
  });

  storeContract(
    'spread',
    async () => {
      const [store, second] = [openSpread(urls, 3), openSpread(urls, 3)];
      await store.migrate();
      return {
        store,
        second,
        close: async () => {
          await store.close();
          await second.close();
        },
      };
    },
    { oneDatabase: false },
  );

  const speaker = (householdId: string) => ({ householdId, deviceId: 'd', personId: null, owner: true });
  /** Says it at one server after another until it is answered, under one id. */
  const insist = async (householdId: string, id: string, text: string): Promise<void> => {
    for (let tries = 0; tries < 400; tries += 1) {
      try {
        const turn = { id, conversation: 'c', hypotheses: [{ text }] };
        const reply = await servers[tries % 3]!.takeTurn(speaker(householdId), turn);
        expect(reply.fault).toBeUndefined();
        return;
      } catch (error) {
        if (!(error instanceof StoreError || error instanceof TurnProblem)) throw error;
        await new Promise((resolve) => setTimeout(resolve, 25));
      }
    }
    throw new Error(`${id} was never answered`);
  };
  const take = async (database: string): Promise<void> => {
    await admin.query(`alter database ${database} allow_connections false`);
    await admin.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [
      database,
    ]);
  };
  const bringBack = async (database: string): Promise<void> => {
    await admin.query(`alter database ${database} allow_connections true`);
  };

  it('lie in all three', () => {
    expect(new Set(IDS.map((id) => stores[0]!.placeOf(id)))).toEqual(new Set([0, 1, 2]));
  });

  it('whose database is away are refused, and others are answered', async () => {
    const [store] = stores;
    const gone = IDS.filter((id) => store!.placeOf(id) === 0);
    const there = IDS.filter((id) => store!.placeOf(id) !== 0);
    await take(DATABASES[0]!);
    const ask = (id: string) =>
      servers[0]!.takeTurn(speaker(id), {
        id: 'away',
        conversation: 'c',
        hypotheses: [{ text: 'where is the milk' }],
      });
    for (const id of there) expect((await ask(id)).speech.text).toMatch(/fridge door/);
    for (const id of gone) await expect(ask(id)).rejects.toThrow();
    await bringBack(DATABASES[0]!);
    for (const id of gone) await insist(id, 'back', 'where is the milk');
  }, 60_000);

  it(
    'lose and double nothing while databases go and households move',
    async () => {
      const [store] = stores;
      const before = new Map<string, number>();
      for (const id of IDS) before.set(id, (await store!.loadKitchen(id))!.version);
      const talk = async (id: string): Promise<void> => {
        for (let n = 0; n < TURNS; n += 1) {
          const food = FOODS[n % FOODS.length]!;
          const add = Math.floor(n / FOODS.length) % 2 === 0;
          await insist(id, `t${n}`, add ? `put ${food} on the list` : `take ${food} off the list`);
          // What was answered and is asked again, as after a lost answer, is done once.
          if (n % 5 === 0)
            await insist(id, `t${n}`, add ? `put ${food} on the list` : `take ${food} off the list`);
        }
      };
      let talking = true;
      const trouble = async (): Promise<number> => {
        let done = 0;
        while (talking) {
          await take(DATABASES[done % 3]!);
          await new Promise((resolve) => setTimeout(resolve, 150));
          await bringBack(DATABASES[done % 3]!);
          for (const id of [IDS[done % IDS.length]!, IDS[(done + 4) % IDS.length]!]) {
            const to = (store!.placeOf(id) + 1) % 3;
            await store!.move(id, to).catch(() => undefined);
          }
          done += 1;
        }
        return done;
      };
      const troubled = trouble();
      await Promise.all(IDS.map(talk));
      talking = false;
      expect(await troubled).toBeGreaterThan(0);

      for (const id of IDS) {
        const entries = await store!.journalAfter(id, before.get(id)!);
        const turns = entries.map(({ turnId }) => turnId);
        expect(turns, id).toEqual(Array.from({ length: TURNS }, (_, n) => `d:t${n}`));
        const kitchen = (await store!.loadKitchen(id))!;
        expect(kitchen.version).toBe(before.get(id)! + TURNS);
        // In one database, and in no other.
        const found = await Promise.all(
          urls.map(async (connectionString) => {
            const client = new pg.Client({ connectionString });
            await client.connect();
            const { rows } = await client.query('select 1 from household where household_id = $1', [id]);
            await client.end();
            return rows.length;
          }),
        );
        expect(found.reduce((sum, one) => sum + one)).toBe(1);
        expect(found[store!.placeOf(id)]).toBe(1);
      }
    },
    120_000 + TURNS * 2_000,
  );
});
