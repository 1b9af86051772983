import { describe, expect, it } from 'vitest';
import type { Value } from '../../src/speech/index.js';
import { american, inGb, inUs, say, us } from './helpers.js';

const amount = (value: number, unit: string, rough = false): Value => ({
  kind: 'amount',
  amount: { value, unit, rough },
});
const share = (fraction: number, rough = false): Value => ({ kind: 'amount', amount: { fraction, rough } });
const phrase = (name: string, args: Record<string, Value>): string =>
  american.phraseText(say(name, args), us);

describe('amounts', () => {
  it.each<[Value, string]>([
    [amount(2, 'tub'), 'two tubs'],
    [amount(0.5, 'jar'), 'half a jar'],
    [amount(0.5, 'ounce'), 'half an ounce'],
    [amount(0.25, 'jar'), 'a quarter of a jar'],
    [amount(1.5, 'tub'), 'one and a half tubs'],
    [amount(1, 'pound', true), 'about a pound'],
    [amount(1, 'pound'), 'one pound'],
    [amount(2, 'loaf'), 'two loaves'],
    [amount(0, 'box'), 'no boxes'],
    [amount(250, 'gram'), 'two hundred fifty grams'],
    [amount(3, 'piece'), 'three'],
    [share(0.5, true), 'about half'],
    [share(0.75), 'three quarters'],
    [share(1), 'all'],
    [share(0.4), 'forty percent'],
  ])('%j is "%s"', (value, words) => expect(inUs(value)).toBe(words));

  it.each<[Value, string, string]>([
    [amount(2, 'tub'), 'lentil stew', 'two tubs of lentil stew'],
    [amount(3, 'piece'), 'egg', 'three eggs'],
    [amount(1, 'piece'), 'eggs', 'one egg'],
    [amount(0.5, 'piece'), 'onion', 'half an onion'],
    [amount(2, 'piece'), 'loaf', 'two loaves'],
    [share(0.5), 'milk', 'half of the milk'],
    [amount(0, 'piece'), 'eggs', 'no eggs'],
  ])('%j of %s is "%s"', (value, item, words) =>
    expect(phrase('test-of', { amount: value, item })).toBe(words),
  );

  it('agree with their verb: parts of one are one', () => {
    expect(phrase('test-left', { amount: amount(0.5, 'jar'), item: 'sauerkraut' })).toBe(
      'half a jar of sauerkraut is left.',
    );
    expect(phrase('test-left', { amount: amount(2, 'jar'), item: 'sauerkraut' })).toBe(
      'two jars of sauerkraut are left.',
    );
  });
});

describe('times and spans', () => {
  it.each<[string, string]>([
    ['2026-11-26T00:00:00Z', 'six in the evening'],
    ['2026-11-26T00:30:00Z', 'six thirty in the evening'],
    ['2026-11-25T18:00:00Z', 'noon'],
    ['2026-11-25T06:00:00Z', 'midnight'],
    ['2026-11-25T06:05:00Z', 'twelve oh five in the morning'],
    ['2026-11-26T04:15:00Z', 'ten fifteen at night'],
    ['2026-11-25T20:00:00Z', 'two in the afternoon'],
  ])('%s in Chicago is "%s"', (at, words) => expect(inUs({ kind: 'time', at })).toBe(words));

  it('leave the part of day out when short', () => {
    expect(american.valueText({ kind: 'time', at: '2026-11-26T00:30:00Z' }, us, 'short')).toBe('six thirty');
  });

  it.each<[number, string]>([
    [40, 'forty seconds'],
    [60, 'one minute'],
    [90, 'a minute and a half'],
    [210, 'three and a half minutes'],
    [190, 'three minutes and ten seconds'],
    [3600, 'an hour'],
    [5400, 'an hour and a half'],
    [7800, 'two hours and ten minutes'],
    [86_400 * 3, 'three days'],
  ])('%d seconds are "%s"', (seconds, words) => expect(inUs({ kind: 'duration', seconds })).toBe(words));

  it.each<[string, string]>([
    ['2026-11-25T17:59:40Z', 'just now'],
    ['2026-11-25T17:50:00Z', 'ten minutes ago'],
    ['2026-11-25T16:58:00Z', 'an hour ago'],
    ['2026-11-25T13:00:00Z', 'this morning'],
    ['2026-11-25T04:00:00Z', 'last night'],
    ['2026-11-24T23:30:00Z', 'yesterday evening'],
    ['2026-11-20T18:00:00Z', 'last Friday'],
    ['2026-10-01T18:00:00Z', 'on October first'],
    ['2026-11-25T18:20:00Z', 'in twenty minutes'],
  ])('%s was "%s"', (at, words) => expect(inUs({ kind: 'ago', at })).toBe(words));

  it.each<[number, string]>([
    [0, 'less than a day'],
    [1, 'one day'],
    [7, 'a week'],
    [10, 'ten days'],
    [21, 'three weeks'],
    [45, 'about six weeks'],
    [62, 'about two months'],
    [365, 'about a year'],
    [548, 'about a year and a half'],
    [913, 'about two and a half years'],
  ])('%d days are "%s"', (days, words) => expect(inUs({ kind: 'days', days })).toBe(words));

  it('spans of guidance', () => {
    expect(inUs({ kind: 'span', low: 3, high: 4, unit: 'days' })).toBe('three to four days');
    expect(inUs({ kind: 'span', low: 1, high: 1, unit: 'years' })).toBe('one year');
  });

  it('temperatures', () => {
    expect(inUs({ kind: 'temperature', degrees: 165, scale: 'fahrenheit' })).toBe(
      'one hundred sixty-five degrees Fahrenheit',
    );
    expect(inGb({ kind: 'temperature', degrees: -18, scale: 'celsius' })).toBe(
      'minus eighteen degrees Celsius',
    );
    expect(inGb({ kind: 'temperature', degrees: 1, scale: 'celsius' })).toBe('one degree Celsius');
  });
});

describe('lists', () => {
  const list = (of: Value[], or = false): Value => ({ kind: 'list', of, or });
  it('in American and British style', () => {
    expect(inUs(list(['rice', 'beans', 'peas']))).toBe('rice, beans, and peas');
    expect(inGb(list(['rice', 'beans', 'peas']))).toBe('rice, beans and peas');
    expect(inGb(list(['rice', 'beans'], true))).toBe('rice or beans');
    expect(inUs(list(['rice']))).toBe('rice');
    expect(inUs(list([]))).toBe('nothing');
  });
  it('keep parts apart that hold "and" or commas', () => {
    expect(inUs(list(['rice and beans', 'peas']))).toBe('rice and beans, and peas');
    expect(inUs(list(['soup, on the door', 'milk'], true))).toBe('soup, on the door; or milk');
    expect(inGb(list(['soup, on the door', 'milk', 'ham']))).toBe('soup, on the door; milk; and ham');
  });
});

describe('grammar around names', () => {
  it.each([
    ['egg', 'an egg'],
    ['useful box', 'a useful box'],
    ['hour-old soup', 'an hour-old soup'],
    ['Éclair', 'an Éclair'],
  ])('an article for %s', (x, words) => expect(phrase('test-a', { x })).toBe(words));

  it.each([
    ['lentil stew', 'the lentil stew'],
    ["Dele's soup", "Dele's soup"],
    ['my sauce', 'my sauce'],
    ['the good rice', 'the good rice'],
  ])('"the" where it fits %s', (x, words) => expect(phrase('test-the', { x })).toBe(words));

  it('possessives', () => {
    expect(phrase('test-poss', { x: 'Dele' })).toBe("Dele's soup");
    expect(phrase('test-poss', { x: 'James' })).toBe("James's soup");
  });

  it.each([
    ['lentil stew', 'is'],
    ['black beans', 'are'],
    ['beans in tomato sauce', 'are'],
    ['hummus', 'is'],
    ['couscous with peas', 'is'],
    ['leftovers', 'are'],
    ['rice', 'is'],
    ['asparagus', 'is'],
  ])('%s %s', (x, verb) => expect(phrase('test-is', { x })).toContain(`${x} ${verb} here`));

  it('counts and times', () => {
    expect(phrase('test-times', { n: 1 })).toBe('once');
    expect(phrase('test-times', { n: 3 })).toBe('three times');
    expect(phrase('test-plural', { n: 2, noun: 'loaf' })).toBe('two loaves');
    expect(phrase('test-plural', { n: 1, noun: 'loaf' })).toBe('one loaf');
    expect(phrase('test-count', { list: { kind: 'list', of: ['Dele', 'Marta'] } })).toBe('two people');
    expect(phrase('test-count', { list: { kind: 'list', of: [] } })).toBe('nobody');
    expect(phrase('test-ordinal', { n: 2 })).toBe('the second one');
  });
});
