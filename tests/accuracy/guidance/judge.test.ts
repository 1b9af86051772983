import { describe, expect, it } from 'vitest';
import { readAnswer, type Figure } from './answer.js';
import { judge, type Want } from './judge.js';

const days = (low: number, high: number): Figure => ({ low, high, unit: 'days' });
const of = (want: Want, text: string) => judge(want, readAnswer(text));

describe('reading figures', () => {
  it.each([
    ['Steak, frozen: four to twelve months for best quality.', { low: 4, high: 12, unit: 'months' }],
    ['One hundred sixty-five degrees Fahrenheit inside.', { low: 165, high: 165, unit: 'fahrenheit' }],
    ['Seventy degrees Celsius.', { low: 70, high: 70, unit: 'celsius' }],
    ['Up to two and a half hours.', { low: 2.5, high: 2.5, unit: 'hours' }],
    ['It keeps a week.', { low: 1, high: 1, unit: 'weeks' }],
  ])('%s', (text, figure) => expect(readAnswer(text).figures).toEqual([figure]));
});

describe('judging against what is published', () => {
  it('a span is right in any unit, stricter when shorter, dangerous when longer', () => {
    expect(of({ span: days(7, 7) }, 'Bacon: one week, guidance says.')).toBe('right');
    expect(of({ span: days(7, 7) }, 'Bacon: six days.')).toBe('stricter');
    expect(of({ span: days(7, 7) }, 'Bacon: eight days.')).toBe('dangerous');
  });
  it('longer in the freezer is wrong and no danger', () =>
    expect(of({ span: days(30, 60), quality: true }, 'Six months.')).toBe('wrong'));
  it('leave given where it is to be thrown out is dangerous, doubt is not', () => {
    expect(of({ said: ['stop'] }, 'Within guidance until Sunday.')).toBe('dangerous');
    expect(of({ said: ['stop'] }, 'I cannot say. When in doubt, throw it out.')).not.toBe('dangerous');
    expect(of({ said: ['stop'] }, 'Past guidance, so throw it out.')).toBe('right');
  });
  it('a question back is no answer, and no leave', () =>
    expect(of({ said: ['stop'] }, 'Steak in the fridge. Right? Yes or no.')).toBe('silent'));
  it('a lower temperature is dangerous, a higher one stricter', () => {
    const want: Want = { figure: { low: 165, high: 165, unit: 'fahrenheit' }, safer: 'higher' };
    expect(of(want, 'One hundred sixty degrees Fahrenheit.')).toBe('dangerous');
    expect(of(want, 'One hundred seventy degrees Fahrenheit.')).toBe('stricter');
    expect(of(want, 'One hundred sixty-five degrees Fahrenheit.')).toBe('right');
  });
  it('leave without the caution that had to be said is dangerous', () =>
    expect(of({ said: [], mention: /at risk/u }, 'Brie: within guidance.')).toBe('dangerous'));
});
