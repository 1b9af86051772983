/** Devices by voice, where the hearing is in doubt: nothing is done, and the question names the device. */
import { expect, test } from 'vitest';
import type { Surroundings } from '../../src/dialogue/index.js';
import { decide, startConversation } from '../../src/dialogue/index.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import { createVoice } from '../../src/speech/index.js';
import type { Act, Understood } from '../../src/understanding/intents.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const kitchen = demoKitchen(clock);
const voice = createVoice('en-US');
let ids = 0;
const around: Surroundings = {
  kitchen,
  journal: [],
  clock,
  speaker: { personId: null, deviceId: 'd1', owner: true },
  devices: [
    { id: 'd1', name: 'kitchen speaker', owner: true, lastSeenAt: null },
    { id: 'd2', name: 'hall speaker', owner: false, lastSeenAt: null },
  ],
  knockedOn: { code: '12345678', found: { name: 'porch speaker' } },
  newId: () => `n${(ids += 1)}`,
};
const heard = (verdict: Understood['verdict'], act: Act) => ({
  understanding: {
    readings: [{ acts: [act], confidence: 0.5 }],
    margin: 1,
    verdict,
  },
  touched: null,
  cutAt: null,
});

test.each<[Act, RegExp, object]>([
  [
    { intent: 'let-in', slots: { code: '12345678' } },
    /^Let in the porch speaker\? /,
    { kind: 'let-in', code: '12345678' },
  ],
  [
    { intent: 'rename-device', slots: { device: 'hall speaker', words: 'door speaker' } },
    /^Call the hall speaker the door speaker /,
    { kind: 'rename-device', deviceId: 'd2', name: 'door speaker' },
  ],
])('%o', (act, question, effect) => {
  const asked = decide(startConversation(), heard('confirm', act), around);
  expect(asked.effects).toEqual([]);
  const { text } = voice.render(asked.answer, asked.conversation.listener, {
    clock,
    locale: 'en-US',
    measures: 'us',
  });
  expect(text).toMatch(question);
  const no = decide(asked.conversation, heard('act', { intent: 'no', slots: {} }), around);
  expect(no.effects).toEqual([]);
  const yes = decide(asked.conversation, heard('act', { intent: 'yes', slots: {} }), around);
  expect(yes.effects).toMatchObject([effect]);
});
