/** Requests in any wording: what they are about is told by a word or two, their values stand anywhere. */
import { describe, expect, it } from 'vitest';
import { createUnderstander, type Act } from '../../../src/understanding/index.js';
import { hearing, martasNames } from '../household.js';

const names = martasNames();
const understander = createUnderstander('en-US');
const clocks = [
  { kind: 'timer' as const, label: 'rice' },
  { kind: 'timer' as const, label: 'pasta' },
  { kind: 'reminder' as const, label: 'call the dentist' },
];
const hear = (text: string) => understander.understand([{ text }], names, { ...hearing(), clocks });
const actsOf = (text: string): readonly Act[] => hear(text).readings[0]?.acts ?? [];

describe('timers', () => {
  it('sets several in one breath, each with the name beside it', () => {
    const acts = actsOf('six minutes for the eggs and ten for the beans');
    expect(acts.map(({ slots }) => [slots.duration, slots.item?.words])).toEqual([
      [360, 'eggs'],
      [600, 'beans'],
    ]);
  });

  it('takes the last of two lengths where one put the other right', () => {
    const [act, ...more] = actsOf('timer eight minutes for the beans sorry make it ten');
    expect(act).toMatchObject({ intent: 'set-timer', slots: { duration: 600 } });
    expect(more).toEqual([]);
  });

  it('sets another one with its name before or behind its length', () => {
    for (const text of [
      'put another one on called lentils for twenty-three minutes',
      "set another one for the lentils, say twenty-three minutes, and holler when that's up",
      "set one more for twenty-three minutes, that's the lentils",
    ])
      expect(
        actsOf(text).map(({ intent, slots }) => [intent, slots.duration, slots.item?.words]),
        text,
      ).toEqual([['set-timer', 1380, 'lentils']]);
  });

  it('stops none that is not to be stopped, and none that is only counted', () => {
    expect(actsOf("no ma'am, don't you cancel nothing, that's the rice cooking").at(-1)).toEqual({
      intent: 'timers',
      slots: { negated: true },
    });
    expect(actsOf("no, now listen, there's just the one timer then").at(-1)?.intent).toBe('timers');
    expect(actsOf("don't touch the rice timer, cancel the pasta one")).toEqual([
      { intent: 'cancel-timer', slots: { words: 'pasta' } },
    ]);
  });

  it('takes how the steps are to be read out for no deed', () => {
    const text =
      "I reckon I'll heat up some of that lentil stew for supper, in the microwave, so you walk me through it real slow, one thing at a time";
    expect(actsOf(text)[0]).toMatchObject({
      intent: 'reheat',
      slots: { item: { words: 'lentil stew' }, method: 'microwave' },
    });
    expect(actsOf('cancel the pasta timer and leave the rice')).toEqual([
      { intent: 'cancel-timer', slots: { words: 'pasta' } },
    ]);
  });

  it('hears steps that are followed before and behind a timer', () => {
    const steps = {
      title: 'lentil stew in the microwave',
      dish: { id: 'item-lentil-stew', name: 'lentil stew' },
      texts: ['put one portion in the deep bowl', 'cover it with the vented lid', 'heat it for two minutes'],
      at: 1,
      waiting: false,
      held: false,
    };
    const actsIn = (text: string) =>
      understander
        .understand([{ text }], names, { ...hearing('step'), clocks, steps })
        .readings[0]?.acts.map(({ intent }) => intent);
    expect(actsIn("set another one called lentils for ten minutes, and what's next")).toEqual([
      'set-timer',
      'next',
    ]);
    expect(actsIn('next, and set me a timer for four minutes')).toEqual(['next', 'set-timer']);
    expect(
      actsIn("lid's on, it's going round for two minutes, and set another one for twenty for the okra"),
    ).toEqual(['done', 'set-timer', 'set-timer']);
    expect(actsIn('are both of those timers running')).toEqual(['timers']);
  });

  it('stops the one named, and not the one to be left', () => {
    expect(actsOf('cut off the rice one but leave me the pasta')).toEqual([
      { intent: 'cancel-timer', slots: { words: 'rice' } },
    ]);
  });

  it('changes one that is running by its name', () => {
    expect(actsOf('give the rice another two minutes')[0]).toMatchObject({
      intent: 'change-timer',
      slots: { duration: 120, words: 'rice' },
    });
    expect(actsOf('knock a minute off the pasta')[0]?.slots).toMatchObject({ duration: 60, negated: true });
  });

  it('asks first where a figure or a denial is left over', () => {
    expect(hear('set a timer for ten minutes not the rice').verdict).not.toBe('act');
    expect(hear('set a timer for the beans ten minutes').verdict).toBe('act');
  });
});

describe('reminders', () => {
  it('knows the hour from what it is about, in any order', () => {
    expect(actsOf('tomorrow ten in the morning remember me to take out chicken broth')[0]).toMatchObject({
      intent: 'set-reminder',
      slots: { words: 'take out chicken broth', time: '10:00' },
    });
    expect(actsOf('give us a nudge at eight to put the bins out')[0]?.slots).toMatchObject({
      words: 'put the bins out',
      time: '08:00',
    });
  });

  it('puts off one that is set', () => {
    expect(actsOf('push the dentist thing back to ten thirty')[0]).toMatchObject({
      intent: 'change-reminder',
      slots: { words: 'call the dentist', time: '22:30' },
    });
  });

  it('is none where something is asked', () => {
    expect(actsOf('remind me where the rice is').map(({ intent }) => intent)).not.toContain('set-reminder');
  });
});

describe('settings', () => {
  it.each([
    ['please hush between ten at night and seven in the morning', { setting: 'quiet', time: '22:00' }],
    ['the micro is nine hundred watts by the way', { setting: 'watts', number: 900 }],
    ['go back to your normal speed', { setting: 'rate', words: 'usual' }],
    ['keep your answers to the point', { setting: 'length', words: 'short' }],
    ['do not be so short from now on', { setting: 'length', words: 'full' }],
  ])('%s', (text, slots) => {
    expect(actsOf(text)[0]).toMatchObject({ intent: 'set-household', slots });
  });

  it('takes no food for a setting', () => {
    expect(actsOf('put the salt in the microwave from now on')[0]?.intent).not.toBe('set-household');
  });
});

describe('what dots mean', () => {
  it('asks and tells', () => {
    expect(actsOf('remind me what three dots is again')[0]).toMatchObject({
      intent: 'markers',
      slots: { dots: 3 },
    });
    expect(actsOf('two dots is not for Dele any more make it mean low salt')[0]).toMatchObject({
      intent: 'define-dots',
      slots: { dots: 2, words: 'low salt' },
    });
  });
});

describe('what puts right', () => {
  it('takes what is said instead of what is denied, whichever comes first', () => {
    expect(actsOf('no not the pantry the fridge same shelf though')[0]).toMatchObject({
      intent: 'correct',
      slots: { place: { words: 'fridge' }, asked: 'same-part' },
    });
    expect(actsOf('flour like you bake with not a flower')[0]).toMatchObject({
      intent: 'correct',
      slots: { item: { words: 'flour' } },
    });
  });

  it('takes the last figure, and no reason given before it', () => {
    expect(
      actsOf("hang on there's one more hiding behind it so make that three")[0]?.slots.amount?.value,
    ).toBe(3);
    expect(actsOf("yep that's right except it's two")[0]).toMatchObject({
      intent: 'correct',
      slots: { amount: { value: 2 } },
    });
  });

  it('is none where something is asked or supposed', () => {
    for (const text of ['what if it is not the pantry but the fridge', 'is it in the pantry not the fridge'])
      expect(actsOf(text).map(({ intent }) => intent)).not.toContain('correct');
  });

  it('takes several deeds back, and the taking back', () => {
    expect(actsOf("no I didn't do any of that take both of them back")[0]).toEqual({
      intent: 'undo',
      slots: { number: 2 },
    });
    expect(actsOf('no hang on I was right the first time')[0]?.intent).toBe('redo');
  });
});

describe('matters of the kitchen', () => {
  it.each([
    ['how do I find out what is in a jar', 'help', { words: 'touch' }],
    ['the hummus is in there somewhere do I have to dig for it', 'how-to-reach', {}],
    ['do I have to defrost the turkey first', 'thaw-plan', { asked: 'needed' }],
    ['if I take the turkey out on friday when will it be thawed', 'thaw-plan', { asked: 'ready' }],
    ['if I leave the hummus out what happens', 'guidance', { guidance: { asked: 'out', mood: 'supposed' } }],
    ['I left the hummus on the counter two hours and it is sweltering', 'left-out', { setting: 'hot' }],
    [
      'the mains has been down since two and nobody has opened it',
      'power-cut',
      { doors: 'shut', time: '02:00' },
    ],
  ])('%s', (text, intent, slots) => {
    expect(actsOf(text)[0]).toMatchObject({ intent, slots });
  });

  it('reaches nothing where something else is asked of it', () => {
    expect(actsOf('how do I know the hummus is hot enough').map(({ intent }) => intent)).not.toContain(
      'how-to-reach',
    );
  });
});
