/**
 * The gate is one-way: whatever makes a food riskier never makes what is said of it milder. Ten thousand drawn
 * histories, each with one thing made worse.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyChange, emptyKitchen, isRefused, merge, split, type Doing } from '../../src/kitchen/index.js';
import type { FoodEvent, Item } from '../../src/kitchen/model.js';
import { assessIn, guidanceFor, leftOut, type Assessment, type Where } from '../../src/safety/index.js';
import { assess } from '../../src/safety/items.js';
import { safetyTables } from '../../src/safety/tables.js';
import { plusDays } from '../../src/terms/dates.js';
import { item, kitchen } from './items.js';

const zone = 'America/Chicago';
const NAMES = safetyTables().foods.flatMap(({ food, also }) => [food, ...also.slice(0, 1)]);
const TODAY = '2026-11-25';
const at = (hours: number): string =>
  new Date(Date.parse(`${TODAY}T18:00:00Z`) + hours * 3_600_000).toISOString();

/** What a verdict lets a cook do, the most first. What nobody dates lets her go by its label. */
const STRICT: Readonly<Record<Assessment['verdict'], number>> = {
  'no-figure': 0,
  'how-long': 0,
  fine: 0,
  'past-best-quality': 0,
  'use-soon': 1,
  'last-day': 2,
  'cook-thoroughly': 3,
  'refrigerate-now': 3,
  unknown: 4,
  'throw-out': 5,
};

interface History {
  readonly food: Item;
  readonly where: Where;
  readonly region: 'us' | 'uk' | null;
  readonly hours: number;
  readonly atRisk: boolean;
}

const said = ({ food, where, region, hours, atRisk }: History): Assessment =>
  assess(food, { where, region, atRisk, clock: { now: at(hours), timeZone: zone } });

const day = (ago: number): string => plusDays(TODAY, -ago);

const history: fc.Arbitrary<History> = fc
  .record({
    name: fc.constantFrom(...NAMES),
    begun: fc.constantFrom('made' as const, 'bought' as const),
    ago: fc.integer({ min: 0, max: 40 }),
    openedAfter: fc.option(fc.integer({ min: 0, max: 10 })),
    frozenAfter: fc.option(fc.integer({ min: 0, max: 8 })),
    thawedAfter: fc.integer({ min: 0, max: 20 }),
    useByIn: fc.option(fc.integer({ min: -5, max: 10 })),
    outMinutes: fc.option(fc.integer({ min: 1, max: 400 })),
    hot: fc.boolean(),
    power: fc.option(fc.constantFrom('lost' as const, 'doubtful' as const, 'kept' as const)),
    where: fc.constantFrom('fridge' as const, 'freezer' as const, 'pantry' as const, 'counter' as const),
    region: fc.constantFrom('us' as const, 'uk' as const, null),
    atRisk: fc.boolean(),
    reheated: fc.integer({ min: 0, max: 2 }),
  })
  .map(
    ({
      name,
      begun,
      ago,
      openedAfter,
      frozenAfter,
      thawedAfter,
      useByIn,
      outMinutes,
      hot,
      power,
      ...rest
    }) => {
      const { where, region, atRisk, reheated } = rest;
      const events: FoodEvent[] = [
        ...(outMinutes === null
          ? []
          : [{ kind: 'out' as const, from: at(-24), to: at(-24 + outMinutes / 60), hot }]),
        ...(power === null ? [] : [{ kind: 'power' as const, from: at(-10), to: at(-4), came: power }]),
      ];
      const opened = openedAfter === null ? null : Math.max(0, ago - openedAfter);
      const frozen = frozenAfter === null ? null : Math.max(0, ago - frozenAfter);
      const thawed = frozen === null || where === 'freezer' ? null : Math.max(0, frozen - thawedAfter);
      return {
        food: item(name, {
          dates: {
            [begun]: day(ago),
            ...(frozen === null ? {} : { frozen: day(frozen) }),
            ...(thawed === null ? {} : { thawed: day(thawed) }),
            ...(opened === null ? {} : { opened: day(opened) }),
            ...(useByIn === null ? {} : { useBy: day(-useByIn) }),
          },
          ...(events.length > 0 ? { history: events } : {}),
          timesReheated: reheated,
          addedAt: `${day(ago)}T18:00:00.000Z`,
        }),
        where,
        region,
        hours: 0,
        atRisk,
      };
    },
  );

const withEvents = (
  one: History,
  change: (events: readonly FoodEvent[]) => readonly FoodEvent[],
): History => ({
  ...one,
  food: { ...one.food, history: change(one.food.history ?? []) },
});
const longer = (event: FoodEvent, minutes: number): FoodEvent => ({
  ...event,
  to: new Date(Date.parse(event.to) + minutes * 60_000).toISOString(),
});

/** One thing made worse. */
const WORSE: readonly (readonly [string, (one: History, by: number) => History])[] = [
  ['hours go by', (one, by) => ({ ...one, hours: one.hours + by })],
  [
    'it stood out longer',
    (one, by) =>
      withEvents(one, (events) => events.map((event) => (event.kind === 'out' ? longer(event, by) : event))),
  ],
  [
    'it stood out once more',
    (one, by) =>
      withEvents(one, (events) => [...events, { kind: 'out', from: at(-20), to: at(-20 + by / 30) }]),
  ],
  [
    'it was hot where it stood',
    (one) =>
      withEvents(one, (events) =>
        events.map((event) => (event.kind === 'out' ? { ...event, hot: true } : event)),
      ),
  ],
  [
    'the power was out',
    (one) =>
      withEvents(one, (events) => [...events, { kind: 'power', from: at(-10), to: at(-2), came: 'lost' }]),
  ],
  [
    'nobody knows how warm it got',
    (one) =>
      withEvents(one, (events) => [
        ...events,
        { kind: 'power', from: at(-10), to: at(-2), came: 'doubtful' },
      ]),
  ],
  [
    'it was opened',
    (one) => {
      const begun = one.food.dates.made ?? one.food.dates.bought ?? TODAY;
      return { ...one, food: { ...one.food, dates: { opened: begun, ...one.food.dates } } };
    },
  ],
  [
    'its use-by is sooner',
    (one, by) => ({
      ...one,
      food: {
        ...one.food,
        dates: { ...one.food.dates, useBy: plusDays(one.food.dates.useBy ?? day(-30), -Math.ceil(by / 10)) },
      },
    }),
  ],
  [
    'it was frozen later',
    (one, by) => {
      const { frozen, thawed } = one.food.dates;
      if (frozen === undefined) return one;
      const later = plusDays(frozen, Math.ceil(by / 40));
      const last = thawed ?? TODAY;
      const dates = { ...one.food.dates, frozen: later < last ? later : last };
      return { ...one, food: { ...one.food, dates } };
    },
  ],
  [
    'it thawed sooner',
    (one, by) => {
      const { frozen, thawed } = one.food.dates;
      if (frozen === undefined || thawed === undefined) return one;
      const sooner = plusDays(thawed, -Math.ceil(by / 40));
      const dates = { ...one.food.dates, thawed: sooner > frozen ? sooner : frozen };
      return { ...one, food: { ...one.food, dates } };
    },
  ],
  ['somebody at risk eats here', (one) => ({ ...one, atRisk: true })],
  [
    'it was heated once more',
    (one) => ({
      ...one,
      // The first time cooks what was raw, which is another food.
      food: { ...one.food, timesReheated: one.food.timesReheated + Math.sign(one.food.timesReheated) },
    }),
  ],
  ['no region was chosen', (one) => ({ ...one, region: null })],
];

describe.each(WORSE)('%s', (_name, worsen) => {
  it('is never told more mildly', () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 1, max: 200 }), (one, by) => {
        const [before, after] = [said(one), said(worsen(one, by))];
        expect(STRICT[after.verdict]).toBeGreaterThanOrEqual(STRICT[before.verdict]);
      }),
      { numRuns: Math.ceil(10_000 / WORSE.length) },
    );
  });
});

const RISKY = ['chicken', 'prawns', 'cream', 'egg', 'minced beef', 'tuna', 'cooked rice'];
const clock = { now: at(0), timeZone: zone };

describe('a riskier part in it', () => {
  const named = fc.constantFrom(...NAMES).filter((name) => !/ with | in | and /.test(name));
  it('never keeps it longer in the fridge', () => {
    fc.assert(
      fc.property(
        named,
        fc.constantFrom(...RISKY),
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom('us' as const, 'uk' as const),
        (name, part, days, region) => {
          const of = (food: string) =>
            STRICT[guidanceFor({ food, where: 'fridge', state: 'cooked', days, region, clock }).verdict];
          expect(of(`${name} with ${part}`)).toBeGreaterThanOrEqual(of(name));
        },
      ),
      { numRuns: 1000 },
    );
  });
  it('never lets it stand out longer', () => {
    const order = { 'no-figure': 0, 'refrigerate-now': 1, unknown: 2, 'throw-out': 3 } as const;
    fc.assert(
      fc.property(
        named,
        fc.constantFrom(...RISKY),
        fc.integer({ min: 0, max: 300 }),
        (name, part, minutes) => {
          const of = (food: string) =>
            order[leftOut({ food, since: at(-minutes / 60), clock, region: 'us' }).verdict];
          expect(of(`${name} with ${part}`)).toBeGreaterThanOrEqual(Math.max(of(name), of(part)));
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('food put together or divided', () => {
  const places = kitchen([]).places;
  const cooked = ({ food }: History): boolean => food.dates.made !== undefined;
  // Raw and cooked under one name are two foods.
  const alike = fc.tuple(history, history).filter(([one, other]) => cooked(one) === cooked(other));
  const together = alike.map(([one, other]) => {
    const at = one.where === 'freezer' ? 'basket' : one.where === 'fridge' ? 'shelf' : 'worktop';
    const same = (from: History, id: string): Item => ({
      ...from.food,
      id,
      name: one.food.name,
      placeId: at,
      dates: {
        ...from.food.dates,
        // One that lies in the freezer has not thawed; what was frozen and lies elsewhere has, today at the latest.
        ...(one.where === 'freezer'
          ? { thawed: undefined }
          : from.food.dates.frozen === undefined
            ? {}
            : { thawed: from.food.dates.thawed ?? TODAY }),
      } as Item['dates'],
    });
    return [same(one, 'one'), same({ ...other, where: one.where }, 'other')] as const;
  });
  const doing = (items: readonly Item[]): Doing => ({
    kitchen: {
      ...emptyKitchen(kitchen([]).household),
      places,
      items: new Map(items.map((one) => [one.id, one])),
    },
    clock,
    speaker: { personId: null },
    newId: () => 'part',
  });
  const strict = (food: Item, from: ReturnType<typeof doing>) =>
    STRICT[assessIn({ ...from.kitchen }, food, clock).verdict];
  it('is judged no milder than the worst of what went into it', () => {
    fc.assert(
      fc.property(together, (both) => {
        const before = doing(both);
        const change = merge(before, ['one', 'other']);
        if (isRefused(change)) throw new Error(change.refused);
        const after = applyChange(before.kitchen, change).items.get('one')!;
        expect(strict(after, before)).toBeGreaterThanOrEqual(
          Math.max(...both.map((one) => strict(one, before))),
        );
      }),
      { numRuns: 1000 },
    );
  });
  it('is judged as before in each part', () => {
    fc.assert(
      fc.property(together, ([one]) => {
        const before = doing([one]);
        const change = split(before, 'one', 2);
        if (isRefused(change)) throw new Error(change.refused);
        const { items } = applyChange(before.kitchen, change);
        expect(strict(items.get('part')!, before)).toBe(strict(items.get('one')!, before));
      }),
      { numRuns: 500 },
    );
  });
});

it('somebody at risk hears every caution that the others hear', () => {
  fc.assert(
    fc.property(history, (one) => {
      const codes = (atRisk: boolean) => said({ ...one, atRisk }).cautions.map(({ code }) => code);
      expect(codes(true)).toEqual(expect.arrayContaining(codes(false)));
    }),
  );
});
