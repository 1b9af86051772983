/** `decide` through its own door: meanings in, changes and an answer out. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decide, startConversation } from '../../src/dialogue/index.js';
import type { Conversation, Outcome, Surroundings } from '../../src/dialogue/index.js';
import { applyChange, demoKitchen } from '../../src/kitchen/index.js';
import type { JournalEntry, Kitchen } from '../../src/kitchen/model.js';
import {
  emptyMention,
  type Act,
  type Candidate,
  type Intent,
  type Mention,
  type Slots,
  type Understood,
} from '../../src/understanding/intents.js';
import { createVoice } from '../../src/speech/index.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const demo = demoKitchen(clock);
const voice = createVoice('en-US');

const item = (words: string, ...ids: string[]): Mention => ({
  ...emptyMention,
  words,
  candidates: ids.map((id): Candidate => ({ id, fit: 1 })),
});
const place = (words: string, ...ids: string[]) => ({
  words,
  candidates: ids.map((id) => ({ id, fit: 1 })),
  pointer: null,
  spot: null,
});

const meaning = (verdict: Understood['verdict'], ...acts: Act[]): Understood => ({
  readings: acts.length > 0 ? [{ acts, confidence: verdict === 'confirm' ? 0.5 : 0.95 }] : [],
  margin: 1,
  verdict,
});
const act = (intent: Intent, slots: Slots = {}): Act => ({ intent, slots });

/** A talk on a kitchen that keeps what was done. */
const talk = (kitchen: Kitchen = demo) => {
  let here = kitchen;
  let conversation: Conversation = startConversation();
  const journal: JournalEntry[] = [];
  let ids = 0;
  const around = (): Surroundings => ({
    kitchen: here,
    journal: [...journal],
    clock,
    speaker: { personId: 'person.marta', deviceId: 'd' },
    newId: () => `new-${(ids += 1)}`,
  });
  const say = (understanding: Understood): Outcome & { text: string } => {
    const outcome = decide(conversation, { understanding, touched: null, cutAt: null }, around());
    for (const change of outcome.changes) {
      here = applyChange(here, change);
      const id = `entry-${journal.length}`;
      journal.unshift({
        ...change,
        id,
        version: here.version,
        at: clock.now,
        personId: 'person.marta',
        deviceId: 'd',
        turnId: null,
      });
    }
    const spoken = voice.render(outcome.answer, outcome.conversation.listener, {
      clock,
      locale: 'en-US',
      measures: 'us',
    });
    // As a store keeps it: nothing but JSON survives.
    conversation = JSON.parse(
      JSON.stringify({ ...outcome.conversation, lastSentences: spoken.sentences }),
    ) as Conversation;
    return { ...outcome, text: spoken.text };
  };
  return { say, kitchen: () => here, conversation: () => conversation, around };
};

describe('a turn', () => {
  test('is pure: the same arguments give the same outcome', () => {
    const understanding = meaning(
      'act',
      act('put-away', { item: item('fish pie'), place: place('door', 'place.fridge.door') }),
    );
    const once = () => {
      let ids = 0;
      return decide(
        startConversation(),
        { understanding, touched: null, cutAt: null },
        {
          kitchen: demo,
          journal: [],
          clock,
          speaker: { personId: null, deviceId: null },
          newId: () => `n${(ids += 1)}`,
        },
      );
    };
    expect(once()).toEqual(once());
    expect(once().changes).toHaveLength(1);
  });

  test('asks for one thing at a time, and a bare answer fills it', () => {
    const { say } = talk();
    expect(say(meaning('act', act('put-away'))).text).toBe('What are you putting away?');
    expect(say(meaning('act', act('answer', { words: 'fish pie' }))).text).toBe(
      'Where does the fish pie go?',
    );
    const done = say(meaning('act', act('answer', { place: place('door', 'place.fridge.door') })));
    expect(done.changes.map(({ verb, about }) => [verb, ...about])).toEqual([['put away', 'fish pie']]);
    expect(done.conversation.expecting).toBe('detail');
  });

  test('never puts the same question three times, and then lets go', () => {
    const { say } = talk();
    const asked = [say(meaning('act', act('move', { item: item('butter', 'item.butter') }))).text];
    for (let times = 0; times < 3; times += 1) asked.push(say(meaning('ask-again')).text);
    const questions = asked.map((text) => text.split(/(?<=[.?!])\s/).at(-1));
    for (const question of questions) {
      expect(questions.filter((other) => other === question).length).toBeLessThan(3);
    }
    expect(asked.at(-1)).toContain('I leave it');
  });

  test('changes nothing on a doubtful hearing before a yes', () => {
    const { say } = talk();
    const finish = act('finish', { item: item('milk', 'item.milk') });
    const asked = say(meaning('confirm', finish));
    expect(asked.changes).toEqual([]);
    expect(asked.conversation.expecting).toBe('yes-no');
    expect(say(meaning('act', act('no'))).changes).toEqual([]);
    say(meaning('confirm', finish));
    expect(say(meaning('act', act('yes'))).changes.map(({ verb }) => verb)).toEqual(['finished']);
  });

  test('asks before several things are finished at once, however clear the hearing', () => {
    const { say } = talk();
    say(meaning('act', act('find', { item: item('bean chilli', 'item.bean-chilli') })));
    const all = say(meaning('act', act('finish', { item: { ...emptyMention, pointer: 'them' } })));
    expect(all.changes).toEqual([]);
    expect(all.conversation.expecting).toBe('yes-no');
  });

  test('takes back what it did, exactly', () => {
    const { say, kitchen } = talk();
    say(meaning('act', act('finish', { item: item('sorghum malt drink', 'item.sorghum') })));
    say(meaning('act', act('no')));
    const undone = say(meaning('act', act('undo')));
    expect(undone.text).toContain('sorghum malt drink is back');
    expect(new Map(kitchen().items)).toEqual(demo.items);
    expect(kitchen().markers).toEqual(demo.markers);
  });

  test('declines what is not ours without a change', () => {
    const { say } = talk();
    const replies = [1, 2, 3].map(() => say(meaning('out-of-scope')));
    expect(new Set(replies.map(({ text }) => text)).size).toBe(3);
    expect(replies.flatMap(({ changes }) => changes)).toEqual([]);
  });
});

const anyAct = fc.oneof(
  fc
    .constantFrom(
      'yes',
      'no',
      'cancel',
      'repeat',
      'help',
      'undo',
      'redo',
      'next',
      'back',
      'stop',
      'continue',
      'use-first',
      'summary',
      'why',
      'shorter',
      'buy-read',
    )
    .map((intent) => act(intent as Intent)),
  fc
    .constantFrom(
      'finish',
      'find',
      'how-old',
      'keeps',
      'reheat',
      'take',
      'open',
      'freeze',
      'tell-about',
      'move',
      'buy-add',
    )
    .chain((intent) =>
      fc
        .constantFrom(...[...demo.items.values()].filter(({ gone }) => !gone))
        .map(({ id, name }) => act(intent as Intent, { item: item(name, id) })),
    ),
  fc.constantFrom(...demo.places.values()).map(({ id, name }) => act('answer', { place: place(name, id) })),
);

describe('any talk', () => {
  test('is said in words, keeps markers on one item each, and survives storage', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyAct, fc.constantFrom('act', 'confirm', 'ask-again')), { maxLength: 12 }),
        (turns) => {
          const { say, kitchen } = talk();
          for (const [one, verdict] of turns) {
            const { text } = say(
              verdict === 'ask-again' ? meaning('ask-again') : meaning(verdict as 'act', one),
            );
            expect(text).not.toMatch(/undefined|\[object|\d/);
            const worn = [...kitchen().items.values()].flatMap(({ gone, markerId }) =>
              gone || !markerId ? [] : [markerId],
            );
            expect(new Set(worn).size).toBe(worn.length);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('a doubtful hearing denied', () => {
  const milk = { item: item('milk', 'item.milk') };
  const doubtful: Understood = {
    readings: [
      { acts: [act('finish', milk)], confidence: 0.5 },
      { acts: [act('find', milk)], confidence: 0.4 },
      {
        acts: [act('freeze', { ...milk, place: place('chest freezer', 'place.chest-freezer') })],
        confidence: 0.3,
      },
      { acts: [act('open', milk)], confidence: 0.2 },
    ],
    margin: 0.1,
    verdict: 'confirm',
  };
  const no = meaning('act', act('no'));

  test('once is left; twice, the next reading is offered; then it is to be said otherwise', () => {
    const { say } = talk();
    const milkId = [...demo.items.values()].find(({ name }) => name === 'milk')!.id;
    const named = JSON.parse(JSON.stringify(doubtful).replaceAll('item.milk', milkId)) as Understood;
    const two = { ...named, readings: [named.readings[0]!, named.readings[3]!] };
    const asked = say(two);
    expect(asked.changes).toEqual([]);
    expect(say(no).text).toBe('All right, nothing changed.');
    expect(say(two).text).toBe(asked.text);
    const second = say(no);
    expect(second.text).toBe('Then did you mean this? Note the milk as opened? Yes or no.');
    expect(second.changes).toEqual([]);
    expect(say(no).text).toBe('Then I misheard. Say it another way, with its name or place.');
    say(two);
    say(no);
    say(two);
    say(no);
    expect(say(meaning('act', act('yes'))).changes.map(({ verb }) => verb)).toEqual(['opened']);
  });
});
