/** One turn on a household of 500 items, without a transport: the whole, and its parts. */
import { Bench } from 'tinybench';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { namesOf } from '../../src/turn/names.js';
import { openSqliteStore } from '../../src/store/index.js';
import { bigKitchen, sentences } from './big-kitchen.js';

const ITEMS = 500;
const now = '2026-05-14T23:00:00.000Z';
const clock = { now, timeZone: 'America/Chicago' };

export const benchTurn = async (): Promise<void> => {
  const kitchen = bigKitchen('bench', ITEMS, clock);
  const said = sentences(kitchen);
  const store = openSqliteStore(':memory:');
  await store.migrate();
  await store.createHousehold(kitchen, now);
  const tongues = createTongues((error) => {
    throw error;
  });
  const households = createHouseholds({ store, tongues, now: () => now });
  const speaker = { householdId: 'bench', deviceId: 'bench', personId: null };
  const { understander } = tongues.for(undefined, 'en-US');
  const names = namesOf(kitchen);
  const context = { ...clock, locale: 'en-US', expecting: 'anything' } as const;
  let n = 0;
  const next = (): string => said[(n += 1) % said.length] ?? '';

  const bench = new Bench({ time: 3_000, warmupTime: 1_000 });
  bench.add('understanding', () => void understander.understand([{ text: next() }], names, context));
  bench.add('understanding, five guesses', () => {
    const first = next();
    const guesses = [
      first,
      `${first} please`,
      first.replace('the', 'a'),
      first.replace('is', 'was'),
      `um ${first}`,
    ];
    void understander.understand(
      guesses.map((text) => ({ text })),
      names,
      context,
    );
  });
  bench.add('names index of the household, built anew', () => void namesOf(kitchen));
  bench.add('whole turn, store in memory', async () => {
    n += 1;
    await households.takeTurn(speaker, {
      id: `b${n}`,
      conversation: `c${n % 50}`,
      hypotheses: [{ text: said[n % said.length] ?? '' }],
    });
  });
  await bench.run();
  process.stdout.write(`One turn, ${ITEMS} items in the household (milliseconds)\n`);
  for (const task of bench.tasks) {
    const { result } = task;
    if (result.state !== 'completed')
      throw result.state === 'errored' ? result.error : new Error(`${task.name} did not run`);
    const { p50, p99, mean } = result.latency;
    process.stdout.write(
      `  ${task.name.padEnd(44)} p50 ${p50.toFixed(3).padStart(8)}   p99 ${p99.toFixed(3).padStart(8)}   mean ${mean.toFixed(3).padStart(8)}\n`,
    );
  }
  await store.close();
};
