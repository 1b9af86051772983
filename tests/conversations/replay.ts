/** Holds a transcript's conversation with the whole engine on an embedded store; only the clock is held. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoKitchen, emptyKitchen, kitchenFromFile } from '../../src/kitchen/index.js';
import type { Kitchen, Person } from '../../src/kitchen/model.js';
import { wallTime } from '../../src/safety/index.js';
import { hashOf } from '../../src/store/secrets.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues, type Tongues } from '../../src/turn/index.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import type { Talk, TalkTurn } from './script.js';

const demoZone = 'America/Chicago';
const zones = { demo: demoZone, empty: demoZone, quiroga: 'America/Mexico_City' } as const;
const instantIn = (wall: string, timeZone: string): string => {
  const [day = '', time = ''] = wall.split(' ');
  return wallTime(day, time, timeZone);
};

const quiroga = join(import.meta.dirname, '../data/talk/quiroga-kitchen.json');

const marta: Person = { id: 'person.marta', name: 'Marta', eatsHere: true, allergens: [], atRisk: false };

const kitchenFor = (talk: Talk): Kitchen => {
  const timeZone = zones[talk.kitchen];
  const clock = { now: instantIn(talk.turns[0]!.at, timeZone), timeZone };
  if (talk.kitchen === 'quiroga') return kitchenFromFile(readFileSync(quiroga, 'utf8'), clock);
  const demo = demoKitchen(clock);
  if (talk.kitchen === 'demo') return demo;
  const bare = { ...demo.household, microwaveWatts: null, summaryAt: null, dotMeanings: {} };
  return { ...emptyKitchen(bare), people: new Map([[marta.id, marta]]) };
};

/** The kitchen's own speaker, Dele's phone, and a speaker that waits with the code 41592653. */
const letDevicesIn = async (store: Store, householdId: string, at: string): Promise<void> => {
  const device = { householdId, personId: null, pairedAt: at, lastSeenAt: null, revokedAt: null };
  await store.addDevice({
    ...device,
    id: 'device-kitchen',
    name: 'kitchen speaker',
    tokenHash: 'kitchen',
    scope: 'own',
  });
  await store.addDevice({
    ...device,
    id: 'device-Dele',
    name: "Dele's phone",
    tokenHash: 'phone',
    scope: 'speak',
  });
  const expiresAt = new Date(Date.parse(at) + 10 * 60_000).toISOString();
  await store.addPairing(
    { codeHash: hashOf('41592653'), name: 'porch speaker', tokenHash: 'porch', expiresAt },
    { now: at, atMost: 10 },
  );
};

let shared: Tongues | null = null;
const tongues = (): Tongues =>
  (shared ??= createTongues((error) => {
    throw error;
  }));

export interface Replayed {
  readonly turn: TalkTurn;
  readonly reply: TurnReply;
}

export const replay = async (talk: Talk): Promise<readonly Replayed[]> => {
  const store = openSqliteStore(':memory:');
  await store.migrate();
  const kitchen = kitchenFor(talk);
  const instantOf = (wall: string): string => instantIn(wall, zones[talk.kitchen]);
  await store.createHousehold(kitchen, instantOf(talk.turns[0]!.at));
  await letDevicesIn(store, kitchen.household.id, instantOf(talk.turns[0]!.at));
  let now = instantOf(talk.turns[0]!.at);
  const households = createHouseholds({ store, tongues: tongues(), now: () => now });
  const householdId = kitchen.household.id;
  const replies: Replayed[] = [];
  try {
    for (const [index, turn] of talk.turns.entries()) {
      now = instantOf(turn.at);
      const name = turn.speaker;
      const { kitchen: here } = await households.look(householdId);
      const person = [...here.people.values()].find((one) => one.name === name);
      if (name && !person) throw new Error(`line ${turn.line}: nobody here is called ${name}`);
      const speaker = {
        householdId,
        personId: person?.id ?? null,
        deviceId: `device-${name ?? 'kitchen'}`,
        owner: name !== 'Dele',
      };
      const reply = await households.takeTurn(speaker, {
        id: `turn-${index}`,
        conversation: 'default',
        hypotheses: turn.said === '' ? [] : [{ text: turn.said }],
        ...(turn.touched ? { touched: turn.touched } : {}),
        ...(turn.cutAt ? { cutAt: turn.cutAt } : {}),
        ...(turn.locale ? { locale: turn.locale } : {}),
      });
      replies.push({ turn, reply });
    }
  } finally {
    await store.close();
  }
  return replies;
};

export const changesOf = (reply: TurnReply): string[] =>
  reply.changes.map(({ verb, about }) => [verb, ...about].join(' '));
