/** Sent once, whatever happens: many schedulers on one real store, dying processes, carriers that fail. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Kitchen } from '../../src/kitchen/model.js';
import { createScheduler, type Carrier, type Scheduler } from '../../src/schedule/index.js';
import { retryDelay } from '../../src/schedule/scheduler.js';
import { CarrierError } from '../../src/schedule/telling.js';
import { openSqliteStore, type Store, type TellingStore } from '../../src/store/index.js';
import { item, kitchenWith, reminder } from './kitchens.js';
import { carrier, householdsOver } from './port.js';

const NOON = '2026-05-14T17:00:00.000Z';
const plus = (at: string, seconds: number): string => new Date(Date.parse(at) + seconds * 1000).toISOString();

let folder: string;
let stores: (Store & TellingStore)[];
let now: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'schedule-'));
  stores = [];
  now = NOON;
});
afterEach(async () => {
  for (const store of stores) await store.close();
  rmSync(folder, { recursive: true });
});

/** One more connection to the same file, as another process has it. */
const open = async (): Promise<Store & TellingStore> => {
  const store = openSqliteStore(join(folder, 'kitchen.db'));
  await store.migrate();
  stores.push(store);
  return store;
};

const problems: unknown[] = [];
const scheduler = (store: Store & TellingStore, owner: string, ...carriers: Carrier[]): Scheduler =>
  createScheduler({
    store,
    households: householdsOver(store, () => now),
    carriers,
    owner,
    now: () => now,
    onProblem: (error) => problems.push(error),
  });

const household = async (store: Store, kitchen: Kitchen): Promise<void> => {
  await store.createHousehold(kitchen, '2026-05-14T12:00:00.000Z');
};
const timers = (n: number): Kitchen =>
  kitchenWith({
    reminders: Array.from({ length: n }, (_, i) =>
      reminder(`t${i}`, plus(NOON, i), { label: `number ${i}` }),
    ),
    household: { summaryAt: null },
  });

describe('a scheduler', () => {
  it('sends nothing before its time, then each once, in the words of the moment', async () => {
    const store = await open();
    await household(store, timers(3));
    const out = carrier('out');
    const one = scheduler(store, 'p1', out);
    now = plus(NOON, -1);
    await one.planAll();
    expect(await one.tick()).toBe(0);
    now = plus(NOON, 1);
    expect(await one.tick()).toBe(2);
    expect(await one.tick()).toBe(0);
    expect(out.carried.map((delivery) => delivery.speech.text)).toEqual([
      'The number 0 timer is done.',
      'The number 1 timer is done.',
    ]);
    expect(out.carried[0]).toMatchObject({ household: 'h1', kind: 'timer', due: NOON, sentAt: now });
    const kitchen = await store.loadKitchen('h1');
    // Handed over, which is not heard.
    for (const id of ['t0', 't1', 't2']) expect(kitchen?.reminders.get(id)?.deliveredAt).toBeNull();
  });

  it('sends each once by each carrier, however many run and however often they look', async () => {
    const first = await open();
    await household(first, timers(40));
    const ways = [carrier('a'), carrier('b')];
    const running = [scheduler(first, 'p0', ...ways)];
    for (let i = 1; i < 5; i++) running.push(scheduler(await open(), `p${i}`, ...ways));
    now = plus(NOON, 60);
    await Promise.all(running.map((one) => one.planAll()));
    for (let round = 0; round < 3; round++) await Promise.all(running.map((one) => one.tick()));
    for (const way of ways) {
      expect(way.carried).toHaveLength(40);
      expect(new Set(way.carried.map((delivery) => delivery.id)).size).toBe(40);
    }
  });

  it('takes over what a process that died had leased, when the lease has run out', async () => {
    const store = await open();
    await household(store, timers(1));
    const out = carrier('out');
    const alive = scheduler(store, 'alive', out);
    await alive.planAll();
    const taken = await store.claimDue({ now: NOON, owner: 'dead', until: plus(NOON, 30), limit: 10 });
    expect(taken).toHaveLength(1);
    now = plus(NOON, 29);
    expect(await alive.tick()).toBe(0);
    now = plus(NOON, 31);
    expect(await alive.tick()).toBe(1);
    expect(out.carried).toHaveLength(1);
  });

  it('tries again after longer and longer, says so late, and loses nothing', async () => {
    const store = await open();
    await household(store, timers(1));
    let failing = true;
    const out = carrier('out', () => {
      if (failing) throw new Error('unreachable');
      return 'spoken';
    });
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    expect(await one.tick()).toBe(0);
    now = plus(NOON, 14);
    expect(await one.tick()).toBe(0);
    expect(out.carried).toHaveLength(1);
    now = plus(NOON, 16);
    await one.tick();
    expect(out.carried).toHaveLength(2);
    failing = false;
    now = plus(NOON, 600);
    expect(await one.tick()).toBe(1);
    expect(out.carried.at(-1)?.speech.text).toBe('The number 0 timer was done ten minutes ago.');
    expect(new Set(out.carried.map((delivery) => delivery.id)).size).toBe(1);
    expect([1, 2, 3, 4, 20].map(retryDelay)).toEqual([15, 30, 60, 120, 1800]);
  });

  it('keeps what nobody listens to, and does not count it as heard', async () => {
    const store = await open();
    await household(store, timers(1));
    let listening = false;
    const out = carrier('out', () => (listening ? 'spoken' : 'nobody'));
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    expect(await one.tick()).toBe(0);
    expect((await store.loadKitchen('h1'))?.reminders.get('t0')?.deliveredAt).toBeNull();
    listening = true;
    now = plus(NOON, 60);
    expect(await one.tick()).toBe(1);
  });

  it('waits as long as a carrier asks, and gives up when it says there is no point', async () => {
    const store = await open();
    await household(store, timers(1));
    const answers = [new CarrierError('busy', 600), new CarrierError('gone', null, true)];
    const out = carrier('out', () => {
      const answer = answers.shift();
      if (answer) throw answer;
      return 'spoken';
    });
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    await one.tick();
    now = plus(NOON, 599);
    await one.tick();
    expect(out.carried).toHaveLength(1);
    now = plus(NOON, 601);
    await one.tick();
    now = plus(NOON, 3000);
    await one.planAll();
    await one.tick();
    expect(out.carried).toHaveLength(2);
  });

  it('plans each household once, and again only where something that is told changed', async () => {
    const store = await open();
    for (const id of ['h1', 'h2', 'h3'])
      await store.createHousehold(
        { ...timers(1), household: { ...timers(1).household, id } },
        '2026-05-14T12:00:00.000Z',
      );
    let looks: string[] = [];
    const port = householdsOver(store, () => now);
    const counting = {
      ...port,
      look: (id: string) => {
        looks.push(id);
        return port.look(id);
      },
    };
    const make = () =>
      createScheduler({
        store,
        households: counting,
        carriers: [carrier('out')],
        owner: 'p',
        now: () => now,
      });
    now = plus(NOON, -60);
    await make().planAll();
    expect(looks).toEqual(['h1', 'h2', 'h3']);
    looks = [];
    // After a restart there is nothing to plan, nor at any tick.
    const again = make();
    await again.planAll();
    await again.tick();
    expect(looks).toEqual([]);
    await port.heard('h2', 'nothing');
    now = plus(NOON, 1);
    await port.heard('h2', `timer.t0.${Date.parse(NOON) / 1000}`);
    now = plus(NOON, -30);
    await again.tick();
    expect(new Set(looks)).toEqual(new Set(['h2']));
  });

  it('still sends what a device has heard in the meantime, and nothing that was called off', async () => {
    const store = await open();
    await household(store, timers(2));
    const out = carrier('out');
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    const port = householdsOver(store, () => now);
    now = plus(NOON, 2);
    await port.heard('h1', `timer.t0.${Date.parse(NOON) / 1000}`);
    const kitchen = await store.loadKitchen('h1');
    const before = kitchen?.reminders.get('t1') ?? null;
    const change = {
      verb: 'set',
      about: [],
      ops: [{ kind: 'reminder', id: 't1', before, after: null }],
    } as const;
    await store.commitTurn('h1', {
      turnId: 'cancel',
      conversationId: 'c',
      deviceId: null,
      personId: null,
      at: now,
      decidedOn: kitchen?.version ?? 0,
      changes: [change],
      conversation: null,
      reply: null,
    });
    expect(await one.tick()).toBe(1);
    expect(out.carried.map((delivery) => delivery.id)).toEqual([`timer.t0.${Date.parse(NOON) / 1000}`]);
  });

  it('holds the summary over quiet hours and tells it once each evening', async () => {
    const store = await open();
    await household(
      store,
      kitchenWith({
        items: [item('rice', { dates: { made: '2026-05-13' } })],
        household: { summaryAt: '20:00', quietHours: { from: '19:30', to: '20:30' } },
      }),
    );
    const out = carrier('out');
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    now = '2026-05-15T01:00:00.000Z';
    expect(await one.tick()).toBe(0);
    now = '2026-05-15T01:30:00.000Z';
    expect(await one.tick()).toBe(1);
    for (let hour = 1; hour <= 48; hour++) {
      now = plus('2026-05-15T01:30:00.000Z', hour * 3600);
      await one.tick();
    }
    expect(out.carried.map((delivery) => delivery.id)).toEqual([
      'summary.2026-05-14',
      'summary.2026-05-15',
      'summary.2026-05-16',
    ]);
  });

  it('goes on with other households when one fails', async () => {
    const store = await open();
    await household(store, timers(1));
    await household(store, { ...timers(1), household: { ...timers(1).household, id: 'h2' } });
    const out = carrier('out', (delivery) => {
      if (delivery.household === 'h1') throw new Error('no');
      return 'spoken';
    });
    const one = scheduler(store, 'p1', out);
    await one.planAll();
    problems.length = 0;
    expect(await one.tick()).toBe(1);
    expect(problems).toHaveLength(1);
  });
});
