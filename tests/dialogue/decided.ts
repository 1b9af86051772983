/** Talk put to the dialogue as it was understood, without words: what was heard, and what it comes to. */
import { decide, startConversation } from '../../src/dialogue/index.js';
import type { Conversation, Outcome } from '../../src/dialogue/index.js';
import { applyChange } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import { type Act, type Mention, type Understood, emptyMention } from '../../src/understanding/intents.js';

/** A Thursday evening in Chicago. */
export const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };

const heard = (verdict: Understood['verdict'], act: Act): Understood => ({
  readings: [{ acts: [act], confidence: verdict === 'act' ? 0.97 : 0.5 }],
  margin: 1,
  verdict,
});

/** An item by its own name. */
export const named = ({ id, name }: Item): Mention => ({
  ...emptyMention,
  words: name,
  candidates: [{ id, fit: 1 }],
});

/** One talk on a kitchen. Every talk names its records alike, so that two can be compared. */
export const talkOn = (begun: Kitchen) => {
  let kitchen = begun;
  let conversation: Conversation = startConversation();
  let ids = 0;
  const say = (verdict: Understood['verdict'], act: Act): Outcome => {
    const outcome = decide(
      conversation,
      { understanding: heard(verdict, act), touched: null, cutAt: null },
      {
        kitchen,
        journal: [],
        clock,
        speaker: { personId: 'person.marta', deviceId: 'd', owner: true },
        devices: [],
        newId: () => `new-${(ids += 1)}`,
      },
    );
    kitchen = outcome.changes.reduce(applyChange, kitchen);
    conversation = outcome.conversation;
    return outcome;
  };
  return { say };
};

/** Ids of the items that an outcome changes, one for each change of one. */
export const itemsIn = ({ changes }: Outcome): string[] =>
  changes.flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' ? [op.id] : [])));
