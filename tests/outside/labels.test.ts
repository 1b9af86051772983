/** What packages print: USDA AMS Egg Carton Labeling, the UK front-of-pack guide, FDA and EU thresholds. */
import { describe, expect, it } from 'vitest';
import {
  checkClaim,
  claimsOf,
  dailyValue,
  eggCarton,
  frontOfPack,
  homeCannedBoil,
  wattsByBoiling,
} from '../../src/safety/index.js';

describe('egg cartons (AMS: sell by at most 30 days, use by at most 45 days from the pack day)', () => {
  it('day 182 is 1 July, 30 June in a leap year', () => {
    expect(eggCarton(182, 2026)?.packed).toBe('2026-07-01');
    expect(eggCarton(182, 2028)?.packed).toBe('2028-06-30');
  });
  it('the last dates', () =>
    expect(eggCarton(1, 2026)).toMatchObject({ sellByAtLatest: '2026-01-31', useByAtLatest: '2026-02-15' }));
  it('day 366 only in leap years, and no day nought', () => {
    expect(eggCarton(366, 2028)?.packed).toBe('2028-12-31');
    expect(eggCarton(366, 2026)).toBeNull();
    expect(eggCarton(0, 2026)).toBeNull();
  });
});

describe('UK front-of-pack guide 2013, Table 2', () => {
  it.each([
    ['fat', 3, null, 'low'],
    ['fat', 3.1, null, 'medium'],
    ['fat', 17.5, null, 'medium'],
    ['fat', 17.6, null, 'high'],
    ['saturates', 1.5, null, 'low'],
    ['saturates', 5.1, null, 'high'],
    ['sugars', 5, null, 'low'],
    ['sugars', 22.6, null, 'high'],
    ['salt', 0.3, null, 'low'],
    ['salt', 1.5, null, 'medium'],
    ['salt', 0.7, 300, 'high'],
    ['salt', 0.6, 300, 'medium'],
  ])('%s %d g per 100 g, portion %s: %s', (nutrient, per100g, portionGrams, level) =>
    expect(frontOfPack({ nutrient, per100g, portionGrams })?.level).toBe(level),
  );
});

describe('US claims, 21 CFR 101.61 and 101.62', () => {
  it.each([
    ['us-sodium-free', 4.9, true],
    ['us-sodium-free', 5, false],
    ['us-very-low-sodium', 35, true],
    ['us-very-low-sodium', 36, false],
    ['us-fat-free', 0.49, true],
    ['us-fat-free', 0.5, false],
    ['us-low-fat', 3, true],
    ['us-low-fat', 3.1, false],
    ['us-low-saturated-fat', 1, true],
    ['us-low-cholesterol', 20, true],
    ['us-low-cholesterol', 21, false],
  ] as const)('%s at %d: %s', (claim, amount, met) => expect(checkClaim({ claim, amount })?.met).toBe(met));
  it('claims of a region cite that region', () => {
    for (const region of ['us', 'uk'] as const) {
      expect(claimsOf(region).length).toBeGreaterThan(5);
      for (const { id } of claimsOf(region)) {
        expect(checkClaim({ claim: id, amount: 0 })).toMatchObject({ met: true, source: { region } });
      }
    }
  });
  it('percent of daily value (from memory): five is low, twenty is high', () =>
    expect([5, 6, 19, 20].map((percent) => dailyValue(percent).level)).toEqual([
      'low',
      'medium',
      'medium',
      'high',
    ]));
});

describe('other published figures', () => {
  it('home-canned food: ten minutes below a thousand feet, one more a thousand (USDA home canning)', () =>
    expect([0, 999, 1000, 5000].map((feet) => homeCannedBoil(feet).minutes)).toEqual([10, 10, 11, 15]));
  it('boil test (FSIS 2012): two minutes about 1100 watts, four about 625, nothing between', () => {
    expect([wattsByBoiling(120)?.watts, wattsByBoiling(240)?.watts]).toEqual([1100, 625]);
    expect(wattsByBoiling(180)).toBeNull();
  });
});
