import { afterEach, describe, expect, it } from 'vitest';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues, TurnProblem, type Households } from '../../src/turn/index.js';
import { kitchenOf, THURSDAY } from '../support/service.js';
import type { TurnRequest } from '../../shared/wire/turn.js';

const stores: Store[] = [];
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

const tongues = createTongues((error) => {
  throw error;
});
const newStore = async (): Promise<Store> => {
  const store = openSqliteStore(':memory:');
  stores.push(store);
  await store.migrate();
  await store.createHousehold(kitchenOf('marta'), THURSDAY);
  return store;
};
const over = (store: Store): Households => createHouseholds({ store, tongues, now: () => THURSDAY });
const marta = { householdId: 'marta', deviceId: 'speaker', personId: null };
const turn = (id: string, text: string, more: Partial<TurnRequest> = {}): TurnRequest => ({
  id,
  conversation: 'default',
  hypotheses: [{ text }],
  ...more,
});

describe('a turn', () => {
  it('is done once, however often it is sent', async () => {
    const store = await newStore();
    const households = over(store);
    const first = await households.takeTurn(
      marta,
      turn('t1', 'put barley soup on the top shelf of the fridge'),
    );
    const again = await households.takeTurn(
      marta,
      turn('t1', 'put barley soup on the top shelf of the fridge'),
    );
    expect(first.changes).toHaveLength(1);
    expect(again).toEqual(first);
    expect(await store.journalAfter('marta', 0)).toHaveLength(1);
    // Another server answers from the record too.
    expect(
      await over(store).takeTurn(marta, turn('t1', 'put barley soup on the top shelf of the fridge')),
    ).toEqual(first);
  });

  it('refuses an id that was used to say something else', async () => {
    const households = over(await newStore());
    await households.takeTurn(marta, turn('t1', 'what should I use first'));
    await expect(households.takeTurn(marta, turn('t1', 'where is the milk'))).rejects.toMatchObject({
      code: 'turn-id-reused',
    });
  });

  it('keeps the ids of two devices apart', async () => {
    const households = over(await newStore());
    await households.takeTurn(marta, turn('t1', 'put oats on the list'));
    const other = await households.takeTurn(
      { ...marta, deviceId: 'phone' },
      turn('t1', 'put rice on the list'),
    );
    expect(other.changes[0]?.about).toEqual(['rice']);
  });

  it('names no household it does not know', async () => {
    const households = over(await newStore());
    await expect(
      households.takeTurn({ ...marta, householdId: 'nobody' }, turn('t1', 'hello')),
    ).rejects.toBeInstanceOf(TurnProblem);
  });

  it('finds what another server put away a moment ago', async () => {
    const store = await newStore();
    const [here, there] = [over(store), over(store)];
    await here.takeTurn(marta, turn('t0', 'what should I use first'));
    await there.takeTurn(marta, turn('t1', 'put the barley soup on the top shelf of the fridge'));
    const found = await here.takeTurn(marta, turn('t2', 'where is the barley soup'));
    expect(found.speech.text).toMatch(/(top|first) shelf/i);
  });

  it('answers turns of one household in the order they came', async () => {
    const store = await newStore();
    const households = over(store);
    const foods = ['oats', 'rice', 'salt', 'tea', 'honey', 'soap'];
    await Promise.all(
      foods.map((food, n) => households.takeTurn(marta, turn(`t${n}`, `put ${food} on the list`))),
    );
    const entries = await store.journalAfter('marta', 0);
    expect(entries.map((entry) => entry.about[0])).toEqual(foods);
  });

  it('loses nothing when two servers change one kitchen at once', async () => {
    const store = await newStore();
    const [here, there] = [over(store), over(store)];
    const names = Array.from(
      { length: 20 },
      (_, n) => ['barley', 'millet', 'rye', 'spelt', 'oat'][n % 5] + ` ${n}`,
    );
    const replies = await Promise.all(
      names.map((name, n) =>
        (n % 2 ? here : there).takeTurn(
          { ...marta, deviceId: `d${n}` },
          turn(`t${n}`, `put ${name} on the list`),
        ),
      ),
    );
    const entries = await store.journalAfter('marta', 0);
    const made = replies.flatMap((reply) => reply.changes.flatMap((change) => change.ids));
    expect(entries.flatMap((entry) => entry.ops.map((op) => op.id)).sort()).toEqual([...made].sort());
    expect(entries.map((entry) => entry.version)).toEqual(entries.map((_, n) => n + 1));
  });

  it('refuses more than may wait for one household', async () => {
    const store = await newStore();
    const households = createHouseholds({ store, tongues, now: () => THURSDAY, waitingAtMost: 2 });
    const all = await Promise.allSettled(
      [1, 2, 3].map((n) => households.takeTurn(marta, turn(`t${n}`, 'what should I use first'))),
    );
    expect(all.map((one) => one.status)).toEqual(['fulfilled', 'fulfilled', 'rejected']);
    expect(all[2]).toMatchObject({ reason: { code: 'too-many-waiting' } });
    // And goes on afterwards.
    await households.takeTurn(marta, turn('t9', 'what should I use first'));
  });

  it('tells who listens what changed', async () => {
    const households = over(await newStore());
    const heard: string[] = [];
    const stop = households.onCommitted(({ entries }) => heard.push(...entries.map((entry) => entry.verb)));
    await households.takeTurn(marta, turn('t1', 'put oats on the list'));
    stop();
    await households.takeTurn(marta, turn('t2', 'put rice on the list'));
    expect(heard).toEqual(['put on the list']);
  });

  it('undoes what was put away, names and all', async () => {
    const households = over(await newStore());
    await households.takeTurn(marta, turn('t1', 'put the barley soup on the top shelf of the fridge'));
    const undone = await households.takeTurn(marta, turn('t2', 'undo that'));
    expect(undone.changes[0]?.verb).toBe('undid');
    const { kitchen } = await households.look('marta');
    expect([...kitchen.items.values()].some((item) => item.name === 'barley soup')).toBe(false);
  });

  it('keeps to a locale that is spoken here', async () => {
    const households = over(await newStore());
    const reply = await households.takeTurn(
      marta,
      turn('t1', 'what should I use first', { locale: 'xx-not a locale' }),
    );
    expect(reply.speech.ssml).toMatch(/xml:lang="en/);
  });
});

describe('a change from a page', () => {
  it('is journalled once and refused when its id meant something else', async () => {
    const store = await newStore();
    const households = over(store);
    const build = () => ({ changes: [{ verb: 'noted', about: ['test'], ops: [] } as const] });
    const first = await households.change(marta, { id: 'p1', said: 'a' }, build);
    expect(await households.change(marta, { id: 'p1', said: 'a' }, build)).toEqual(first);
    await expect(households.change(marta, { id: 'p1', said: 'b' }, build)).rejects.toMatchObject({
      code: 'turn-id-reused',
    });
    expect(await store.journalAfter('marta', 0)).toHaveLength(1);
  });
});
