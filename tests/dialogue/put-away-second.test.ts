/** A second of one name is recorded only when it is said to be put there or to be more, or after a yes. */
import { expect, it } from 'vitest';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import { type Slots, emptyMention } from '../../src/understanding/intents.js';
import { clock, talkOn } from './decided.js';

const kitchen = demoKitchen(clock);
const there = livingItems(kitchen).find(({ name }) => name === 'carrot soup')!;
const place = {
  words: 'counter',
  candidates: [{ id: 'place.counter', fit: 1 }],
  pointer: null,
  spot: null,
} as const;
const slots: Slots = { item: { ...emptyMention, words: there.name }, place, stands: true };
const ops = (outcome: { changes: readonly { ops: readonly { kind: string; before: unknown }[] }[] }) =>
  outcome.changes.flatMap((change) => change.ops).filter(({ kind }) => kind === 'item');

it('is asked, and a yes records it', () => {
  const talk = talkOn(kitchen);
  expect(ops(talk.say('act', { intent: 'put-away', slots }))).toEqual([]);
  const made = ops(talk.say('act', { intent: 'yes', slots: {} }));
  expect(made.map(({ before }) => before)).toEqual([null]);
});

it('is asked, and a no moves the one there is', () => {
  const talk = talkOn(kitchen);
  talk.say('act', { intent: 'put-away', slots });
  const moved = ops(talk.say('act', { intent: 'no', slots: {} }));
  expect(moved.length).toBeGreaterThan(0);
  expect(moved.every(({ before }) => before !== null)).toBe(true);
});

it('is recorded at once when it was put there', () => {
  const put: Slots = { item: { ...emptyMention, words: there.name }, place };
  const made = ops(talkOn(kitchen).say('act', { intent: 'put-away', slots: put }));
  expect(made.map(({ before }) => before)).toEqual([null]);
});

it('is recorded at once when it is another', () => {
  const another: Slots = { ...slots, item: { ...emptyMention, words: there.name, pointer: 'another' } };
  const made = ops(talkOn(kitchen).say('act', { intent: 'put-away', slots: another }));
  expect(made.map(({ before }) => before)).toEqual([null]);
});
