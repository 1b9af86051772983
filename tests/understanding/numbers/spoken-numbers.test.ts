import fc from 'fast-check';
import numberToWords from 'number-to-words';
import { describe, expect, it } from 'vitest';
import { joinLetters, numberRules, spellOut } from '../../../src/understanding/numbers/index.js';
import { lexiconFor, normalise } from '../../../src/understanding/words/index.js';

const lexicon = lexiconFor('en');
const rules = numberRules(lexicon);
const read = (rule: string, text: string): unknown => {
  const { tokens } = normalise(text, 'en');
  const matches = rules.get(`builtin:grammar/${rule}`)!.matchesAt(tokens, 0);
  return matches.find(({ length }) => length === tokens.length)?.value;
};

describe('cardinals', () => {
  // Outside check: npm number-to-words 1.2.4 writes the words.
  it('reads every number below 10,000 that number-to-words writes', () => {
    const wrong: string[] = [];
    for (let value = 0; value < 10_000; value += 1) {
      const words = numberToWords.toWords(value).replace(/[-,]+/g, ' ').replace(/ +/g, ' ');
      const [match] = rules.get('builtin:grammar/number')!.matchesAt(words.split(' '), 0);
      if (match?.value !== value || match.length !== words.split(' ').length) wrong.push(words);
    }
    expect(wrong).toEqual([]);
  });

  it('reads figures as their words', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), (value) => {
        expect(read('number', String(value))).toBe(value);
      }),
    );
  });

  it.each([
    ['two hundred and twelve', 212],
    ['a hundred', 100],
    ['one point five', 1.5],
    ['point five', 0.5],
    ['two and a half', 2.5],
    ['three and three quarters', 3.75],
    ['half', 0.5],
    ['a third', 1 / 3],
    ['two thirds', 2 / 3],
    ['three quarters', 0.75],
    ['1/2', 0.5],
    ['1 1/2', 1.5],
    ['½', 0.5],
    ['half a dozen', 6],
    ['two dozen', 24],
    ['a dozen and a half', 18],
    ['a couple', 2],
    ['a couple of', 2],
  ])('%j is %d', (text, value) => expect(read('number', text)).toBeCloseTo(value, 10));

  it.each(['stew', 'a', 'and two', 'hundred', 'third'])('%j is no number', (text) =>
    expect(rules.get('builtin:grammar/number')!.matchesAt(text.split(' '), 0)).toEqual([]),
  );

  it('does not join numbers that are said one after the other', () => {
    expect(rules.get('builtin:grammar/number')!.matchesAt(['two', 'three'], 0)).toEqual([
      { length: 1, value: 2 },
    ]);
    expect(rules.get('builtin:grammar/number')!.matchesAt(['twenty', 'twenty'], 0)).toEqual([
      { length: 1, value: 20 },
    ]);
  });
});

describe('ordinals', () => {
  it('reads every ordinal below 100 that number-to-words writes', () => {
    for (let value = 1; value < 100; value += 1) {
      expect(read('ordinal', numberToWords.toWordsOrdinal(value).replace('-', ' '))).toBe(value);
    }
  });
  it.each([
    ['last', -1],
    ['second to last', -2],
    ['3rd', 3],
    ['21st', 21],
  ])('%j is %d', (text, value) => expect(read('ordinal', text)).toBe(value));
});

describe('amounts', () => {
  it.each([
    ['two tubs', { value: 2, unit: 'tub' }],
    ['half a jar', { value: 0.5, unit: 'jar' }],
    ['half of a jar', { value: 0.5, unit: 'jar' }],
    ['a jar', { value: 1, unit: 'jar' }],
    ['a jar and a half', { value: 1.5, unit: 'jar' }],
    ['two and a half cups', { value: 2.5, unit: 'cup' }],
    ['three quarters of a cup', { value: 0.75, unit: 'cup' }],
    ['about 200 grams', { value: 200, unit: 'gram', rough: true }],
    ['200g', { value: 200, unit: 'gram' }],
    ['three fifty grams', { value: 350, unit: 'gram' }],
    ['two pounds four ounces', { value: 2.25, unit: 'pound' }],
    ['one and a half litres', { value: 1.5, unit: 'liter' }],
    ['two fluid ounces', { value: 2, unit: 'fluid ounce' }],
    ['a few slices', { value: 3, unit: 'slice', rough: true }],
    ['a couple of servings', { value: 2, unit: 'portion' }],
    ['two more tubs', { value: 2, unit: 'tub' }],
    ['six freezer bags', { value: 6, unit: 'freezer bag' }],
    ['half a dozen', { value: 6, unit: 'piece' }],
    ['two', { value: 2, unit: 'piece' }],
    ['two loaves', { value: 2, unit: 'loaf' }],
  ])('%j', (text, amount) => expect(read('amount', text)).toEqual(amount));

  it('offers the number alone too, as pieces, with less weight', () => {
    const [whole, bare] = rules.get('builtin:grammar/amount')!.matchesAt(['two', 'tubs'], 0);
    expect(whole).toMatchObject({ length: 2, weight: 1 });
    expect(bare).toMatchObject({ length: 1, value: { value: 2, unit: 'piece' } });
    expect(bare!.weight).toBeLessThan(whole!.weight!);
  });
  it('does not count an article without a unit', () => {
    expect(rules.get('builtin:grammar/amount')!.matchesAt(['a', 'stew'], 0)).toEqual([]);
  });
});

describe('shares', () => {
  it.each([
    ['half of it', { fraction: 0.5 }],
    ['half', { fraction: 0.5 }],
    ['about half', { fraction: 0.5, rough: true }],
    ['a third of them', { fraction: 1 / 3 }],
    ['three quarters', { fraction: 0.75 }],
    ['50%', { fraction: 0.5 }],
    ['all of it', { fraction: 1 }],
    ['most of it', { fraction: 0.75, rough: true }],
  ])('%j', (text, share) => expect(read('share', text)).toEqual(share));
});

describe('durations', () => {
  it.each([
    ['ten minutes', 600],
    ['12 mins', 720],
    ['an hour and a half', 5400],
    ['half an hour', 1800],
    ['three quarters of an hour', 2700],
    ['two and a half hours', 9000],
    ['an hour and ten minutes', 4200],
    ['two minutes thirty', 150],
    ['one minute thirty seconds', 90],
    ['one hour twenty', 4800],
    ['a couple of minutes', 120],
    ['two days', 172_800],
    ['a week', 604_800],
  ])('%j is %d seconds', (text, seconds) => expect(read('duration', text)).toBe(seconds));

  it('also ends before the smaller part', () => {
    const lengths = rules
      .get('builtin:grammar/duration')!
      .matchesAt(['two', 'minutes', 'thirty'], 0)
      .map(({ length }) => length);
    expect(lengths).toEqual([3, 2]);
  });
});

describe('heat', () => {
  it.each([
    ['165 degrees', { value: 165, scale: null }],
    ['165 f', { value: 165, scale: 'fahrenheit' }],
    ['180°C', { value: 180, scale: 'celsius' }],
    ['three fifty degrees', { value: 350, scale: null }],
    ['seventy five degrees celsius', { value: 75, scale: 'celsius' }],
  ])('%j', (text, degrees) => expect(read('temperature', text)).toEqual(degrees));
  it.each(['gas mark six', 'six', 'degrees'])('%j is no temperature', (text) =>
    expect(rules.get('builtin:grammar/temperature')!.matchesAt(text.split(' '), 0)).toEqual([]),
  );
  it.each([
    ['eight hundred watts', 800],
    ['eight fifty watts', 850],
    ['1000 w', 1000],
  ])('%j is %d watts', (text, watts) => expect(read('watts', text)).toBe(watts));
});

describe('letters and digits', () => {
  it.each([
    ['h a r i s s a', 'harissa'],
    ['hotel alpha romeo', 'har'],
    ['h as in hotel a r double s a', 'harssa'],
    ['double u a t', 'wat'],
    ['t e a', 'tea'],
  ])('%j is %j', (text, word) => expect(read('letters', text)).toBe(word));
  it('does not take words for letters', () => {
    expect(rules.get('builtin:grammar/letters')!.matchesAt(['are', 'you'], 0)).toEqual([]);
    expect(rules.get('builtin:grammar/letters')!.matchesAt(['a', 'stew'], 0)).toEqual([]);
  });
  it('spells any word and joins it again', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[b-hj-z]{2,20}$/), (word) => {
        expect(joinLetters(spellOut(word).split(' '), lexicon)).toBe(word);
      }),
    );
    expect(spellOut('red beans')).toBe('r e d, b e a n s');
  });
  it.each([
    ['four two one', '421'],
    ['oh seven double two', '0722'],
  ])('%j is %j', (text, digits) => expect(read('digits', text)).toBe(digits));
});

describe('yes and no', () => {
  it.each([
    ['yes', true],
    ['yeah', true],
    ['that is right', true],
    ['nope', false],
    ['no thank you', false],
    ['not that one', false],
  ])('%j is %s', (text, answer) => expect(read('boolean', text)).toBe(answer));
});
