/** UK guidance: Food Standards Agency, Food Standards Scotland, NHS. Never mixed with US figures. */
import { describe, expect, it } from 'vitest';
import {
  allergensOf,
  checkClaim,
  checkProbe,
  cookTemperature,
  guidanceFor,
  leftOut,
  mayRefreeze,
  reheatPlan,
} from '../../src/safety/index.js';
import { safetyTables } from '../../src/safety/tables.js';
import type { GuidanceQuestion } from './types.js';

const clock = { now: '2026-11-25T12:00:00.000Z', timeZone: 'Europe/London' };
const ask = (food: string, more: Partial<GuidanceQuestion> = {}) =>
  guidanceFor({ food, where: 'fridge', region: 'uk', clock, ...more });

describe('leftovers within two days (FSS Storing food; FSA; NHS)', () => {
  it.each([
    'soup',
    'roast chicken',
    'chilli',
    'lasagne',
    'pizza',
    'cooked beans',
    'curry',
    'quiche',
    'cooked fish',
  ])('%s: last day is the second, then throw out', (food) => {
    expect([0, 1, 2, 3].map((days) => ask(food, { days, state: 'cooked' }).verdict)).toEqual([
      'fine',
      'use-soon',
      'last-day',
      'throw-out',
    ]);
  });
  it('48 hours by the clock where hours are known', () => {
    expect(ask('soup', { hours: 47 }).verdict).not.toBe('throw-out');
    expect(ask('soup', { hours: 49 }).verdict).toBe('throw-out');
  });
});

describe('rice (FSA Home food fact checker)', () => {
  it('24 hours', () => {
    expect(ask('rice', { hours: 23 }).verdict).not.toBe('throw-out');
    expect(ask('rice', { hours: 25 }).verdict).toBe('throw-out');
    expect(ask('rice', { days: 2 }).verdict).toBe('throw-out');
  });
  it('cooled within an hour', () => {
    const out = (minutes: number) =>
      leftOut({
        food: 'cooked rice',
        since: new Date(Date.parse(clock.now) - minutes * 60_000).toISOString(),
        clock,
        region: 'uk',
      }).verdict;
    expect([out(60), out(61)]).toEqual(['refrigerate-now', 'throw-out']);
  });
  it('from a takeaway: not reheated', () =>
    expect(
      reheatPlan({ food: 'takeaway rice', method: 'microwave', from: 'fridge', region: 'uk', watts: 800 }),
    ).toMatchObject({ kind: 'refused', refusal: 'takeaway-rice' }));
});

describe('cook and reheat: time and temperature pairs (FSA Cooking your food)', () => {
  const held = (degrees: number, seconds: number) =>
    checkProbe(cookTemperature({ food: 'stew', region: 'uk' }), {
      reads: { degrees, scale: 'celsius' },
      seconds,
    }).reached;
  it.each([
    [70, 119, false],
    [70, 120, true],
    [75, 29, false],
    [75, 30, true],
    [80, 5, false],
    [80, 6, true],
    [69, 600, false],
  ])('%d °C for %d seconds: %s', (degrees, seconds, reached) => expect(held(degrees, seconds)).toBe(reached));
  it('the pairs below 70 °C stand in the table and are not offered to a home cook', () => {
    expect(safetyTables().ukTimeTemperature.map(({ celsius, seconds }) => [celsius, seconds])).toEqual([
      [60, 2700],
      [65, 600],
      [70, 120],
      [75, 30],
      [80, 6],
    ]);
    expect(held(65, 600)).toBe(false);
    expect(held(60, 2700)).toBe(false);
  });
});

describe('use by and best before', () => {
  const useBy = (useByDay: string, more: Partial<GuidanceQuestion> = {}) =>
    ask('raw chicken', { dates: { useBy: useByDay }, ...more }).verdict;
  it('use by is the last day; after it, throw out (NHS quoting FSA)', () =>
    expect([useBy('2026-11-27'), useBy('2026-11-26'), useBy('2026-11-25'), useBy('2026-11-24')]).toEqual([
      'fine',
      'use-soon',
      'last-day',
      'throw-out',
    ]));
  it('frozen by its use by, it is used within 24 hours of defrosting (FSA Chilling)', () => {
    const dates = { useBy: '2026-11-10', frozen: '2026-11-10', thawed: '2026-11-25' };
    expect(ask('raw chicken', { dates })).toMatchObject({ lastDay: '2026-11-26' });
  });
  it('frozen after its use by: throw out', () => {
    const dates = { useBy: '2026-11-10', frozen: '2026-11-11', thawed: '2026-11-25' };
    expect(ask('raw chicken', { dates }).verdict).toBe('throw-out');
  });
  it('best before is quality', () =>
    expect(ask('bread', { where: 'pantry', dates: { bestBefore: '2026-11-20' } }).verdict).toBe(
      'past-best-quality',
    ));
  it('no use by and no figure: it says so, and gives no US figure', () => {
    const found = ask('raw chicken', { days: 2 });
    expect(found.verdict).toBe('no-figure');
    expect(found.row?.limit).toBeNull();
  });
});

describe('other rules', () => {
  it('any leftovers are reheated once only (FSA)', () =>
    expect(
      reheatPlan({
        food: 'stew',
        method: 'hob',
        from: 'fridge',
        region: 'uk',
        watts: null,
        timesReheated: 1,
      }),
    ).toMatchObject({ kind: 'refused', refusal: 'reheated-already' }));
  it('defrosted raw food is not frozen again raw', () =>
    expect(
      mayRefreeze({
        food: 'raw chicken',
        thawedIn: 'fridge',
        region: 'uk',
        clock: { now: '2026-11-25T12:00:00.000Z', timeZone: 'Europe/London' },
      }).may,
    ).toBe('cook-first'));
  it('fourteen allergens (Regulation (EU) 1169/2011 Annex II)', () => {
    expect(allergensOf('uk')).toHaveLength(14);
    expect(allergensOf('uk').map(({ id }) => id)).toEqual(
      expect.arrayContaining(['celery', 'mustard', 'sulphites', 'lupin', 'molluscs', 'gluten']),
    );
  });
  it('nine in the US (FALCPA and FASTER)', () =>
    expect(
      allergensOf('us')
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['crustaceans', 'egg', 'fish', 'milk', 'nuts', 'peanuts', 'sesame', 'soy', 'wheat']));
  it.each([
    ['uk-low-fat', 3, true],
    ['uk-low-fat', 3.1, false],
    ['uk-low-sugars', 5, true],
    ['uk-fat-free', 0.5, true],
    ['uk-fat-free', 0.6, false],
    ['uk-low-sodium', 120, true],
    ['uk-low-sodium', 124, false],
  ] as const)('%s at %d: %s (Regulation (EC) 1924/2006)', (claim, amount, met) =>
    expect(checkClaim({ claim, amount })?.met).toBe(met),
  );
});

describe('regions are never mixed', () => {
  it.each(['soup', 'rice', 'raw chicken', 'milk', 'eggs', 'ham', 'ogbono'])(
    '%s: each answer cites its own region',
    (food) => {
      for (const region of ['us', 'uk'] as const) {
        const found = guidanceFor({ food, where: 'fridge', region, days: 1, clock });
        const cited = [found.row?.source, ...found.reasons.map(({ source }) => source)].filter(
          (source) => source !== null && source !== undefined,
        );
        expect(cited.every((source) => source.region === region)).toBe(true);
      }
    },
  );
  it('no region chosen: the stricter, and it says so', () => {
    const found = guidanceFor({ food: 'soup', where: 'fridge', region: null, days: 3, clock });
    expect(found).toMatchObject({ verdict: 'throw-out', region: 'uk' });
    expect(found.reasons.map(({ code }) => code)).toContain('stricter-region');
    // Where only one has a figure, that one.
    expect(guidanceFor({ food: 'raw chicken', where: 'fridge', region: null, days: 3, clock }).region).toBe(
      'us',
    );
  });
});
