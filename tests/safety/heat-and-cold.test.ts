/** Times over the heat, cooling by readings, and what is sold raw. */
import { describe, expect, it } from 'vitest';
import { cooledSoFar, guidanceFor, isSoldRaw, roastingTime } from '../../src/safety/index.js';

const roast = (food: string, pounds: number | null, region: 'us' | 'uk' | null = 'us') =>
  roastingTime({ food, method: null, pounds, region });

describe('roasting times', () => {
  it('are by the weight told, where the data has it', () => {
    expect(roast('turkey', 14)).toMatchObject({
      method: 'oven',
      minutes: { low: 420, high: 420 },
      whole: true,
    });
    expect(roast('turkey', 24)?.beyond).toBe(false);
    expect(roast('turkey', 24.1)).toMatchObject({ whole: false, beyond: true });
  });
  it('are by the pound for a bird lighter than any the data has, and say so', () => {
    expect(roast('chicken', 4.9)).toMatchObject({
      whole: false,
      beyond: true,
      minutes: { low: 20, high: 30 },
    });
    expect(roast('chicken', 5)).toMatchObject({
      whole: true,
      beyond: false,
      minutes: { low: 100, high: 150 },
    });
  });
  it('are found by another name of the same food', () =>
    expect(roast('duck', null)?.source.edition).not.toBeNull());
  it('are of no region that has no such table', () => expect(roast('turkey', 14, 'uk')).toBeNull());
  it('are none for what the data has not', () => expect(roast('tofu', 1)).toBeNull());
});

describe('cooling by readings', () => {
  const at = (time: string, fahrenheit: number) => ({ at: `2026-05-14T${time}:00.000Z`, fahrenheit });
  it.each([
    ['seventy at two hours', [at('10:00', 140), at('12:00', 70)], 'in-time'],
    ['seventy-one at two hours', [at('10:00', 140), at('12:00', 71)], 'too-slow'],
    ['still warm before two hours', [at('10:00', 140), at('11:59', 90)], 'in-time'],
    ['forty-two at six hours', [at('10:00', 140), at('12:00', 69), at('16:00', 42)], 'too-slow'],
    ['forty-one at six hours', [at('10:00', 140), at('12:00', 69), at('16:00', 41)], 'in-time'],
    ['begun below the rule: nothing is proved', [at('10:00', 134), at('11:00', 60)], 'unknown'],
    ['one reading proves nothing', [at('10:00', 140)], 'unknown'],
  ] as const)('%s', (_, readings, came) => expect(cooledSoFar(readings)).toBe(came));
});

describe('what is sold raw', () => {
  it.each(['ground beef', 'chicken thighs', 'salmon'])('%s', (name) => expect(isSoldRaw(name)).toBe(true));
  it.each(['roast chicken', 'cooked rice', 'chili', 'milk'])('not %s', (name) =>
    expect(isSoldRaw(name)).toBe(false),
  );
});

describe('the riskier reading of a name', () => {
  const days = (food: string) =>
    guidanceFor({
      food,
      where: 'fridge',
      region: 'us',
      clock: { now: '2026-05-14T22:00:00Z', timeZone: 'UTC' },
    }).row?.limit;
  it.each([
    ['sliced luncheon meat', 5, 'days'],
    ['unopened luncheon meat', 2, 'weeks'],
    ['uncured ham', 4, 'days'],
    ['garlic in olive oil', 4, 'days'],
    ['jamón en rebanadas', 5, 'days'],
    ['duckling', 2, 'days'],
  ])('%s', (food, high, unit) => expect(days(food)).toMatchObject({ high, unit }));
});
