/**
 * USDA FSIS Safe Minimum Internal Temperature Chart (last updated 14 April 2025), every row, and microwave
 * times printed in oven handbooks beside the energy-equal formula.
 */
import { describe, expect, it } from 'vitest';
import { cookTemperature, scaleTime } from '../../src/safety/index.js';
import { safetyTables } from '../../src/safety/tables.js';

describe('USDA FSIS Safe Minimum Internal Temperature Chart', () => {
  it.each([
    ['beef steak', 145, 180],
    ['pork chop', 145, 180],
    ['lamb roast', 145, 180],
    ['veal', 145, 180],
    ['ground beef', 160, null],
    ['mince', 160, null],
    ['hamburger', 160, null],
    ['ground turkey', 165, null],
    ['chicken breast', 165, null],
    ['whole turkey', 165, null],
    ['chicken legs', 165, null],
    ['giblets', 165, null],
    ['stuffing', 165, null],
    ['duck', 165, null],
    ['fresh ham', 145, 180],
    ['egg casserole', 160, null],
    ['salmon', 145, null],
    ['cod', 145, null],
    ['leftovers', 165, null],
    ['casserole', 165, null],
  ])('%s: %d °F', (food, degrees, restSeconds) => {
    const found = cookTemperature({ food, region: 'us' });
    expect([found.temperature.degrees, found.restSeconds]).toEqual([degrees, restSeconds]);
  });
  it('never the withdrawn 170 or 180 °F for poultry', () =>
    expect(
      [...safetyTables().cooking.values()].every((row) => row.region === 'uk' || row.fahrenheit <= 165),
    ).toBe(true));
  it('shrimp: the published sign is for the eye, so the fish temperature is given and said to be', () => {
    const found = cookTemperature({ food: 'shrimp', region: 'us' });
    expect(found.temperature.degrees).toBe(145);
    expect(found.notes).toContain('look-unusable');
  });
  it('soups, sauces and gravies come to a rolling boil (FSIS Leftovers)', () => {
    for (const food of ['soup', 'gravy', 'cheese sauce']) {
      expect(cookTemperature({ food, region: 'us', reheating: true }).boil).toBe(true);
    }
  });
  it('Celsius stands beside Fahrenheit to a tenth', () => {
    for (const row of safetyTables().cooking.values()) {
      expect(Math.abs(((row.fahrenheit - 32) * 5) / 9 - row.celsius)).toBeLessThan(0.35);
    }
  });
});

describe('microwave times as printed', () => {
  const { specimens, foodList } = safetyTables().microwave;
  it.each(specimens)('$pack: 650 to 750 watts within one half-minute step', ({ times }) => {
    const [from = 0, printed = 0] = [times['650'], times['750']];
    const found = scaleTime({ seconds: from, fromWatts: 650, toWatts: 750 })?.seconds ?? 0;
    expect(Math.abs(found - printed)).toBeLessThanOrEqual(30);
  });
  it.each(foodList)('$food: 1800 to 1400 watts within a tenth, or half a minute', ({ seconds }) => {
    const [from = 0, printed = 0] = [seconds['1800'], seconds['1400']];
    const found = scaleTime({ seconds: from, fromWatts: 1800, toWatts: 1400 })?.seconds ?? 0;
    expect(Math.abs(found - printed)).toBeLessThanOrEqual(Math.max(30, printed * 0.1));
  });
  it.each([
    [240, 650, 750, 210],
    [240, 800, 700, 275],
    [300, 1000, 700, 430],
    [300, 700, 1000, 210],
    [180, 900, 800, 205],
    [210, 1100, 700, 330],
    [360, 750, 900, 300],
    [90, 1000, 600, 150],
  ])('%d s at %d W for %d W: %d s', (seconds, fromWatts, toWatts, expected) =>
    expect(scaleTime({ seconds, fromWatts, toWatts })?.seconds).toBe(expected),
  );
  it('is refused when a wattage is unknown and capped beyond half and twice', () => {
    expect(scaleTime({ seconds: 60, fromWatts: null, toWatts: 800 })).toBeNull();
    expect(scaleTime({ seconds: 60, fromWatts: 800, toWatts: null })).toBeNull();
    const far = scaleTime({ seconds: 60, fromWatts: 1500, toWatts: 500 });
    expect([far?.seconds, far?.notes.includes('ratio-capped')]).toEqual([120, true]);
  });
});
