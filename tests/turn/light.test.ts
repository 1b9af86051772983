/** What a household takes up while nobody speaks to it. */
import { afterEach, expect, it, vi } from 'vitest';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import * as names from '../../src/turn/names.js';
import { kitchenOf, THURSDAY } from '../support/service.js';

vi.mock(import('../../src/turn/names.js'), async (original) => {
  const real = await original();
  return { ...real, namesOf: vi.fn(real.namesOf) };
});

const stores: Store[] = [];
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
  vi.mocked(names.namesOf).mockClear();
});

const tongues = createTongues((error) => {
  throw error;
});
const open = async (ids: readonly string[], bytesInMemory?: number) => {
  const store = openSqliteStore(':memory:');
  stores.push(store);
  await store.migrate();
  for (const id of ids) await store.createHousehold(kitchenOf(id), THURSDAY);
  const loaded: string[] = [];
  const counting: Store = {
    ...store,
    loadKitchen: (id) => {
      loaded.push(id);
      return store.loadKitchen(id);
    },
  };
  const households = createHouseholds({
    store: counting,
    tongues,
    now: () => THURSDAY,
    ...(bytesInMemory === undefined ? {} : { bytesInMemory }),
  });
  const say = (id: string, text: string, turn: string) =>
    households.takeTurn(
      { householdId: id, deviceId: 'd', personId: null },
      { id: turn, conversation: 'c', hypotheses: [{ text }] },
    );
  return { households, loaded, say };
};

it('has no index of its names until somebody speaks, and then one that has what changed meanwhile', async () => {
  const { households, say } = await open(['a']);
  await households.look('a');
  await households.change(
    { householdId: 'a', deviceId: 'd', personId: null },
    { id: 'x', said: 'x' },
    ({ kitchen }) => {
      const [first] = kitchen.items.values();
      const after = { ...first!, id: 'new', name: 'quince paste', markerId: null };
      return {
        changes: [{ verb: 'put away', about: [], ops: [{ kind: 'item', id: 'new', before: null, after }] }],
      };
    },
  );
  expect(names.namesOf).not.toHaveBeenCalled();
  const reply = await say('a', 'where is the quince paste', 't1');
  expect(reply.speech.text).not.toMatch(/no record|do not have|not find/i);
  await say('a', 'where is the quince paste', 't2');
  expect(names.namesOf).toHaveBeenCalledTimes(1);
});

it('is kept by what it takes up: one spoken to weighs more than several that are not', async () => {
  const ids = ['a', 'b', 'c', 'd'];
  const { households, loaded, say } = await open(ids, 2_000_000);
  for (const id of ids) await households.look(id);
  for (const id of ids) await households.look(id);
  expect(loaded).toEqual(ids);
  await say('a', 'where is the milk', 't1');
  await say('b', 'where is the milk', 't2');
  await households.look('b');
  expect(loaded).toEqual(ids);
  await households.look('a');
  expect(loaded).toEqual([...ids, 'a']);
});
