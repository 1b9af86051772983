/** What a whole kitchen's worth of questions and changes is answered with, held to the style. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import type { Length } from '../../src/speech/index.js';
import { createHouseholds, createTongues, type Households } from '../../src/turn/index.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import { usualListener } from '../../src/dialogue/state.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { kindOfReply, styleProblems } from './style.js';

const NOW = '2026-05-14T23:00:00.000Z';
const sentences = readFileSync(projectFile('tests', 'data', 'kitchen', 'gold.jsonl'), 'utf8')
  .trim()
  .split('\n')
  .map((line) => (JSON.parse(line) as { text: string }).text);

/** Asked to tell everything, or to begin something long, it may. */
const LONG = new Set([
  'tell-about',
  'how-to-reach',
  'start-setup',
  'start-count',
  'start-practice',
  'summary',
  'reheat',
]);

let store: Store;
let kitchen: Kitchen;
const engines = new Map<Length, Households>();
beforeAll(async () => {
  store = openSqliteStore(':memory:');
  await store.migrate();
  const tongues = createTongues((error) => {
    throw error;
  });
  for (const length of ['short', 'usual', 'full'] as const) {
    kitchen = demoKitchen({ now: NOW, timeZone: 'America/Chicago' });
    kitchen = { ...kitchen, household: { ...kitchen.household, id: length } };
    await store.createHousehold(kitchen, NOW);
    const listener = { ...usualListener, length };
    engines.set(length, createHouseholds({ store, tongues, now: () => NOW, listener }));
  }
});
afterAll(() => store.close());

describe.each(['short', 'usual', 'full'] as const)('at %s length', (length) => {
  it('every kitchen sentence is answered in the house style', async () => {
    const households = engines.get(length);
    if (!households) throw new Error('no engine');
    const own = [
      ...[...kitchen.items.values()].flatMap((item) => [
        item.name,
        ...item.notes,
        ...item.cautions,
        ...item.preparations.flatMap(({ steps }) => steps),
      ]),
      ...[...kitchen.places.values()].map((place) => place.name),
      'black beans',
    ];
    const speaker = { householdId: length, personId: null, deviceId: 'tests' };
    const wrong: string[] = [];
    for (const [n, text] of sentences.entries()) {
      const turn = (id: string, words: string) =>
        households.takeTurn(speaker, { id, conversation: `c${n}`, hypotheses: [{ text: words }] });
      const reply = await turn(`t${n}`, text);
      // Each is asked of the same kitchen.
      if (reply.changes.length > 0) await turn(`u${n}`, 'undo');
      const kind = reply.understood.intents.some((intent) => LONG.has(intent))
        ? 'list'
        : kindOfReply(reply.speech.text, reply.expects.kind);
      for (const problem of styleProblems(reply.speech.text, { length, kind, own }))
        wrong.push(`${text} => ${reply.speech.text} (${problem})`);
    }
    expect(sentences.length).toBeGreaterThan(200);
    expect(wrong).toEqual([]);
  }, 60_000);
});
