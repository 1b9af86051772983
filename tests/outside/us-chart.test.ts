/**
 * Every row of the FoodSafety.gov Cold Food Storage Chart (HHS, USDA, FDA; current edition as copied 2022 to
 * 2025), the rows of older government charts, and NSF's dairy sheet: asked as a cook would name the food, and
 * compared with figures written down here apart from the tables. Where charts disagree the shorter is expected.
 */
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { guidanceFor } from '../../src/safety/index.js';
import type { GuidanceQuestion } from './types.js';

const start = DateTime.fromISO('2026-03-02');
type Unit = 'days' | 'weeks' | 'months' | 'years';
type Span = readonly [low: number, high: number, unit: Unit];
const d = (low: number, high = low): Span => [low, high, 'days'];
const w = (low: number, high = low): Span => [low, high, 'weeks'];
const m = (low: number, high = low): Span => [low, high, 'months'];

type More = Partial<Pick<GuidanceQuestion, 'opened' | 'state'>>;
/** Food as named, how it is kept, fridge time, freezer time (null: the chart says not to). */
type Row = readonly [food: string, more: More, fridge: Span | null, freezer: Span | null];
const opened = { opened: true };
const raw = { state: 'raw' } as const;
const cooked = { state: 'cooked' } as const;

const CHART: readonly Row[] = [
  ['egg salad', {}, d(3, 4), null],
  ['chicken salad', {}, d(3, 4), null],
  ['ham salad', {}, d(3, 4), null],
  ['tuna salad', {}, d(3, 4), null],
  ['macaroni salad', {}, d(3, 4), null],
  ['hot dogs', opened, w(1), m(1, 2)],
  ['hot dogs', {}, w(2), m(1, 2)],
  ['luncheon meat', opened, d(3, 5), m(1, 2)],
  ['deli-sliced ham', {}, d(3, 5), m(1, 2)],
  ['luncheon meat', {}, w(2), m(1, 2)],
  ['bacon', {}, w(1), m(1)],
  ['raw pork sausage', {}, d(1, 2), m(1, 2)],
  ['fully cooked sausage', {}, w(1), m(1, 2)],
  ['sausage purchased frozen', cooked, d(3, 4), m(1, 2)],
  ['hamburger', raw, d(1, 2), m(3, 4)],
  ['ground turkey', {}, d(1, 2), m(3, 4)],
  ['ground lamb', {}, d(1, 2), m(3, 4)],
  ['beef steaks', {}, d(3, 5), m(4, 12)],
  ['lamb chops', {}, d(3, 5), m(4, 12)],
  ['pork roast', {}, d(3, 5), m(4, 12)],
  ['fresh uncured ham', raw, d(3, 5), m(6)],
  ['fresh uncured ham', cooked, d(3, 4), m(3, 4)],
  ['cured ham, cook before eating', {}, d(5, 7), m(3, 4)],
  ['vacuum sealed ham', {}, w(2), m(1, 2)],
  ['whole cooked ham', {}, w(1), m(1, 2)],
  ['ham slices', {}, d(3, 5), m(1, 2)],
  ['country ham', {}, w(1), m(1)],
  ['refrigerated canned ham', {}, m(6, 9), null],
  ['canned ham', opened, d(3, 4), m(1, 2)],
  ['prosciutto', {}, m(2, 3), m(1)],
  ['whole chicken', raw, d(1, 2), [1, 1, 'years']],
  ['whole turkey', raw, d(1, 2), [1, 1, 'years']],
  ['chicken pieces', raw, d(1, 2), m(9)],
  ['mackerel', raw, d(1, 3), m(2, 3)],
  ['haddock', raw, d(1, 3), m(6, 8)],
  ['pollock', raw, d(1, 3), m(4, 8)],
  // The USDA's storage data (2018) give these two shorter than the chart's two to four days.
  ['fresh crab meat', {}, d(1, 3), m(2, 4)],
  ['fresh lobster', raw, d(1, 2), m(2, 4)],
  ['live crab', {}, d(1), null],
  // From memory on the chart (5 to 10, 3 to 5, 3 to 10, 1 to 3 days): the shorter sheets until it is seen.
  ['live mussels', {}, d(1, 2), null],
  ['shrimp', raw, d(1, 2), m(6, 18)],
  ['shucked oysters', {}, d(1, 2), m(3, 4)],
  ['squid', raw, d(1, 2), m(6, 18)],
  ['eggs in shell', {}, w(3, 5), null],
  ['raw egg whites', {}, d(2, 4), m(12)],
  ['hard-cooked eggs', {}, w(1), null],
  ['liquid egg substitute', {}, w(1), null],
  ['liquid egg substitute', opened, d(3), null],
  ['frozen egg substitute', opened, d(3, 4), null],
  ['egg casserole', {}, d(3, 4), m(2, 3)],
  ['commercial eggnog', {}, d(3, 5), m(6)],
  ['homemade eggnog', {}, d(2, 4), null],
  ['pumpkin pie', {}, d(3, 4), m(1, 2)],
  ['pecan pie', {}, d(3, 4), m(1, 2)],
  ['custard pie', {}, d(3, 4), null],
  ['quiche', {}, d(3, 4), m(1, 2)],
  ['vegetable soup', {}, d(3, 4), m(2, 3)],
  ['beef stew', {}, d(3, 4), m(2, 3)],
  ['cooked chicken', {}, d(3, 4), m(2, 6)],
  ['leftover meat', {}, d(3, 4), m(2, 6)],
  ['chicken nuggets', {}, d(3, 4), m(1, 3)],
  ['pizza', {}, d(3, 4), m(1, 2)],
  // USDA FSIS, Leftovers and Food Safety: any leftovers.
  ['leftovers', {}, d(3, 4), m(3, 4)],
  ['gravy', {}, d(3, 4), m(3, 4)],
];

/** USDA FSIS older cold-storage chart; Minnesota Department of Health 2007; CDC (cut melon). */
const OLDER: readonly Row[] = [
  ['pepperoni', {}, w(2, 3), m(1, 2)],
  ['summer sausage', {}, m(3), m(1, 2)],
  ['summer sausage', opened, w(3), m(1, 2)],
  ['smoked breakfast links', {}, d(7), m(1, 2)],
  ['corned beef', raw, d(5, 7), m(1)],
  ['stuffed pork chops', raw, d(1), null],
  ['frozen dinner', {}, null, m(3, 4)],
  ['fried chicken', {}, d(3, 4), m(4)],
  ['chicken hotdish', {}, d(3, 4), m(4, 6)],
  ['chicken pieces in broth', {}, d(1, 2), m(6)],
  ['venison', raw, d(3, 5), m(6, 12)],
  ['rabbit', raw, d(1, 2), m(12)],
  ['duck', raw, d(1, 2), m(6)],
  ['cut melon', {}, d(7), null],
];

/** NSF fact sheets: a guide, not a government chart. */
const GUIDE: readonly Row[] = [
  ['milk', {}, d(7), m(3)],
  ['swiss cheese', {}, w(3, 4), m(6)],
  ['brie', {}, w(1), m(6)],
  ['cottage cheese', {}, w(1), null],
  ['yogurt', {}, d(7, 14), m(1, 2)],
  ['margarine', {}, m(4, 5), m(12)],
  ['orange juice', {}, w(3), m(8, 12)],
  // The sheet has no freezer time for it; the storage data has.
  ['orange juice', opened, d(7, 10), m(8, 12)],
  ['mayonnaise', opened, m(2), null],
];

const iso = (date: DateTime): string => date.toISODate() ?? '';
const plus = (count: number, unit: Unit): string => iso(start.plus({ [unit]: count }));
const on = (day: string): { now: string; timeZone: string } => ({
  now: `${day}T18:00:00.000Z`,
  timeZone: 'America/Chicago',
});
const begun = (more: More): NonNullable<GuidanceQuestion['dates']> => {
  const day = iso(start);
  return more.opened === true ? { opened: day } : more.state === 'cooked' ? { made: day } : { bought: day };
};

const checkFridge = ([food, more, fridge]: Row): void => {
  if (fridge === null) return;
  const [low, high, unit] = fridge;
  const lastDay = plus(high, unit);
  const ask = (day: string) =>
    guidanceFor({ food, where: 'fridge', region: 'us', dates: begun(more), clock: on(day), ...more });
  const found = ask(lastDay);
  expect(found.lastDay).toBe(lastDay);
  expect(found.verdict).toBe('last-day');
  const soon = low === high ? iso(DateTime.fromISO(lastDay).minus({ days: 1 })) : plus(low, unit);
  expect(found.useSoonFrom).toBe(soon);
  expect(ask(iso(DateTime.fromISO(lastDay).plus({ days: 1 }))).verdict).toBe('throw-out');
  expect(found.row?.source.region).toBe('us');
};

const checkFreezer = ([food, more, , freezer]: Row): void => {
  const day = iso(start);
  const found = guidanceFor({
    food,
    where: 'freezer',
    region: 'us',
    dates: { frozen: day },
    clock: on(day),
    ...more,
  });
  if (freezer === null) {
    expect(found.qualityUntil).toBeNull();
    expect(found.verdict).toBe('no-figure');
    return;
  }
  const [low, high, unit] = freezer;
  expect(found.qualityUntil).toEqual({ from: plus(low, unit), to: plus(high, unit) });
  // Freezer times are about quality: past them it is never "throw out".
  const later = DateTime.fromISO(plus(high, unit)).plus({ days: 1 }).toISODate() ?? '';
  const past = guidanceFor({
    food,
    where: 'freezer',
    region: 'us',
    dates: { frozen: day },
    clock: on(later),
    ...more,
  });
  expect(past.verdict).toBe('past-best-quality');
};

const name = ([food, more]: Row): string =>
  [food, more.opened === true ? 'opened' : '', more.state ?? ''].filter((part) => part !== '').join(', ');

describe.each([
  ['FoodSafety.gov Cold Food Storage Chart', CHART],
  ['older government charts', OLDER],
  ['NSF sheets', GUIDE],
] as const)('%s', (_title, rows) => {
  it.each(rows.map((row) => [name(row), row] as const))('%s: fridge', (_name, row) => checkFridge(row));
  it.each(rows.map((row) => [name(row), row] as const))('%s: freezer', (_name, row) => checkFreezer(row));
});

describe('how each is marked', () => {
  it.each(OLDER.filter(([, , fridge]) => fridge !== null).map((row) => [name(row), row] as const))(
    '%s is said to be older, or current from CDC',
    (_name, [food, more]) => {
      const found = guidanceFor({
        food,
        where: 'fridge',
        region: 'us',
        dates: begun(more),
        clock: on('2026-03-02'),
        ...more,
      });
      const codes = found.reasons.map(({ code }) => code);
      expect(found.row?.standing === 'current' || codes.includes('older-guidance')).toBe(true);
    },
  );
  it('a thawed carton of egg substitute keeps a week', () => {
    const found = guidanceFor({
      food: 'frozen egg substitute',
      where: 'fridge',
      region: 'us',
      dates: { thawed: '2026-03-02' },
      clock: on('2026-03-03'),
    });
    expect(found.lastDay).toBe('2026-03-09');
  });
  it('eggs frozen in the shell by accident are used at once after thawing', () => {
    const found = guidanceFor({
      food: 'eggs',
      where: 'fridge',
      region: 'us',
      dates: { frozen: '2026-03-01', thawed: '2026-03-02' },
      clock: on('2026-03-02'),
    });
    expect([found.verdict, found.row?.id]).toEqual(['last-day', 'eggs-frozen-in-shell']);
  });
  it('canned ham unopened on a shelf has no figure of days here but its label', () => {
    const found = guidanceFor({
      food: 'canned ham',
      where: 'pantry',
      region: 'us',
      days: 100,
      clock: on('2026-03-02'),
    });
    expect(found.verdict).toBe('no-figure');
  });
});
