/** Asks through the whole engine: a conversation of its own for each question, a household of its own where one changed it. */
import { readFileSync } from 'node:fs';
import { kitchenFromFile } from '../../../src/kitchen/index.js';
import { projectFile } from '../../../src/project-files.js';
import { wallTime } from '../../../src/safety/index.js';
import { openSqliteStore } from '../../../src/store/index.js';
import { createHouseholds, createTongues } from '../../../src/turn/index.js';
import type { Question } from './tables.js';

export interface Answered {
  readonly text: string;
  /** The intents, and how sure: for whoever mends what was heard. */
  readonly heardAs: string;
}
export interface Asker {
  ask(question: Question, words: string): Promise<Answered>;
  close(): Promise<void>;
}

const USUAL_TIME = '2026-05-14T18:00';

export const createAsker = async (): Promise<Asker> => {
  const text = readFileSync(projectFile('shared', 'demo', 'marta-okafor.json'), 'utf8');
  const store = openSqliteStore(':memory:');
  await store.migrate();
  let now = new Date(0).toISOString();
  const { household } = kitchenFromFile(text, { now, timeZone: 'UTC' });
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => {
      throw error;
    }),
    now: () => now,
  });
  let count = 0;
  const clean = new Map<string, string>();

  /** A household of that region as it was that day, in which nothing was changed yet. */
  const householdAt = async (region: 'us' | 'uk', at: string): Promise<string> => {
    const key = `${region} ${at}`;
    const known = clean.get(key);
    if (known !== undefined) return known;
    const fresh = kitchenFromFile(text, { now, timeZone: household.timeZone });
    const id = `bench-${(count += 1)}`;
    await store.createHousehold(
      {
        ...fresh,
        household: { ...fresh.household, id, region, measures: region === 'us' ? 'us' : 'metric' },
      },
      now,
    );
    clean.set(key, id);
    return id;
  };

  return {
    async ask({ before = [], region = 'us', at = USUAL_TIME, locale }, words) {
      const [day = '', time = ''] = at.split('T');
      now = wallTime(day, time, household.timeZone);
      const householdId = await householdAt(region, at);
      const speaker = { householdId, personId: null, deviceId: null, owner: true };
      const conversation = `talk-${(count += 1)}`;
      let answered: Answered = { text: '', heardAs: '' };
      let changed = false;
      for (const said of [...before, words]) {
        const reply = await households.takeTurn(speaker, {
          id: `turn-${(count += 1)}`,
          conversation,
          hypotheses: [{ text: said }],
          ...(locale === undefined ? {} : { locale }),
        });
        changed ||= reply.changes.length > 0;
        const { verdict, intents, confidence, slots } = reply.understood;
        answered = {
          text: reply.speech.text.replace(/\s+/gu, ' ').trim(),
          heardAs: `${verdict} ${intents.join('+')} ${confidence.toFixed(2)}${changed ? ', changed' : ''} ${JSON.stringify(slots[0] ?? {}).slice(0, 300)}`,
        };
      }
      if (changed) {
        clean.delete(`${region} ${at}`);
        households.forget(householdId);
      }
      return answered;
    },
    close: () => store.close(),
  };
};
