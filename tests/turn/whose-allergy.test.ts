/** Whose allergy it is, what is a standing one, which nuts are meant, and who may have a food. */
import { describe, expect, test } from 'vitest';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { allergenActs, allergensAnswered, everyKind } from '../../src/understanding/guidance/allergens.js';
import { sentenceOf } from '../../src/understanding/guidance/sentence.js';
import { urgentAct } from '../../src/understanding/guidance/urgent.js';
import { normalise } from '../../src/understanding/words/index.js';
import { martasNames } from '../understanding/household.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const rules = rulesFor(martasNames(), 'en-US', clock);
const sentence = (said: string) => sentenceOf(normalise(said, 'en-US').tokens, rules, 'en', clock);
const toldOf = (said: string) =>
  (allergenActs(sentence(said), []) ?? []).find(({ intent }) => intent === 'add-person')?.slots;

describe('whose allergy', () => {
  test.each([
    ["my sister's boy Liam is allergic to eggs", 'liam'],
    ["Peter's mate Sol can't have sesame", 'sol'],
    ["Junie's new fella Rob has an allergy to celery", 'rob'],
    ["Aoife's girlfriend Una, she can't have milk", 'una'],
    ["Peter can't have mustard", 'peter'],
  ])('%s', (said, name) => {
    expect(toldOf(said)?.person?.words).toBe(name);
  });

  test.each([
    ["no not Peter, it's Tom is the one with the allergy, Peter eats anything, sesame it is", ['sesame']],
    ["it's Tom that's allergic to eggs, not Peter", ['eggs']],
    ["no, it's Tom that's allergic, not Peter", []],
  ])('is taken back from the one: %s', (said, allergens) => {
    const eaters = toldOf(said)?.eaters ?? [];
    expect(eaters.map(({ name, none = false }) => [name, none])).toEqual([
      ['Peter', true],
      ['Tom', false],
    ]);
    expect(eaters[1]).toMatchObject({ allergens, ...(allergens.length === 0 ? { unclear: true } : {}) });
  });
});

describe('a standing reaction', () => {
  test.each([
    ['Junie gets hives from sesame too', 'sesame'],
    ['my neighbour Babs comes out in a rash with egg', 'eggs'],
    ['Dele swells up if he has milk', 'milk'],
    ['celery brings Peter out in hives', 'celery'],
  ])('is an allergy: %s', (said, allergen) => {
    expect(urgentAct(sentence(said))).toBeNull();
    expect(toldOf(said)?.allergens).toEqual([allergen]);
  });

  test.each([
    "she's got hives",
    'his lips are swelling, he ate peanuts',
    'she has come out in hives from the prawns',
    'Peter is swelling up, he had the sesame bread',
  ])('and what happens now is none: %s', (said) => {
    expect(urgentAct(sentence(said))?.slots.asked).toBe('emergency');
  });
});

describe('which nuts', () => {
  const both = ['tree nuts', 'peanuts'];
  test.each(['nuts of every kind', 'any nut at all', 'all of them', 'both kinds, tree nuts and peanuts'])(
    'answered: %s',
    (said) => {
      const heard = allergensAnswered(sentence(said))?.slots.allergens ?? [];
      expect([...heard].sort()).toEqual([...both].sort());
    },
  );
  test('one kind is one kind', () => {
    expect(allergensAnswered(sentence('just peanuts'))?.slots.allergens).toEqual(['peanuts']);
    expect(allergensAnswered(sentence('put the rendang on the list'))).toBeNull();
  });
  test.each([
    ["Peter can't have any kind of nuts", undefined],
    ["Peter's allergic to every sort of nut", undefined],
    ["Peter's allergic to nuts", 'which-nuts'],
  ])('asked only where it is open: %s', (said, asked) => {
    const slots = toldOf(said) ?? {};
    const act = everyKind({ intent: 'add-person', slots }, sentence(said), false);
    expect(act.slots).toMatchObject({ allergens: both });
    expect(act.slots.asked).toBe(asked);
  });
});

describe('a free that belongs to a name', () => {
  test.each([
    'I poured the lactose free milk down the sink',
    'knocked off the last of the lactose free milk',
  ])('tells nothing: %s', (said) => {
    expect((allergenActs(sentence(said), []) ?? []).some(({ intent }) => intent === 'amend')).toBe(false);
  });
  test('and after the food it does', () => {
    expect(allergenActs(sentence('the lentil stew is celery free'), [])?.[0]?.slots.free).toBe(true);
  });
});
