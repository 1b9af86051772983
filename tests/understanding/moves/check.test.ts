/** While a place is checked: what answers, what ends it, and what is neither. */
import { describe, expect, it } from 'vitest';
import { createUnderstander } from '../../../src/understanding/index.js';
import { hearing, martasNames } from '../household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const heard = (text: string) =>
  understander.understand([{ text }], names, { ...hearing('count-answer'), checking: true });
const actsOf = (text: string) => heard(text).readings[0]?.acts ?? [];

describe('an answer to the check', () => {
  it.each(['no', 'nope', "it's gone", "that's all gone", 'we ate it', 'used up', 'absolutely not'])(
    'takes off: %s',
    (text) => {
      const [act] = actsOf(text);
      const seen = act?.slots.findings?.map((finding) => finding.seen);
      expect(act?.intent === 'no' || act?.slots.asked === 'gone' || seen?.includes('gone')).toBe(true);
    },
  );

  it.each([
    'Gone?',
    'Gone? What have you put down as gone, I never said that!',
    'what have you put down as gone i never said that',
    'I never said the bean chilli was gone',
    'no, I did not say it was gone',
    'is it gone',
    'who says it has gone',
    'no no love you told me that one was used up last week not me',
  ])('is none, and takes nothing off: %s', (text) => {
    const { readings, settles, verdict } = heard(text);
    const acts = verdict === 'out-of-scope' ? [] : (readings[0]?.acts ?? []);
    expect(settles).toBeUndefined();
    for (const { intent, slots } of acts) {
      expect(['no', 'yes', 'cancel', 'maybe', 'next', 'finish']).not.toContain(intent);
      expect(slots.asked).not.toBe('gone');
      expect(slots.findings ?? []).toEqual([]);
    }
  });
});

describe('a wish to stop', () => {
  it.each([
    'stop',
    'No, stop, stop.',
    'Just stop asking.',
    "I don't want to go through it all, love!",
    'oh give it a rest',
    "I've had enough of this",
    'leave me alone will you',
    'I am fed up with this, leave me alone',
    'please stop asking me about every single thing',
  ])('ends it: %s', (text) => {
    expect(actsOf(text)).toEqual([{ intent: 'end-session', slots: { asked: 'stopped' } }]);
  });

  it.each(['never mind', 'skip that one', 'never mind go on'])('is of one thing alone: %s', (text) => {
    expect(actsOf(text)[0]?.intent).not.toBe('end-session');
    expect(heard(text).verdict).toBe('act');
  });
});

describe('a check', () => {
  const free = (text: string) => understander.understand([{ text }], names, hearing('anything')).readings[0];
  it.each(['check the fridge', "let's go through the chest freezer", 'take stock of the pantry'])(
    'begins where it is asked for: %s',
    (text) => {
      expect(free(text)?.acts[0]?.intent).toBe('start-count');
    },
  );
  it.each(["what's in the fridge I shouldn't be eating now?", "what's in the fridge that is off"])(
    'does not for a question: %s',
    (text) => {
      expect(free(text)?.acts.map(({ intent }) => intent) ?? []).not.toContain('start-count');
    },
  );
});
