import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { timeRules } from '../../../src/understanding/numbers/index.js';
import { lexiconFor, normalise } from '../../../src/understanding/words/index.js';

const lexicon = lexiconFor('en');
const read = (text: string, lean = '', now = '15:00'): unknown => {
  const { tokens } = normalise(text, 'en');
  const matches = timeRules(lexicon, now).get(`builtin:grammar/time${lean}`)!.matchesAt(tokens, 0);
  return matches.find(({ length }) => length === tokens.length)?.value;
};

describe('times of day', () => {
  it.each([
    ['half past six', '18:30'],
    ['half six', '18:30'],
    ['quarter to seven', '18:45'],
    ['a quarter of seven', '18:45'],
    ['quarter to one in the morning', '00:45'],
    ['ten past six', '18:10'],
    ['ten minutes to six', '17:50'],
    ['ten after six', '18:10'],
    ['six thirty pm', '18:30'],
    ['six oh five am', '06:05'],
    ["six o'clock", '18:00'],
    ['6:30pm', '18:30'],
    ['18:00', '18:00'],
    ['06:00', '06:00'],
    ['eighteen hundred', '18:00'],
    ['noon', '12:00'],
    ['midnight', '00:00'],
    ['twelve pm', '12:00'],
    ['twelve am', '00:00'],
    ['eight in the evening', '20:00'],
    ['eight tonight', '20:00'],
    ['twenty five past six in the morning', '06:25'],
  ])('%j at three in the afternoon is %s', (text, time) => expect(read(text)).toBe(time));

  it('leaves morning or evening to the lean', () => {
    expect(read('six', '', '15:00')).toBe('18:00');
    expect(read('six', '', '19:00')).toBe('06:00');
    expect(read('six', '?lean=past', '15:00')).toBe('06:00');
    expect(read('six', '?lean=past', '19:00')).toBe('18:00');
    expect(read('eight', '?lean=evening', '07:00')).toBe('20:00');
  });

  it('reads every minute of the day in figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 13, max: 23 }), fc.integer({ min: 0, max: 59 }), (hour, minute) => {
        const time = `${hour}:${String(minute).padStart(2, '0')}`;
        expect(read(time)).toBe(time);
      }),
    );
  });

  it.each(['stew', '25:00', '12:75', 'thirty', 'zero to one', 'nought minutes to one'])(
    '%j is no time',
    (text) => expect(read(text)).toBeUndefined(),
  );
});
