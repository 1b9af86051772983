/** "Mark the spinach as used up?" — "yes, chuck it": the deed said back is done to what was asked about, and to nothing else. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decide, startConversation } from '../../src/dialogue/index.js';
import type { Conversation, Outcome } from '../../src/dialogue/index.js';
import { applyChange, demoKitchen, livingItems } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import {
  type Act,
  type Slots,
  type Understanding,
  emptyMention,
  itMention,
} from '../../src/understanding/intents.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const demo = demoKitchen(clock);

const heard = (verdict: Understanding['verdict'], act: Act): Understanding => ({
  readings: [
    { acts: [act], confidence: verdict === 'act' ? 0.97 : 0.5, heard: 'said so', normalised: 'said so' },
  ],
  margin: 1,
  verdict,
});
const named = ({ id, name }: Item) => ({ ...emptyMention, words: name, candidates: [{ id, fit: 1 }] });

const talk = () => {
  let kitchen: Kitchen = demo;
  let conversation: Conversation = startConversation();
  let ids = 0;
  const say = (verdict: Understanding['verdict'], act: Act): Outcome => {
    const outcome = decide(
      conversation,
      { understanding: heard(verdict, act), touched: null, cutAt: null },
      {
        kitchen,
        journal: [],
        clock,
        speaker: { personId: 'person.marta', deviceId: 'd' },
        newId: () => `new-${(ids += 1)}`,
      },
    );
    kitchen = outcome.changes.reduce(applyChange, kitchen);
    conversation = outcome.conversation;
    return outcome;
  };
  return { say };
};

const changedItems = ({ changes }: Outcome): string[] =>
  changes.flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' ? [op.id] : [])));

const deeds: readonly { readonly intent: Act['intent']; readonly asked: Slots; readonly back: Slots }[] = [
  { intent: 'finish', asked: { how: 'used' }, back: { how: 'thrown out' } },
  { intent: 'finish', asked: { how: 'used' }, back: { how: 'used' } },
  { intent: 'finish', asked: { how: 'thrown out' }, back: {} },
  { intent: 'finish', asked: { how: 'given away' }, back: { how: 'given away' } },
  { intent: 'freeze', asked: {}, back: {} },
  { intent: 'open', asked: {}, back: {} },
  { intent: 'thaw', asked: {}, back: {} },
];
const living = livingItems(demo);
const cases = fc.record({
  deed: fc.constantFrom(...deeds),
  subject: fc.constantFrom(...living),
  other: fc.constantFrom(...living),
  pointer: fc.constantFrom('it' as const, 'that' as const),
});

describe('the deed of a yes-or-no question, said back', () => {
  test('is done to what was asked about, with another thing in focus before', () => {
    let asked = 0;
    fc.assert(
      fc.property(cases, ({ deed, subject, other, pointer }) => {
        fc.pre(subject.name !== other.name);
        const { say } = talk();
        say('act', { intent: 'tell-about', slots: { item: named(other) } });
        const question = say('confirm', {
          intent: deed.intent,
          slots: { ...deed.asked, item: named(subject) },
        });
        fc.pre(question.conversation.expecting === 'yes-no' && question.changes.length === 0);
        asked += 1;
        const item = { ...itMention, pointer };
        const done = changedItems(say('act', { intent: deed.intent, slots: { ...deed.back, item } }));
        expect(done).toContain(subject.id);
        expect(done.filter((id) => demo.items.get(id)?.name === other.name)).toEqual([]);
      }),
      { numRuns: 150 },
    );
    expect(asked).toBeGreaterThan(50);
  });

  test('with another thing named does nothing to what was asked about', () => {
    const [subject, other] = ['spinach', 'salmon'].map((word) =>
      living.find(({ name }) => name.includes(word)),
    );
    const { say } = talk();
    say('confirm', { intent: 'finish', slots: { how: 'used', item: named(subject!) } });
    const done = changedItems(say('act', { intent: 'finish', slots: { how: 'used', item: named(other!) } }));
    expect(done).not.toContain(subject!.id);
  });

  test('said of "the other one" is no yes', () => {
    const subject = living.find(({ name }) => name.includes('spinach'))!;
    const { say } = talk();
    say('confirm', { intent: 'finish', slots: { how: 'used', item: named(subject) } });
    const other = { ...itMention, pointer: 'other' as const };
    const done = changedItems(say('act', { intent: 'finish', slots: { how: 'used', item: other } }));
    expect(done).not.toContain(subject.id);
  });
});
