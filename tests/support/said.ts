/** A talk with the demo household in a store of its own: what was answered, and the kitchen before and after it. */
import type { Kitchen } from '../../src/kitchen/model.js';
import { openSqliteStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { kitchenOf, THURSDAY } from './service.js';

export interface Talked {
  /** Each answer, as plain text. */
  readonly answers: readonly string[];
  /** The last of them. */
  readonly said: string;
  /** The last turn changed something. */
  readonly changed: boolean;
  readonly before: Kitchen;
  readonly kitchen: Kitchen;
}

export const talked = async (...lines: readonly string[]): Promise<Talked> => {
  const store = openSqliteStore(':memory:');
  try {
    await store.migrate();
    const before = kitchenOf('marta');
    await store.createHousehold(before, THURSDAY);
    const households = createHouseholds({
      store,
      tongues: createTongues((error) => {
        throw error;
      }),
      now: () => THURSDAY,
    });
    const speaker = { householdId: 'marta', deviceId: 'window', personId: null };
    const answers: string[] = [];
    let changed = false;
    for (const [turn, text] of lines.entries()) {
      const request = { id: `turn-${turn}`, conversation: 'c', hypotheses: [{ text }] };
      const { speech, changes } = await households.takeTurn(speaker, request);
      answers.push(speech.text);
      changed = changes.length > 0;
    }
    const kitchen = (await store.loadKitchen('marta'))!;
    return { answers, said: answers.at(-1) ?? '', changed, before, kitchen };
  } finally {
    await store.close();
  }
};
