import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goTogether, rankUseFirst, withoutDate } from '../../src/safety/index.js';
import { plusDays } from '../../src/terms/dates.js';
import { clock, item, kitchen } from './items.js';

const day = (ago: number) => plusDays('2026-11-25', -ago);
const order = (...items: ReturnType<typeof item>[]) =>
  rankUseFirst(kitchen(items), clock).map(({ item: { name } }) => name);

describe('use first', () => {
  it('puts what is past first, then the fewest days left', () =>
    expect(
      order(
        item('cooked rice', { dates: { made: day(1) } }),
        item('lentil stew', { dates: { made: day(6) } }),
        item('cooked chicken', { dates: { made: day(3) } }),
        item('flour', { placeId: 'pantry', dates: { bought: day(90) } }),
      ),
    ).toEqual(['lentil stew', 'cooked chicken', 'cooked rice', 'flour']));
  it('with days alike, the greater hazard, then what is open, then what there is more of', () => {
    expect(
      order(
        item('cooked carrots', { dates: { made: day(3) } }),
        item('cooked chicken', { dates: { made: day(3) } }),
      ),
    ).toEqual(['cooked chicken', 'cooked carrots']);
    expect(
      order(
        item('lentil stew', { dates: { made: day(2) }, amount: { value: 2, unit: 'tub' } }),
        item('bean stew', { dates: { made: day(2) }, amount: { value: 8, unit: 'tub' } }),
      ),
    ).toEqual(['bean stew', 'lentil stew']);
  });
  it('says why, the deciding reason first, with its source', () => {
    const [first] = rankUseFirst(
      kitchen([item('bean stew', { dates: { made: day(3) }, amount: { value: 8, unit: 'tub' } })]),
      clock,
    );
    expect(first?.because.map(({ code }) => code)).toEqual([
      'use-up',
      'days-left',
      'hazard-high',
      'lots-of-it',
    ]);
    expect(first?.because[0]?.source?.document).toBe('Cold Food Storage Chart');
  });
  it('leaves out what is gone, and keeps to a window and a number when asked', () => {
    const gone = item('old soup', { dates: { made: day(9) }, gone: { at: clock.now, how: 'used' } });
    const soon = item('cooked rice', { dates: { made: day(3) } });
    const later = item('milk', { dates: { bought: day(0) } });
    const all = kitchen([gone, soon, later]);
    expect(rankUseFirst(all, clock).map(({ item: { name } }) => name)).toEqual(['cooked rice', 'milk']);
    expect(rankUseFirst(all, clock, { withinDays: 2 }).map(({ item: { name } }) => name)).toEqual([
      'cooked rice',
    ]);
    expect(rankUseFirst(all, clock, { limit: 1 })).toHaveLength(1);
  });
  it('is sorted by days left within a verdict, for any ages', () =>
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 40 }), (ages) => {
        const items = ages.map((ago, n) => item(`stew ${n}`, { dates: { made: day(ago) } }));
        const left = rankUseFirst(kitchen(items), clock).map(({ assessment }) => assessment.daysLeft ?? 0);
        expect(left).toHaveLength(ages.length);
        const known = left.filter((days) => days >= 0);
        expect(known).toEqual([...known].sort((a, b) => a - b));
        // What is past comes before all that is not.
        expect(left.findIndex((days) => days >= 0)).toBe(
          left.length === known.length ? 0 : known.length === 0 ? -1 : left.length - known.length,
        );
      }),
    ));
});

describe('what has no date', () => {
  it('lists living items without any', () =>
    expect(
      withoutDate([item('jam'), item('soup', { dates: { made: day(1) } })]).map(({ name }) => name),
    ).toEqual(['jam']));
});

describe('what goes together', () => {
  const squash = item('roast squash', { notes: ['Makes a soup with the chicken stock'] });
  const stock = item('chicken stock', { placeId: 'basket' });
  it("comes from the cook's own notes, word for word, and from nothing else", () => {
    expect(goTogether([squash, stock])).toEqual([
      { item: squash, other: stock, note: 'Makes a soup with the chicken stock' },
    ]);
    expect(goTogether([item('roast squash'), stock])).toEqual([]);
  });
  it('not with what is gone', () =>
    expect(goTogether([squash, { ...stock, gone: { at: clock.now, how: 'used' as const } }])).toEqual([]));
});
