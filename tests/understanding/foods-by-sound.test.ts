/** Foods that nobody here owns, heard as other words. */
import { describe, expect, it } from 'vitest';
import { createUnderstander } from '../../src/understanding/index.js';
import { hearing, martasNames } from './household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const heard = (text: string) => {
  const { readings, verdict } = understander.understand([{ text }], names, hearing());
  const act = readings[0]?.acts[0];
  return { verdict, intent: act?.intent, words: act?.slots.item?.words };
};

describe('a food that was heard as another word', () => {
  it.each([
    ['how long do leaks keep', 'guidance', 'leeks'],
    ['what temperature for chikin', 'cook-temperature', 'chicken'],
    ['what temperature for sammon', 'cook-temperature', 'salmon'],
    ['put time on the list', 'buy-add', 'thyme'],
    ['put brocolly on the list', 'buy-add', 'broccoli'],
    ['how long do muscles keep in the fridge', 'guidance', 'mussels'],
    ['do we have any leaks', 'find', 'leeks'],
  ])('%s', (text, intent, words) => expect(heard(text)).toMatchObject({ intent, words }));
});

describe('a word that is no food', () => {
  it.each([
    ['put flowers on the list', 'buy-add', 'flowers'],
    ['put harissa on the list', 'buy-add', 'harissa'],
    ['put gochujang on the list', 'buy-add', 'gochujang'],
    ['where is the egusi soup', 'find', 'egusi soup'],
  ])('stays what it is: %s', (text, intent, words) => expect(heard(text)).toMatchObject({ intent, words }));

  it.each(['what time is it in lagos', 'how long is the flight', 'my knee leaks'])(
    'makes nothing of ours: %s',
    (text) => expect(heard(text).verdict).toBe('out-of-scope'),
  );
});
