/** That a food is free of something, told in any wording: asked for its one yes, kept, and never a question or a food. */
import { describe, expect, test } from 'vitest';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { allergenActs, freeAnswered } from '../../src/understanding/guidance/allergens.js';
import { sentenceOf } from '../../src/understanding/guidance/sentence.js';
import { normalise } from '../../src/understanding/words/index.js';
import { martasNames } from '../understanding/household.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const rules = rulesFor(martasNames(), 'en-US', clock);
const sentence = (said: string) => sentenceOf(normalise(said, 'en-US').tokens, rules, 'en', clock);
const freeIn = (said: string): readonly string[] | null => {
  const act = (allergenActs(sentence(said), []) ?? []).find(({ intent }) => intent === 'amend');
  return act?.slots.free ? (act.slots.allergens ?? null) : null;
};

describe('told free', () => {
  test.each([
    ["there ain't no peanuts in the carrot soup, I made it myself", ['peanuts']],
    ['carrot soup has no peanuts in it I cooked it', ['peanuts']],
    ["that one's got no peanuts and no sesame neither", ['peanuts', 'sesame']],
    ["write down the lentil stew don't have no mustard", ['mustard']],
    ["the bean chilli hasn't got any celery in it", ['celery']],
    ['no peanuts in that, I made it', ['peanuts']],
    ['I never put peanuts in the lentil stew', ['peanuts']],
    ["the egusi soup's got no sesame in it so Dele can have it, right", ['sesame']],
  ])('%s', (said, allergens) => {
    expect(freeIn(said)).toEqual(allergens);
  });

  test.each([
    'has the carrot soup got no peanuts in it',
    "there's no milk left in the fridge",
    "I've got no peanuts, put them on the list",
    "Dele can't have peanuts",
    'if there are no peanuts in the carrot soup can she have it',
    'the carrot soup has no peanuts in it, right',
  ])('not: %s', (said) => {
    expect(freeIn(said)).toBeNull();
  });

  test('is what a note may be of, and no refusal', () => {
    expect(freeAnswered(sentence('no peanuts no sesame'))).toMatchObject([
      { slots: { allergens: ['peanuts', 'sesame'], free: true } },
    ]);
    expect(freeAnswered(sentence('no'))).toBeNull();
    expect(freeAnswered(sentence('no, the peanuts are gone'))).toBeNull();
  });

  test.each([
    ['no not milk soy', 'milk', 'soy'],
    ['no fish not milk', 'milk', 'fish'],
    ['not eggs it is sesame', 'eggs', 'sesame'],
  ])('of two set against each other frees the one and holds the other: %s', (said, free, held) => {
    expect(freeAnswered(sentence(said))).toMatchObject([
      { slots: { allergens: [free], free: true } },
      { slots: { allergens: [held] } },
    ]);
    expect(freeAnswered(sentence(said))?.[1]?.slots.free).toBeUndefined();
  });
});
