/** "Mark the spinach as used up?" — "yes, chuck it": the deed said back is done to what was asked about, and to nothing else. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import { type Act, type Slots, itMention } from '../../src/understanding/intents.js';
import { clock, itemsIn, named, talkOn } from './decided.js';

const demo = demoKitchen(clock);
const talk = () => talkOn(demo);

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
        const done = itemsIn(say('act', { intent: deed.intent, slots: { ...deed.back, item } }));
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
    const done = itemsIn(say('act', { intent: 'finish', slots: { how: 'used', item: named(other!) } }));
    expect(done).not.toContain(subject!.id);
  });

  test('said of "the other one" is no yes', () => {
    const subject = living.find(({ name }) => name.includes('spinach'))!;
    const { say } = talk();
    say('confirm', { intent: 'finish', slots: { how: 'used', item: named(subject) } });
    const other = { ...itMention, pointer: 'other' as const };
    const done = itemsIn(say('act', { intent: 'finish', slots: { how: 'used', item: other } }));
    expect(done).not.toContain(subject.id);
  });
});
