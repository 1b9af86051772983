/** Who may eat what, where nobody is named: words for people are no names, and the question is of them. */
import { describe, expect, test } from 'vitest';
import type { Query } from '../../../src/protocol/query.js';
import { rulesFor } from '../../../src/understanding/grammar-files.js';
import { questionIn } from '../../../src/understanding/moves/questions.js';
import { normalise } from '../../../src/understanding/words/index.js';
import { martasNames } from '../household.js';

const rules = rulesFor(martasNames(), 'en-US', {
  now: '2026-05-14T23:00:00.000Z',
  timeZone: 'America/Chicago',
});
const suitsIn = (said: string) => {
  const act = questionIn(normalise(said, 'en-US').tokens, rules, '2026-05-14', 'en')?.acts[0];
  const query: Query | undefined = act?.slots.query ?? act?.slots.edit?.query;
  const found = query?.where.find((filter) => filter.by === 'suits');
  return found?.by === 'suits' ? { ...found.who, is: found.is } : null;
};

describe('everybody here', () => {
  test.each([
    'who can eat the carrot soup tomorrow',
    "who's able to have the lentil stew tonight",
    "right who's allowed the hummus then",
    'are the kids okay with the bean chilli',
    'would the bairns be all right with the egusi soup',
    'what can we all four eat from the fridge',
    'is the lentil stew grand for the whole family',
    'which of us can have the roast chicken',
  ])('%s', (said) => {
    expect(suitsIn(said)).toEqual({ who: 'everybody', is: true });
  });

  test.each(["is there anybody who shouldn't have the egusi soup", 'what can the children not have in here'])(
    '%s',
    (said) => {
      expect(suitsIn(said)).toEqual({ who: 'everybody', is: false });
    },
  );

  test.each([
    'who made the carrot soup',
    'who ate the carrot soup',
    "who can't have milk",
    'can anyone tell me where the hummus is',
    'how long can we keep the carrot soup',
    'does everyone like the soup',
  ])('not: %s', (said) => {
    expect(suitsIn(said)?.who ?? null).not.toBe('everybody');
  });
});

describe('somebody with something they must not have', () => {
  test.each([
    ["would the lentil stew be all right for someone that can't have celery", ['celery']],
    ['is the stew alright for folk with a nut allergy', ['tree nuts', 'peanuts']],
    ["could a friend who's allergic to sesame have the hummus", ['sesame']],
    ['would a coeliac be all right with the soup', ['gluten']],
  ])('%s', (said, allergens) => {
    expect(suitsIn(said)).toEqual({ who: 'unnamed', allergens, is: true });
  });
});
