/** What was said, through the public door: intent, slots, verdict. */
import { describe, expect, it } from 'vitest';
import {
  createUnderstander,
  DESTRUCTIVE_INTENTS,
  type Expectation,
  type Interpretation,
  type Understanding,
} from '../../src/understanding/index.js';
import { createHouseholdNames } from '../../src/understanding/names/index.js';
import { hearing, itemNames, martasNames } from './household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const hear = (text: string | readonly string[], expecting: Expectation = 'anything'): Understanding =>
  understander.understand(
    (typeof text === 'string' ? [text] : text).map((guess) => ({ text: guess })),
    names,
    hearing(expecting),
  );
const best = (understanding: Understanding): Interpretation => {
  const [reading] = understanding.readings;
  if (!reading) throw new Error('nothing understood');
  return reading;
};
const actOf = (text: string, expecting?: Expectation) => best(hear(text, expecting)).acts[0]!;

describe('one request', () => {
  it('finds the record a food stands for', () => {
    const { intent, slots } = actOf('where did I put the mango pickle?');
    expect(intent).toBe('find');
    expect(itemNames(slots.item!.candidates[0]!.id)).toBe('mango pickle');
  });

  it('takes food not met before', () => {
    const { intent, slots } = actOf("how long does tofu keep once it's open");
    expect(intent).toBe('guidance');
    expect(slots.item?.words).toBe('tofu');
  });

  it('shares a batch out over places', () => {
    const { slots } = actOf(
      'put eight tubs of bean chilli, two on the top shelf and six in the chest freezer',
    );
    const [batch] = slots.statements ?? [];
    expect(batch?.amount).toEqual({ value: 8, unit: 'tub' });
    expect(batch?.parts?.map(({ amount, place }) => [amount?.value, place.words])).toEqual([
      [2, 'top shelf'],
      [6, 'chest freezer'],
    ]);
  });

  it('gives each thing its own amount', () => {
    const [act] = best(hear('I bought two pints of milk and six eggs')).acts;
    expect(
      act?.slots.statements?.map(({ deed, thing, amount }) => [deed, thing?.words, amount?.value]),
    ).toEqual([
      ['bought', 'milk', 2],
      ['bought', 'eggs', 6],
    ]);
  });

  it('reads past dates as past and plans as future', () => {
    expect(actOf('the stew was made on friday').slots.statements?.[0]?.dates?.made).toMatchObject({
      day: '2026-05-08',
    });
    expect(actOf('thaw the chicken for tomorrow night').slots.when).toMatchObject({ day: '2026-05-15' });
  });

  it('tells why food was thrown out', () => {
    expect(actOf('throw away the sour cream, it smells bad').slots).toMatchObject({
      how: 'thrown out',
      reason: 'smell',
    });
  });
});

describe('two requests in one breath', () => {
  it('keeps their order', () => {
    const { acts } = best(hear("put the soup on the second shelf and tell me what's old"));
    expect(acts.map(({ intent }) => intent)).toEqual(['put-away', 'use-first']);
  });

  it('adds to and takes from the list', () => {
    const { acts } = best(hear('take bread off my shopping list and add milk'));
    expect(acts.map(({ intent, slots }) => [intent, slots.item?.words])).toEqual([
      ['buy-remove', 'bread'],
      ['buy-add', 'milk'],
    ]);
  });
});

describe('answers to what was asked', () => {
  it.each<[Expectation, string, object]>([
    ['place', 'the second shelf', { place: { words: 'second shelf' } }],
    ['amount', 'about three tubs', { amount: { value: 3, unit: 'tub' } }],
    ['date', 'last sunday', { when: { day: '2026-05-10' } }],
    ['date', "I don't know", { when: 'unknown' }],
    ['method', 'in the microwave', { method: 'microwave' }],
    ['spelling', 'h a r i s s a', { spelled: 'harissa' }],
    ['count-answer', 'it is gone', { asked: 'gone' }],
  ])('%s: %s', (expecting, text, slots) => {
    const act = actOf(text, expecting);
    expect(act.intent).toBe('answer');
    expect(act.slots).toMatchObject(slots);
  });

  it('lets a new request through while a question is open', () => {
    expect(actOf("what's in the chest freezer", 'date').intent).toBe('find');
  });
});

describe('guesses of a recogniser', () => {
  it('takes the guess that makes sense in this kitchen', () => {
    const reading = best(hear(['how old is the saucer', 'how old is the salsa']));
    expect(reading.acts[0]).toMatchObject({ intent: 'how-old' });
    expect(itemNames(reading.acts[0]!.slots.item!.candidates[0]!.id)).toBe('tomato salsa');
  });

  it('makes sense of a misheard first word', () => {
    const understanding = hear('but fifteen meatballs in the third basket');
    const [told] = best(understanding).acts[0]?.slots.statements ?? [];
    expect(told).toMatchObject({ deed: 'stored', thing: { words: 'meatballs' }, amount: { value: 15 } });
    const finish = hear('throughout the spinach');
    expect(best(finish).acts[0]).toMatchObject({ intent: 'finish' });
  });

  it('is pure', () => {
    expect(hear('freeze the chicken thighs')).toEqual(hear('freeze the chicken thighs'));
  });
});

describe('what is not ours', () => {
  it.each([
    "what's the weather like in boston",
    'how long does a flight to chicago take',
    'when does my credit card expire',
    'how many calories are in an apple',
    'play some jazz',
    'set an alarm for six am',
    'give me a recipe for lasagna',
    'how old are you',
    'call my sister',
    'can i use margarine instead of butter',
  ])('declines: %s', (text) => {
    expect(hear(text).verdict).toBe('out-of-scope');
  });

  it.each(['', '   ', '!?', '🙂'])('hears nothing in %j', (text) => {
    expect(hear(text)).toEqual({ readings: [], margin: 1, verdict: 'nothing-heard' });
  });

  it('stands very long, odd and hostile input', () => {
    for (const text of ['milk '.repeat(10_000), '<script>&"\'', '\u202Eklim eht', '__proto__ constructor'])
      expect(['out-of-scope', 'ask-again', 'nothing-heard', 'confirm', 'act']).toContain(hear(text).verdict);
  });
});

describe('harm', () => {
  it('never acts at once on a thing that hardly fits what was heard', () => {
    const sounds = [
      'throw out the celery',
      'throw out the salary',
      'finish the current',
      'finish the hammers',
    ];
    for (const text of sounds) {
      const understanding = hear(text);
      const [reading] = understanding.readings;
      const fit = reading?.acts[0]?.slots.item?.candidates[0]?.fit ?? 1;
      if (reading && DESTRUCTIVE_INTENTS.has(reading.acts[0]!.intent) && fit < 0.6)
        expect(understanding.verdict).not.toBe('act');
    }
    expect(hear('finish the hammers').verdict).not.toBe('act');
  });

  it('works for a kitchen that holds nothing yet', () => {
    const empty = createHouseholdNames('en-US');
    const understanding = understander.understand([{ text: 'i bought milk and eggs' }], empty, hearing());
    const statements = understanding.readings[0]?.acts[0]?.slots.statements;
    expect(statements?.map(({ deed, thing }) => [deed, thing?.words])).toEqual([
      ['bought', 'milk'],
      ['bought', 'eggs'],
    ]);
  });
});
