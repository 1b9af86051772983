/** "Nine more": whatever an answer says there is more of is read out by "go on", to the last. */
import { afterEach, describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import { rankUseFirst } from '../../src/safety/index.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { kitchenOf } from '../support/service.js';

const stores: Store[] = [];
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

/** The demo kitchen, so many days after anybody looked into it. */
const talkingAfter = async (days: number) => {
  const store = openSqliteStore(':memory:');
  stores.push(store);
  await store.migrate();
  const kitchen = kitchenOf('marta');
  await store.createHousehold(kitchen, '2026-05-14T23:00:00.000Z');
  const now = new Date(Date.parse('2026-05-14T23:00:00.000Z') + days * 86_400_000).toISOString();
  const households = createHouseholds({ store, tongues: createTongues(() => undefined), now: () => now });
  const speaker = { householdId: 'marta', deviceId: 'window', personId: null };
  let turns = 0;
  const hear = async (text: string): Promise<string> => {
    const id = `turn-${(turns += 1)}`;
    return (await households.takeTurn(speaker, { id, conversation: 'c', hypotheses: [{ text }] })).speech
      .text;
  };
  return { hear, kitchen, clock: { now, timeZone: kitchen.household.timeZone } };
};

/** Everything said until there is no more of it. */
const toTheEnd = async (hear: (text: string) => Promise<string>, question: string): Promise<string[]> => {
  const said = [await hear(question)];
  while (said.length < 12 && /\bmore\b|\?$/i.test(said.at(-1)!)) said.push(await hear('go on'));
  return said;
};

describe.each([0, 3, 30])('after %i days', (days) => {
  it.each(['what should I use first', "what's old"])('all that is past is named: %s', async (question) => {
    const { hear, kitchen, clock } = await talkingAfter(days);
    const past = rankUseFirst(kitchen, clock).filter(({ assessment }) => assessment.verdict === 'throw-out');
    const said = await toTheEnd(hear, question);
    const all = said.join(' ').toLowerCase();
    for (const { item } of past) expect(all).toContain(item.name.toLowerCase());
    expect(said.at(-1)).not.toMatch(/\bmore\b/i);
    // Nothing that is past is read where it could be taken for something still to be used.
    for (const group of said.slice(1))
      if (past.some(({ item }) => group.toLowerCase().includes(`${item.name.toLowerCase()} `)))
        expect(group).toMatch(/past guidance/i);
  });
});

it('reads on to the last of a whole kitchen', async () => {
  const { hear, kitchen } = await talkingAfter(0);
  const all = (await toTheEnd(hear, 'which foods contain milk')).join(' ').toLowerCase();
  for (const { name, contains } of livingItems(kitchen))
    if (contains.includes('milk')) expect(all).toContain(name.toLowerCase());
});
