/** Whether a turn costs the same among ten thousand households as among a hundred, in one PostgreSQL. */
import { openPostgresStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { bigKitchen, sentences } from './big-kitchen.js';

const ITEMS = 60;
const TURNS = 400;
const AT_ONCE = 8;
/** Making them is not what is measured; a slow machine makes fewer, and says so. */
const MAKING_MS = 240_000;

const idOf = (n: number): string => `h${n}`;

/** Spread over all there are, in an order that visits no household twice in a round. */
const visits = (households: number): number[] =>
  Array.from({ length: TURNS }, (_, n) => Math.floor((n * households) / TURNS));

export const manyHouseholds = async (
  url: string,
  most: number,
  say: (line: string) => void,
): Promise<void> => {
  const now = new Date().toISOString();
  const kitchen = bigKitchen('pattern', ITEMS, { now, timeZone: 'America/Chicago' });
  const said = sentences(kitchen);
  const store = openPostgresStore(url);
  await store.migrate();
  let made = 0;
  const until = performance.now() + MAKING_MS;
  const makeUpTo = async (count: number): Promise<void> => {
    await Promise.all(
      Array.from({ length: AT_ONCE }, async () => {
        while (made < count && performance.now() < until) {
          const id = idOf(made);
          made += 1;
          await store.createHousehold({ ...kitchen, household: { ...kitchen.household, id } }, now);
        }
      }),
    );
  };

  say(`One turn at a time among many households of ${ITEMS} items, one PostgreSQL`);
  let turn = 0;
  for (const wanted of [Math.min(TURNS, most), most]) {
    await makeUpTo(wanted);
    const households = createHouseholds({
      store,
      tongues: createTongues((error) => {
        throw error;
      }),
      now: () => now,
    });
    const round = async (which: readonly number[]): Promise<string> => {
      const times: number[] = [];
      const before = process.cpuUsage();
      for (const n of which) {
        turn += 1;
        const started = performance.now();
        await households.takeTurn(
          { householdId: idOf(n), deviceId: 'bench', personId: null },
          {
            id: `t${turn}`,
            conversation: 'c',
            hypotheses: [{ text: said[turn % said.length] ?? '' }],
          },
        );
        times.push(performance.now() - started);
      }
      const { user, system } = process.cpuUsage(before);
      times.sort((a, b) => a - b);
      const at = (part: number): string => (times[Math.floor(times.length * part)] ?? NaN).toFixed(1);
      return `p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, ${((user + system) / 1000 / which.length).toFixed(2)} ms of our processor`;
    };
    const which = visits(made);
    // Compiled and warm first; then the same households, once not in memory and once in it.
    await round(which.slice(0, 100));
    for (const n of which) households.forget(idOf(n));
    say(`  ${String(made).padStart(6)} households   first turn ${await round(which)}`);
    say(`  ${''.padStart(6)}              next turn  ${await round(which)}`);
  }
  await store.close();
};
