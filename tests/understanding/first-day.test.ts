/** What answers the three questions of the first day, whatever is said around it. */
import { describe, expect, it } from 'vitest';
import type { Act, Expectation, Slots } from '../../src/understanding/intents.js';
import { createHouseholdNames, createUnderstander } from '../../src/understanding/index.js';

const names = createHouseholdNames('en-GB');
const understander = createUnderstander('en-GB');
const answerTo = (text: string, expecting: Expectation): Act | undefined =>
  understander.understand([{ text }], names, {
    now: '2026-05-14T15:00:00.000Z',
    timeZone: 'Europe/London',
    locale: 'en-GB',
    expecting,
  }).readings[0]?.acts[0];
const slotsOf = (text: string, expecting: Expectation): Slots => answerTo(text, expecting)?.slots ?? {};

const wholes = (text: string): string[] =>
  (slotsOf(text, 'wholes').wholes ?? []).map(
    ({ name, parts, none }) =>
      `${none ? 'no ' : ''}${name}${parts.map(({ kind, count }) => ` ${kind} ${count}`).join('')}`,
  );

const eaters = (text: string): string[] => said(text, 'eaters');
const said = (text: string, expecting: Expectation): string[] =>
  (slotsOf(text, expecting).eaters ?? []).map(({ who, name, allergens, nuts, diets, risks, unclear, none }) =>
    [
      ...(none ? ['not'] : []),
      who === 'named' ? name : who,
      ...(who === 'me' && name ? [name] : []),
      ...allergens,
      ...(nuts ? ['nuts?'] : []),
      ...diets,
      ...risks,
      ...(unclear ? ['?'] : []),
    ].join(' '),
  );

describe('what keeps food', () => {
  it.each([
    ['oh dear. right. a fridge, a freezer, a larder', ['fridge', 'freezer', 'larder']],
    ['just a fridge', ['fridge']],
    ["well there's the big fridge in the kitchen and a chest freezer out in the garage", ['fridge', 'garage chest freezer']], // prettier-ignore
    ['a fridge with four shelves, two drawers and a door', ['fridge shelf 4 drawer 2 door 1']],
    ['a fridge and one of those little freezers, and a box for the veg', ['fridge', 'freezer']],
    ['two freezers and a fridge', ['first freezer', 'second freezer', 'fridge']],
    ["I've a fridge freezer and some cupboards", ['fridge', 'freezer', 'cupboard']],
    ['he has a fridge freezer, a chest freezer out in the garage, and a couple of cupboards over the worktop', ['fridge', 'freezer', 'garage chest freezer', 'first cupboard', 'second cupboard']], // prettier-ignore
    ["the fridge, a little freezer underneath it, and the larder by the back door, that's where the tins live", ['fridge', 'freezer', 'larder']], // prettier-ignore
    ["you've lost the chest freezer. a chest freezer in the garage", ['garage chest freezer']],
    ['a freezer and another freezer', ['freezer', 'second freezer']],
    ['the left cupboard and the right cupboard', ['left cupboard', 'right cupboard']],
    ['a fridge but no freezer', ['fridge', 'no freezer']],
    ["I haven't got a freezer, just the fridge and a pantry", ['no freezer', 'fridge', 'pantry']],
  ])('%s', (said, expected) => {
    expect(wholes(said)).toEqual(expected);
  });

  it('is nothing that was put away or asked', () => {
    for (const said of ["the milk's in the fridge", 'where is the butter', 'what do you mean'])
      expect(slotsOf(said, 'wholes').wholes, said).toBeUndefined();
  });

  it('is put right after a no, and denied by a no before it', () => {
    expect(slotsOf('no, two fridges', 'wholes')).toMatchObject({ negated: true });
    expect(wholes('no freezer')).toEqual(['no freezer']);
  });
});

describe('who eats here', () => {
  it.each([
    ["just me and my grandson Jack at weekends, he can't have nuts", ['me', 'Jack nuts?']],
    ['just me', ['me']],
    ['I live alone', ['me']],
    ["my husband Alan, and he's allergic to shellfish and eggs", ['Alan shellfish eggs']],
    ['Sam, my lodger, and my daughter Ann on Sundays', ['Sam', 'Ann']],
    ["me and Ruth. Ruth can't have dairy or sesame", ['me', 'Ruth milk sesame']],
    ["there's my wife, she's coeliac, and our son Tom who's vegan", ['Wife gluten', 'Tom vegan']],
    ["I'm allergic to peanuts", ['me peanuts']],
    ['my neighbour comes round sometimes with a nut allergy', ['Neighbour nuts?']],
    ['my daughter is pregnant', ['Daughter pregnant']],
    ['oh it is only little old me, dear', ['me']],
    ["it's only me now, since Harold went. my name's Joan. and my daughter Susan comes Sundays with the little ones, Ben and Poppy. Ben mustn't have eggs, he comes up in blotches", ['me Joan', 'Susan', 'Ben eggs', 'Poppy']], // prettier-ignore
    ['just me, Dorothy, and my sister Vera', ['me Dorothy', 'Vera']],
    ['there are three of us: me, Mark, and our Ella', ['me', 'Mark', 'Ella']],
    ["I'm on those blood tablets, warfarin, so I'm not to have grapefruit", ['me grapefruit']],
    ["Ben's the one with the eggs", ['Ben eggs']],
    ["our Tom's allergic to nuts, and Mrs Patel comes Tuesdays, she's veggie", ['Tom nuts?', 'Mrs Patel vegetarian']], // prettier-ignore
    ['Lily can have eggs but not peanuts', ['Lily peanuts']],
    ["I'm Kate, then there's Dan, he hates mushrooms, and Lily who's seven and allergic to kiwi and sesame, and the baby, Noah", ['me Kate', 'Dan mushrooms', 'Lily kiwi sesame', 'Noah infant']], // prettier-ignore
    ["my carer Amina comes in mornings but she doesn't eat here", ['not Amina']],
    ["there's my grandson jack, he can't have any of that", ['Jack ?']],
  ])('%s', (said, expected) => {
    expect(eaters(said)).toEqual(expected);
  });

  it.each([
    ["no, tablets isn't a person! and you've forgotten the eggs", ['not Tablets', 'whose eggs']],
    ["no! Not Joan, Ben. It's Ben that can't have eggs", ['not Joan', 'Ben eggs']],
    ['take Tablets off', ['not Tablets']],
    ['nuts', ['whose nuts?']],
  ])('is put right, and asked about where nobody is named: %s', (text, expected) => {
    expect(eaters(text)).toEqual(expected);
  });

  it.each([
    ["Jack can't have nuts and he's veggie, and Susan hates mushrooms", ['Jack nuts? vegetarian', 'Susan mushrooms']], // prettier-ignore
    ["I'm allergic to kiwi", ['me kiwi']],
  ])('is heard at any time, of several people and of foods in no group: %s', (text, expected) => {
    expect(said(text, 'anything')).toEqual(expected);
  });

  it('is no question, no shortage and no errand', () => {
    for (const text of [
      'can Susan have mushrooms',
      "there's no milk left",
      "we're off to the shop, no butter",
      'is Jack allergic to kiwi?',
    ])
      // prettier-ignore
      expect(said(text, 'anything'), text).toEqual([]);
  });

  it('is over when she says that it is', () => {
    for (const text of ["that's it, that's the lot", 'nobody else', "oh that's everybody dear"])
      expect(answerTo(text, 'eaters')?.intent, text).toBe('done');
  });

  it('names nobody for a word that nobody knows', () => {
    for (const said of ['the fridge has four shelves', 'the milk is in the larder', 'well let me see now'])
      expect(slotsOf(said, 'eaters').eaters, said).toBeUndefined();
  });

  it('is heard at the other questions, too, where the sentence says that it is that', () => {
    expect(slotsOf("my son Tom can't have eggs", 'wholes').eaters).toHaveLength(1);
    expect(slotsOf("my son Tom can't have eggs", 'manner').eaters).toHaveLength(1);
  });
});

describe('how to talk', () => {
  it.each([
    ['short please', { length: 'short' }],
    ["not too fast, I'm a bit deaf", { rate: 'slower', volume: 'louder' }],
    ["don't rattle on, and speak up", { length: 'short', volume: 'louder' }],
    ['everything in full and a bit quicker', { length: 'full', rate: 'faster' }],
    ['I like it just as you are', { length: 'usual' }],
  ])('%s', (said, expected) => {
    expect(slotsOf(said, 'manner').manner).toEqual(expected);
  });

  it('is heard at the questions before, where it is said that the talk is meant', () => {
    const told = slotsOf("I'd like short answers please, she gets overwhelmed", 'eaters');
    expect(told).toMatchObject({ manner: { length: 'short' } });
    expect(told.eaters).toBeUndefined();
    expect(slotsOf('a big fridge and a freezer, and talk slower', 'wholes')).toMatchObject({
      wholes: [{ name: 'fridge' }, { name: 'freezer' }],
      manner: { rate: 'slower' },
    });
    expect(slotsOf("my daughter Ann, she's a full vegan", 'eaters').manner).toBeUndefined();
  });

  it('is nothing else', () => {
    for (const said of ['where is the milk', 'what is a marker'])
      expect(slotsOf(said, 'manner').manner, said).toBeUndefined();
  });
});

describe('a name that was asked for', () => {
  it.each([
    ['Joanne', 'Joanne'],
    ["my name's Joanne", 'Joanne'],
    ["it's me, Joanne", 'Joanne'],
    ['oh, Joanne, dear', 'Joanne'],
  ])('%s', (text, name) => {
    expect(answerTo(text, 'person')).toMatchObject({ intent: 'answer', slots: { words: name } });
  });

  it('is no food and nothing told of somebody', () => {
    for (const text of [
      'four tins of tomatoes, a bag of sugar and biscuits, all on the second shelf of the larder',
      'Dad made a beef stew on Sunday, four tubs of it',
    ])
      expect(answerTo(text, 'person')?.intent, text).not.toBe('answer');
  });
});
