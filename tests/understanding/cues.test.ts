import { describe, expect, it } from 'vitest';
import { CHANGING_INTENTS, createUnderstander } from '../../src/understanding/index.js';
import { gathered } from '../../src/understanding/cues.js';
import { hearing, martasNames } from './household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const hear = (text: string, expecting: Parameters<typeof hearing>[0] = 'anything') =>
  understander.understand([{ text }], names, hearing(expecting));

describe('the talk itself in wording that no rule covers', () => {
  it.each([
    ['that was really useful', 'thanks'],
    ['i do not believe so', 'no'],
    ['i really could not say either way', 'maybe'],
    ['i am going to bed now, speak soon', 'goodbye'],
    ['i was not paying attention, what was that', 'repeat'],
  ])('hears %s', (text, intent) => {
    const { readings, verdict } = hear(text);
    expect(verdict).toBe('act');
    expect(readings[0]?.acts.map((act) => act.intent)).toEqual([intent]);
  });

  it('does not settle an open question by cue words alone', () => {
    const text = 'no question about it my good fellow';
    expect(hear(text).readings[0]?.acts[0]?.intent).toBe('yes');
    expect(hear(text, 'yes-no').verdict).not.toBe('act');
  });

  it('never speaks for a change', () => {
    const changing: ReadonlySet<string> = new Set(CHANGING_INTENTS);
    const words = [
      'scrap',
      'that',
      'stop',
      'thanks',
      'no',
      'maybe',
      'again',
      'slower',
      'hello',
      'bye',
      'yes',
    ];
    for (const a of words)
      for (const b of words)
        for (const { intent } of gathered([a, b], 'en')) expect(changing.has(intent)).toBe(false);
  });
});

describe('what was caught of a sentence that made no sense', () => {
  it('asks again about a thing of this kitchen', () => {
    const { verdict, caught } = hear('zig the lentil stew wobble freezer');
    expect(verdict).toBe('ask-again');
    expect(caught?.map(({ kind }) => kind)).toContain('item');
    expect(caught?.find(({ kind }) => kind === 'item')).toMatchObject({
      id: 'item.lentil-stew',
      words: 'lentil stew',
    });
  });

  it.each(['what is the capital of peru', 'can i use margarine instead of butter'])(
    'declines: %s',
    (text) => {
      expect(hear(text)).toMatchObject({ verdict: 'out-of-scope' });
      expect(hear(text).caught).toBeUndefined();
    },
  );
});

it('asks before losing something on a hedged word', () => {
  expect(hear('the lentil stew is gone').verdict).toBe('act');
  const hedged = hear('i think the lentil stew is gone');
  expect(hedged).toMatchObject({ verdict: 'confirm', hedged: true });
});
