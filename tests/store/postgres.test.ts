import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import pg from 'pg';
import { emptyKitchen, isRefused, putAway } from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { openPostgresStore, type Store, type TellingStore } from '../../src/store/index.js';
import { storeContract } from './contract.js';
import { startPostgres, type TestPostgres } from './postgres-server.js';
import { ACROSS, BESIDE, recordStatements, whyNotOne } from './statements.js';

const at = '2026-05-14T18:00:00.000Z';
const server = await startPostgres('store');
const recording = recordStatements();
/** Names of the store's functions that the contract called. */
const called = new Set<string>();
const noting = <T extends object>(store: T): T =>
  new Proxy(store, {
    get: (of, name) => {
      called.add(String(name));
      return Reflect.get(of, name) as unknown;
    },
  });
if (server === null) console.warn('NO POSTGRESQL on this machine: its tests are skipped');

const householdOf = (id: string) =>
  ({
    id,
    name: id,
    timeZone: 'UTC',
    locale: 'en-GB',
    region: 'uk',
    measures: 'metric',
    microwaveWatts: null,
    summaryAt: null,
    quietHours: null,
    dotMeanings: {},
  }) as const;

it('has PostgreSQL to test with, wherever changes are checked before they are taken', () => {
  expect(server !== null || !process.env['CI']).toBe(true);
});

describe.skipIf(server === null)('PostgreSQL', () => {
  const { url, close: stop } = server as TestPostgres;
  afterAll(() => stop());

  storeContract('as a superuser, stepping down', async () => {
    const store = noting(openPostgresStore(url));
    const second = noting(openPostgresStore(url));
    await Promise.all([store.migrate(), second.migrate()]);
    return {
      store,
      second,
      close: async () => {
        await store.close();
        await second.close();
      },
    };
  });

  // What the contract above made the store send: households can be spread over nodes by their id.
  describe('every statement', () => {
    it('was made: with these, each function of the store was called', async () => {
      const store = noting(openPostgresStore(url));
      const folder = mkdtempSync(join(tmpdir(), 'tellshelf-backup-'));
      await store.probe();
      await store.backup(folder);
      await store.close();
      rmSync(folder, { recursive: true, force: true });
      expect(Object.keys(store).filter((name) => !called.has(name))).toEqual([]);
    });

    it('names one household, or is on the list', () => {
      const wrong = new Map(recording.sent.map((sent) => [sent.text, whyNotOne(sent)]));
      expect([...wrong].filter(([, why]) => why !== null)).toEqual([]);
      expect(wrong.size).toBeGreaterThan(40);
    });

    it('finds every table of a household among those that are spread', async () => {
      const client = new pg.Client({ connectionString: url });
      await client.connect();
      const { rows } = await client.query<{ table_name: string }>(
        "select table_name from information_schema.columns where table_schema = 'public' and column_name = 'household_id'",
      );
      await client.end();
      const spread = readFileSync(projectFile('deploy', 'citus.sql'), 'utf8');
      const named = [...spread.matchAll(/create_distributed_table\('(\w+)'/g)].map(([, table]) => table);
      expect(rows.map(({ table_name }) => table_name).sort()).toEqual(named.sort());
    });

    it('on the list is still made', () => {
      const unused = [...ACROSS, ...BESIDE].filter(
        ({ what }) => !recording.sent.some(({ text }) => what.test(text)),
      );
      expect(unused).toEqual([]);
    });

    it.each([
      ['select * from "item" where "id" = $1', ['i'], 'names no household'],
      ['update "item" set "body" = $1 where "household_id" = $2', ['x', 'b'], 'names no household'],
      [
        'insert into "item" ("household_id", "id") values ($1, $2), ($3, $4)',
        ['a', 'x', 'b', 'y'],
        'inserts rows of another household',
      ],
      [
        'select 1 from "turn" inner join "item" on "item"."id" = "turn"."id" where "turn"."household_id" = $1',
        ['a'],
        'joins item by something else than the household',
      ],
    ])('that does not is found out: %s', (text, values, why) => {
      expect(whyNotOne({ text, values, household: 'a' })).toBe(why);
    });
  });

  describe('walls', () => {
    let store: Store & TellingStore;
    let admin: pg.Client;
    beforeAll(async () => {
      admin = new pg.Client({ connectionString: url });
      await admin.connect();
      store = openPostgresStore(url);
      await store.migrate();
      for (const id of ['wall-a', 'wall-b']) {
        await store.createHousehold(emptyKitchen(householdOf(id)), at);
        const change = putAway(
          {
            kitchen: emptyKitchen(householdOf(id)),
            clock: { now: at, timeZone: 'UTC' },
            speaker: { personId: null },
            newId: () => `item-${id}`,
          },
          { name: `secret of ${id}` },
        );
        if (isRefused(change)) throw new Error('refused');
        await store.commitTurn(id, {
          turnId: 't1',
          conversationId: 'default',
          deviceId: null,
          personId: null,
          at,
          decidedOn: 0,
          changes: [change],
          conversation: { of: id },
          reply: { of: id },
        });
      }
    });
    afterAll(async () => {
      await store.close();
      await admin.end();
    });

    const as = async (household: string | null, statement: string): Promise<pg.QueryResult> => {
      await admin.query('begin');
      try {
        await admin.query('set local role tellshelf_rows');
        if (household) await admin.query(`set local tellshelf.household = '${household}'`);
        return await admin.query(statement);
      } finally {
        await admin.query('rollback');
      }
    };

    it('stand on every table that holds a household’s rows', async () => {
      const { rows } = await admin.query(
        `select c.relname from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attname = 'household_id'
         where c.relkind = 'r' and not (c.relrowsecurity and c.relforcerowsecurity)`,
      );
      expect(rows).toEqual([]);
      const { rows: tables } = await admin.query(
        `select relname from pg_class where relkind = 'r' and relrowsecurity order by 1`,
      );
      expect(tables.length).toBe(20);
    });

    it.each(['item', 'journal', 'turn', 'conversation', 'household'])(
      'hide other households’ rows of %s from a query that forgot to ask for one',
      async (table) => {
        expect((await as('wall-a', `select distinct household_id from ${table}`)).rows).toEqual([
          { household_id: 'wall-a' },
        ]);
        expect((await as(null, `select * from ${table}`)).rows).toEqual([]);
        expect((await as('wall-a', `delete from ${table} where household_id = 'wall-b'`)).rowCount).toBe(0);
      },
    );

    it('let nothing be written into another household', async () => {
      await expect(
        as('wall-a', `insert into person (household_id, id, name, body) values ('wall-b', 'p', 'x', '{}')`),
      ).rejects.toThrow(/row-level security/);
      await expect(as('wall-a', `update item set household_id = 'wall-b'`)).rejects.toThrow(
        /row-level security/,
      );
    });

    it('bind a role that merely owns the tables, without stepping down', async () => {
      await admin.query(`drop role if exists tellshelf_owner_test`);
      await admin.query(`create role tellshelf_owner_test login`);
      await admin.query(`drop database if exists tellshelf_owned with (force)`);
      await admin.query(`create database tellshelf_owned owner tellshelf_owner_test`);
      const own = new URL(url);
      own.username = 'tellshelf_owner_test';
      own.pathname = '/tellshelf_owned';
      const owned = openPostgresStore(own.href);
      try {
        await owned.migrate();
        for (const id of ['a', 'b']) await owned.createHousehold(emptyKitchen(householdOf(id)), at);
        expect((await owned.loadKitchen('a'))?.household.id).toBe('a');
        expect(await owned.householdIds()).toEqual(['a', 'b']);
        const direct = new pg.Client({ connectionString: own.href });
        await direct.connect();
        expect((await direct.query('select * from household')).rows).toEqual([]);
        await direct.end();
      } finally {
        await owned.close();
        await admin.query(`drop database tellshelf_owned with (force)`);
        await admin.query(`drop role tellshelf_owner_test`);
      }
    });
  });

  it('rings on other servers when a kitchen changed, and only for its household', async () => {
    const [here, there] = [openPostgresStore(url), openPostgresStore(url)];
    await here.createHousehold(emptyKitchen(householdOf('bell-a')), at);
    await here.createHousehold(emptyKitchen(householdOf('bell-b')), at);
    const heard: string[] = [];
    const rung = new Promise<void>((resolve) => {
      void there
        .subscribe?.('bell-a', (what) => {
          heard.push(what);
          if (heard.length === 2) resolve();
        })
        .then(async () => {
          await there.subscribe?.('bell-b', (what) => heard.push(`b ${what}`));
          const doing = {
            kitchen: emptyKitchen(householdOf('bell-a')),
            clock: { now: at, timeZone: 'UTC' },
            speaker: { personId: null },
            newId: () => 'i1',
          };
          const change = putAway(doing, { name: 'milk' });
          if (isRefused(change)) throw new Error('refused');
          await here.commitTurn('bell-a', {
            turnId: 't1',
            conversationId: 'default',
            deviceId: null,
            personId: null,
            at,
            decidedOn: 0,
            changes: [change],
            conversation: null,
            reply: null,
          });
          await here.planTellings('bell-a', [{ id: 'x', kind: 'timer', due: at }]);
          await here.claimDue({ now: at, owner: 'me', until: '2026-05-14T19:00:00.000Z', limit: 10 });
          await here.makeTelling('bell-a', 'x', 'me', { say: 'done' }, at);
        });
    });
    await rung;
    // The one is rung after its transaction, the other inside: either may be heard first.
    expect(heard.sort()).toEqual(['kitchen', 'telling']);
    await here.close();
    await there.close();
  });

  it('says that it cannot be reached, rather than what the driver says', async () => {
    const gone = openPostgresStore('postgres://nobody@127.0.0.1:1/none');
    await expect(gone.loadKitchen('a')).rejects.toMatchObject({ name: 'StoreError', fault: 'unavailable' });
    await gone.close();
  });
});
