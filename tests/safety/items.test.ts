import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessIn, clockOf, guidanceFor, whereKept } from '../../src/safety/index.js';
import { assess } from '../../src/safety/items.js';
import { plusDays } from '../../src/terms/dates.js';
import { clock, item, kitchen, person } from './items.js';

const none = { outSince: null, timesReheated: 0 };
const inKitchen = (...parts: Parameters<typeof item>) => {
  const record = item(...parts);
  return assessIn(kitchen([record]), record, clock);
};
const codes = (found: { reasons: readonly { code: string }[] }) => found.reasons.map(({ code }) => code);

describe('where an item is kept', () => {
  it.each([
    ['shelf', 'fridge'],
    ['ice box', 'freezer'],
    ['basket', 'freezer'],
    ['rack', 'pantry'],
    ['worktop', 'counter'],
    [null, null],
    ['no such place', null],
  ])('%s: %s', (placeId, where) => expect(whereKept(kitchen([]).places, { placeId })).toBe(where));
});

describe("an item's clock", () => {
  it('starts at the earliest of made and bought', () =>
    expect(clockOf({ made: '2026-11-20', bought: '2026-11-22' }, 'fridge', none)).toMatchObject({
      phase: 'fridge',
      startedOn: '2026-11-20',
    }));
  it('pauses frozen, with the days used kept', () =>
    expect(clockOf({ made: '2026-11-20', frozen: '2026-11-22' }, 'freezer', none)).toMatchObject({
      phase: 'frozen',
      usedBefore: 2,
      since: '2026-11-22',
    }));
  it('runs on thawed', () =>
    expect(
      clockOf({ made: '2026-11-20', frozen: '2026-11-22', thawed: '2026-11-25' }, 'fridge', none),
    ).toMatchObject({ phase: 'thawed', usedBefore: 2 }));
  it('knows from the place that food was frozen or is out of the freezer, with no date', () => {
    expect(clockOf({ bought: '2026-11-20' }, 'freezer', none).phase).toBe('frozen');
    expect(clockOf({ frozen: '2026-11-20' }, 'fridge', none)).toMatchObject({ phase: 'thawed', since: null });
  });
  it('stands still while frozen: days frozen never change what is left', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 0, max: 6 }),
        (used, frozen, after) => {
          const today = '2026-11-25';
          const thawed = plusDays(today, -after);
          const froze = plusDays(thawed, -frozen);
          const record = item('lentil stew', {
            dates: { made: plusDays(froze, -used), frozen: froze, thawed },
          });
          const found = assessIn(kitchen([record]), record, clock);
          expect(found.daysUsed).toBe(used + after);
          expect(found.daysLeft).toBe(4 - used - after);
        },
      ),
    ));
});

describe('what is not known is said to be unknown', () => {
  it('no date at all', () => {
    const found = inKitchen('lentil stew');
    expect([found.verdict, found.daysUsed, found.atLeast]).toEqual(['unknown', 1, true]);
    expect(codes(found)).toContain('date-unknown');
  });
  it('no date, and on record longer than the guidance allows: throw out', () => {
    const found = inKitchen('lentil stew', { addedAt: '2026-11-01T18:00:00.000Z' });
    expect(found.verdict).toBe('throw-out');
    expect(codes(found)[0]).toBe('at-least-days');
  });
  it('thawed at an unknown time', () =>
    expect(inKitchen('lentil stew', { dates: { frozen: '2026-06-01' } }).verdict).toBe('unknown'));
  it('frozen at an unknown time', () =>
    expect(codes(inKitchen('lentil stew', { placeId: 'basket' }))).toContain('frozen-unknown-date'));
  it('a date still to come', () =>
    expect(codes(inKitchen('lentil stew', { dates: { made: '2026-12-01' } }))).toEqual(['future-date']));
  it('a food in no table gets the general answer and says so', () => {
    const found = inKitchen('quandong surprise', { dates: { made: '2026-11-20' } });
    expect([found.verdict, found.match.sure]).toEqual(['throw-out', 'unknown']);
    expect(codes(found)).toContain('general-answer');
  });
});

describe('printed dates', () => {
  it('a use-by outranks the table when it is sooner, and is not moved by it when later', () => {
    const dates = { made: '2026-11-24' };
    expect(inKitchen('cooked chicken', { dates: { ...dates, useBy: '2026-11-26' } }).lastDay).toBe(
      '2026-11-26',
    );
    expect(inKitchen('cooked chicken', { dates: { ...dates, useBy: '2026-12-26' } }).lastDay).toBe(
      '2026-11-28',
    );
  });
  describe('a use-by on what was bought, in the United States', () => {
    const bought = (useBy: string, on = '2026-11-23') =>
      inKitchen('hot dogs', { dates: { bought: on, useBy } });
    it('is about quality: within the days of the chart it is no end', () =>
      expect([bought('2026-11-24').verdict, codes(bought('2026-11-24'))]).toEqual([
        'use-soon',
        ['use-by-quality', 'within-guidance'],
      ]));
    it('is the day to use it by until it is past', () =>
      expect(bought('2026-11-27').lastDay).toBe('2026-11-27'));
    it('never makes the days of the chart milder', () =>
      expect(bought('2026-12-26', '2026-10-20').verdict).toBe('throw-out'));
    it('decides where nothing else tells how old it is', () =>
      expect(inKitchen('hot dogs', { dates: { useBy: '2026-11-20' } }).verdict).toBe('throw-out'));
    it('ends infant formula', () =>
      expect(
        inKitchen('infant formula', { dates: { opened: '2026-11-25', useBy: '2026-11-20' } }).verdict,
      ).toBe('throw-out'));
  });
  it('a best-before is quality', () =>
    expect(inKitchen('crackers', { placeId: 'pantry', dates: { bestBefore: '2026-11-01' } }).verdict).toBe(
      'past-best-quality',
    ));
  it('days after opening, as noted from the label', () => {
    const found = inKitchen('hummus', {
      dates: { opened: '2026-11-22' },
      notes: ['Eat within three days of opening'],
    });
    expect([found.verdict, found.lastDay]).toEqual(['last-day', '2026-11-25']);
  });
});

describe('raw or cooked', () => {
  it('chicken in a freezer bag, bought, is raw; chicken that was made is cooked', () => {
    expect(inKitchen('chicken', { placeId: 'basket', dates: { bought: '2026-11-20' } }).row?.id).toBe(
      'poultry-pieces',
    );
    expect(inKitchen('chicken', { dates: { made: '2026-11-24' } }).row?.id).toBe('leftovers-meat');
  });
  it('heating instructions do not make raw sausages cooked', () => {
    const found = inKitchen('sausages', {
      dates: { bought: '2026-11-22' },
      preparations: [
        {
          method: 'oven',
          from: 'any',
          steps: [],
          minutes: 25,
          watts: null,
          standMinutes: null,
          heat: null,
          portions: null,
        },
      ],
    });
    expect([found.row?.id, found.verdict]).toEqual(['sausage-raw', 'throw-out']);
  });
});

describe('out of the cold', () => {
  it('a dish recorded as standing out over two hours is thrown out, whatever its date', () => {
    const at = (minutes: number) => new Date(Date.parse(clock.now) - minutes * 60_000).toISOString();
    const dates = { made: '2026-11-25' };
    expect(inKitchen('lasagne', { dates, outSince: at(121) }).verdict).toBe('throw-out');
    expect(inKitchen('lasagne', { dates, outSince: at(30) }).verdict).toBe('refrigerate-now');
  });
  it('a cooked dish kept in the pantry since yesterday', () =>
    expect(inKitchen('lentil stew', { placeId: 'pantry', dates: { made: '2026-11-24' } }).verdict).toBe(
      'throw-out',
    ));
  it('soup bought and put in the pantry must be a sealed tin', () => {
    const found = inKitchen('soup', { placeId: 'pantry', dates: { bought: '2026-11-01' } });
    expect([found.verdict, codes(found)[0]]).toEqual(['no-figure', 'sealed-only']);
  });
});

describe('frozen again', () => {
  it('is said, and the second freezing does not count the first as fridge days', () => {
    const found = inKitchen('lentil stew', {
      placeId: 'basket',
      dates: { made: '2026-01-01', thawed: '2026-03-01', frozen: '2026-03-02' },
    });
    expect(found.verdict).not.toBe('throw-out');
    expect(codes(found)).toContain('refrozen');
  });
  it('used up before it was frozen: freezing gives no days back', () => {
    const found = inKitchen('lentil stew', {
      placeId: 'basket',
      dates: { made: '2026-11-01', frozen: '2026-11-08' },
    });
    expect([found.verdict, codes(found)[0]]).toEqual(['throw-out', 'over-before-freezing']);
  });
});

describe('people at higher risk', () => {
  it('are cautioned only when they chose to be known', () => {
    const record = item('brie', { dates: { bought: '2026-11-24' } });
    const cautions = (atRisk: boolean) =>
      assessIn(kitchen([record], [person('Marta', { atRisk })]), record, clock).cautions.map(
        ({ code }) => code,
      );
    expect(cautions(true)).toContain('at-risk-soft-cheese');
    expect(cautions(false)).toEqual([]);
  });
});

describe('the same question twice', () => {
  it('gives the same answer, and another one on another day', () => {
    const record = item('lentil stew', { dates: { made: '2026-11-22' } });
    const on = (now: string) =>
      assess(record, { where: 'fridge', region: 'us', clock: { ...clock, now } }).verdict;
    expect([on('2026-11-24T18:00:00Z'), on('2026-11-24T18:00:00Z'), on('2026-11-27T18:00:00Z')]).toEqual([
      'fine',
      'fine',
      'throw-out',
    ]);
  });
});

describe('what the demo household taught', () => {
  it('peanut butter and jam keep open in the pantry; soup does not', () => {
    const opened = { placeId: 'pantry', dates: { opened: '2026-10-12' } };
    expect(inKitchen('peanut butter', opened).verdict).toBe('fine');
    expect(inKitchen('soup', opened).verdict).toBe('throw-out');
  });
  it('home-made chutney is no leftover; in the pantry it is home canning', () => {
    const dates = { made: '2026-09-26' };
    expect(inKitchen('plum chutney', { dates }).verdict).toBe('no-figure');
    expect(codes(inKitchen('plum chutney', { placeId: 'pantry', dates }))).toContain('home-canned');
  });
  it('frozen peas bought are frozen vegetables, not leftovers', () =>
    expect(
      inKitchen('green peas', { placeId: 'basket', dates: { bought: '2026-10-06', frozen: '2026-10-06' } })
        .match.family,
    ).toBe('frozen-vegetables'));
  it('an open dressing within its best-before is not called fine: the label decides', () => {
    const found = inKitchen('caesar dressing', { dates: { opened: '2026-11-13', bestBefore: '2027-01-05' } });
    expect([found.verdict, codes(found)]).toEqual(['no-figure', ['opened-label-decides']]);
  });
});

describe('hours at room temperature', () => {
  const soup = (hours: number) =>
    guidanceFor({ food: 'cooked chicken', where: 'counter', hours, region: 'us', clock }).verdict;
  it('up to two hours back to the fridge, over two throw out', () =>
    expect([soup(1), soup(2), soup(2.1)]).toEqual(['refrigerate-now', 'refrigerate-now', 'throw-out']));
});
