/** What is told is put together from its parts: things, amounts, places, dates and facts in any order. */
import { describe, expect, it } from 'vitest';
import { createUnderstander, type Act } from '../../../src/understanding/index.js';
import { hearing, martasNames } from '../household.js';

const names = martasNames();
const understander = createUnderstander('en-US');
const hear = (text: string) => understander.understand([{ text }], names, hearing());
const toldIn = (text: string) => {
  const [act] = hear(text).readings[0]?.acts ?? ([] as Act[]);
  return act?.slots.statements ?? [];
};
const words = (text: string) => toldIn(text).map(({ thing }) => thing?.words);

describe('what is told in one breath', () => {
  it('gives each thing its own amount and place, wherever they are said', () => {
    const told = toldIn(
      'two bags of rye flour and three tins of okra the flour is in the pantry and the okra on the counter',
    );
    expect(told.map(({ thing, amount }) => [thing?.words, amount?.value])).toEqual([
      ['rye flour', 2],
      ['okra', 3],
    ]);
    expect(told.map(({ place }) => place?.words)).toEqual(['pantry', 'counter']);
  });

  it('shares a batch out, and knows what the others are', () => {
    const [batch] = toldIn(
      'I made ten tubs of okra stew four are in the fridge and the rest are in the chest freezer',
    );
    expect(batch).toMatchObject({ deed: 'made', amount: { value: 10, unit: 'tub' }, maker: 'me' });
    expect(batch?.parts?.map(({ amount, share }) => amount?.value ?? share)).toEqual([4, 'rest']);
  });

  it('keeps the mended word of a slip', () => {
    expect(toldIn('okra stew two no three tubs in the fridge')[0]?.amount).toMatchObject({ value: 3 });
    expect(toldIn('okra stew three tubs in the fridge Dele made it wait no I made it')[0]?.maker).toBe('me');
  });

  it('takes facts in any order, and what is in it as its allergen', () => {
    const [told] = toldIn('okra stew two tubs second shelf made yesterday celery in it');
    expect(told).toMatchObject({ amount: { value: 2 }, contains: ['celery'] });
    expect(told?.dates?.made).toBeDefined();
  });

  it('tells two foods that are gone in two ways', () => {
    const told = toldIn('the hummus is finished and that was the last of the sour cream');
    expect(told.map(({ deed }) => deed)).toEqual(['finished', 'finished']);
    expect(words('the hummus is finished and that was the last of the sour cream')).toEqual([
      'hummus',
      'sour cream',
    ]);
  });
});

describe('what is not told', () => {
  it.each([
    'if I leave the okra stew on the counter for an hour',
    'did I put the okra stew in the fridge',
    "I haven't put the okra stew in the fridge",
    'she says the hummus is finished',
    'I was going to put the okra stew in the fridge',
    'where did I put the two tubs of okra stew',
  ])('%s', (text) => {
    expect(toldIn(text)).toEqual([]);
  });

  it('says what was left over, and asks before it is done', () => {
    const { readings, verdict } = hear(
      'two tubs of okra stew in the fridge with a flumper and Tuesday grindle',
    );
    const [act] = readings[0]?.acts ?? [];
    expect(act?.intent === 'tell' && verdict === 'act').toBe(false);
  });

  it('keeps that nothing is in it only after a yes', () => {
    expect(hear('two tubs of okra stew in the fridge no nuts in it').verdict).toBe('confirm');
  });
});
