/**
 * What understanding a turn costs, with 500 items in the house: one typed sentence, or the five
 * best guesses of a recogniser, right and wrong (when none fits, all are read and mended).
 * The best of five for each turn: other work on the machine only ever adds.
 */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../src/project-files.js';
import { createHouseholdNames, createUnderstander, type Hypothesis } from '../../src/understanding/index.js';
import { bigKitchen } from './big-kitchen.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' } as const;
const rounds = 5;

const jsonLines = <T>(...file: string[]): T[] =>
  readFileSync(projectFile('tests', 'data', ...file), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as T);

const at = (sorted: readonly number[], part: number): string =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))]!.toFixed(2);

export const benchUnderstanding = async (): Promise<void> => {
  const kitchen = bigKitchen('bench', 500, clock);
  const names = createHouseholdNames('en-US');
  for (const item of kitchen.items.values()) names.set('item', item);
  for (const place of kitchen.places.values()) names.set('place', place);
  for (const person of kitchen.people.values()) names.set('person', person);
  for (const marker of kitchen.markers.values()) names.set('marker', marker);
  const understander = createUnderstander('en-US');
  const context = { ...clock, locale: 'en-US', expecting: 'anything' } as const;

  const typed = jsonLines<{ text: string }>('kitchen', 'gold.jsonl').map(({ text }) => [{ text }]);
  const recognised = jsonLines<{ nbest: { text: string }[] }>('asr', 'asr-corpus.jsonl').map(({ nbest }) =>
    nbest.slice(0, 5).map(({ text }) => ({ text })),
  );
  const cases: readonly (readonly [string, readonly (readonly Hypothesis[])[]])[] = [
    ['one typed sentence', typed],
    ['five guesses', recognised],
  ];
  for (const [title, turns] of cases) {
    for (const turn of turns) understander.understand(turn, names, context);
    const times = turns.map((turn) => {
      let best = Infinity;
      for (let round = 0; round < rounds; round += 1) {
        const start = performance.now();
        understander.understand(turn, names, context);
        best = Math.min(best, performance.now() - start);
      }
      return best;
    });
    times.sort((a, b) => a - b);
    process.stdout.write(
      `understanding, 500 items, ${title}: p50 ${at(times, 0.5)} ms, p95 ${at(times, 0.95)} ms, p99 ${at(times, 0.99)} ms\n`,
    );
  }
};
