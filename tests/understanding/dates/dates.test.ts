import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { SaidDate } from '../../../src/understanding/intents.js';
import { dateRules } from '../../../src/understanding/dates/index.js';
import { lexiconFor, normalise } from '../../../src/understanding/words/index.js';

const lexicon = lexiconFor('en');
type Lean = 'near' | 'past' | 'future' | 'printed' | 'window';
interface Around {
  now?: string;
  timeZone?: string;
  locale?: string;
}
/** Wednesday 13 May 2026, one in the afternoon in Chicago. */
const wednesday = { now: '2026-05-13T18:00:00.000Z', timeZone: 'America/Chicago', locale: 'en-US' };

const matches = (text: string, lean: Lean, around: Around = {}) => {
  const { now, timeZone, locale } = { ...wednesday, ...around };
  const { tokens } = normalise(text, locale);
  const uri = lean === 'near' ? 'builtin:grammar/date' : `builtin:grammar/date?lean=${lean}`;
  const rule = dateRules(lexicon, { now, timeZone }, locale).get(uri)!;
  return { tokens, found: rule.matchesAt(tokens, 0) };
};
/** The reading of the whole text. */
const read = (text: string, lean: Lean, around: Around = {}): SaidDate | undefined => {
  const { tokens, found } = matches(text, lean, around);
  return found.find(({ length }) => length === tokens.length)?.value as SaidDate | undefined;
};

describe('what was made, bought, opened or frozen', () => {
  it.each([
    ['today', '2026-05-13'],
    ['yesterday', '2026-05-12'],
    ['yesterday evening', '2026-05-12'],
    ['last night', '2026-05-12'],
    ['the day before yesterday', '2026-05-11'],
    ['last sunday', '2026-05-10'],
    ['sunday', '2026-05-10'],
    ['sunday night', '2026-05-10'],
    ['wednesday', '2026-05-06'],
    ['last wednesday', '2026-05-06'],
    ['this monday', '2026-05-11'],
    ['the sunday before last', '2026-05-03'],
    ['the twelfth', '2026-05-12'],
    ['the fourteenth', '2026-04-14'],
    ['the thirty first', '2026-03-31'],
    ['two weeks ago', '2026-04-29'],
    ['a couple of days ago', '2026-05-11'],
    ['three hours ago', '2026-05-13'],
    ['the ninth of june', '2025-06-09'],
    ['june 9th', '2025-06-09'],
    ['may the fifth', '2026-05-05'],
    ['the ninth of june 2024', '2024-06-09'],
    ['june ninth twenty twenty four', '2024-06-09'],
    ['easter', '2026-04-05'],
    ['last christmas', '2025-12-25'],
    ['two days after easter', '2026-04-07'],
    ['good friday', '2026-04-03'],
    ['february twenty ninth', '2024-02-29'],
    ['on monday', '2026-05-11'],
    ['on the ninth of may', '2026-05-09'],
  ])('%j is %s', (text, day) => expect(read(text, 'past')).toEqual({ day }));

  it.each([
    ['a month ago', { day: '2026-04-13', rough: true }],
    ['the other day', { day: '2026-05-10', rough: true }],
    ['about three days ago', { day: '2026-05-10', rough: true }],
    ['over the weekend', { day: '2026-05-09', until: '2026-05-10' }],
    ['last week', { day: '2026-05-04', until: '2026-05-10' }],
    ['the week before easter', { day: '2026-03-29', until: '2026-04-04', rough: true }],
    ['in march', { day: '2026-03-01', until: '2026-03-31', monthOnly: true }],
  ])('%j', (text, said) => expect(read(text, 'past')).toEqual(said));
});

describe('what is wanted or lasts until', () => {
  it.each([
    ['thursday', '2026-05-14'],
    ['wednesday', '2026-05-20'],
    ['this friday', '2026-05-15'],
    ['tomorrow night', '2026-05-14'],
    ['the day after tomorrow', '2026-05-15'],
    ['in three days', '2026-05-16'],
    ['two days from now', '2026-05-15'],
    ['the twelfth', '2026-06-12'],
    ['june ninth', '2026-06-09'],
    ['the first of may', '2027-05-01'],
    ['christmas eve', '2026-12-24'],
    ['thanksgiving', '2026-11-26'],
    ['two days before christmas', '2026-12-23'],
    ['easter', '2027-03-28'],
  ])('%j is %s', (text, day) => expect(read(text, 'future')).toEqual({ day }));

  it('says that "next friday" in the same week is unsure', () => {
    expect(read('next friday', 'future')).toEqual({ day: '2026-05-22', rough: true });
    expect(read('next monday', 'future')).toEqual({ day: '2026-05-18' });
  });
});

describe('what is printed on a label', () => {
  it.each<[string, string, SaidDate]>([
    ['03/04', 'en-US', { day: '2026-03-04' }],
    ['03/04', 'en-GB', { day: '2026-04-03' }],
    ['03/04/2027', 'en-GB', { day: '2027-04-03' }],
    ['15/03/27', 'en-US', { day: '2027-03-15' }],
    ['05/27', 'en-US', { day: '2026-05-27' }],
    ['05/27', 'en-GB', { day: '2027-05-01', until: '2027-05-31', monthOnly: true }],
    ['05/2027', 'en-US', { day: '2027-05-01', until: '2027-05-31', monthOnly: true }],
    ['2027-05-14', 'en-US', { day: '2027-05-14' }],
    ['may twenty twenty seven', 'en-US', { day: '2027-05-01', until: '2027-05-31', monthOnly: true }],
    ['may 2027', 'en-US', { day: '2027-05-01', until: '2027-05-31', monthOnly: true }],
    ['may twenty', 'en-US', { day: '2026-05-20' }],
    ['may twenty seven', 'en-US', { day: '2026-05-27' }],
    ['the ninth of june', 'en-US', { day: '2026-06-09' }],
    ['the ninth of june twenty twenty six', 'en-GB', { day: '2026-06-09' }],
    ['february twenty ninth', 'en-US', { day: '2028-02-29' }],
    ['the twelfth', 'en-US', { day: '2026-06-12' }],
    ['friday', 'en-US', { day: '2026-05-15' }],
  ])('%j in %s', (text, locale, said) => expect(read(text, 'printed', { locale })).toEqual(said));
});

describe('windows', () => {
  it.each<[string, SaidDate]>([
    ['this week', { day: '2026-05-11', until: '2026-05-17' }],
    ['next week', { day: '2026-05-18', until: '2026-05-24' }],
    ['this weekend', { day: '2026-05-16', until: '2026-05-17' }],
    ['in may', { day: '2026-05-01', until: '2026-05-31', monthOnly: true }],
    ['before may', { day: '1970-01-01', until: '2026-04-30' }],
    ['since monday', { day: '2026-05-11', until: '2026-05-13' }],
    ['since yesterday', { day: '2026-05-12', until: '2026-05-13' }],
    ['by friday', { day: '1970-01-01', until: '2026-05-15' }],
    ['after the ninth of may', { day: '2026-05-10', until: '9999-12-31' }],
    ['the last two days', { day: '2026-05-11', until: '2026-05-13' }],
    ['in the last week', { day: '2026-05-06', until: '2026-05-13' }],
    ['next three days', { day: '2026-05-13', until: '2026-05-16' }],
    ['between monday and thursday', { day: '2026-05-11', until: '2026-05-14' }],
    ['early june', { day: '2026-06-01', until: '2026-06-10', rough: true }],
    ['the end of may', { day: '2026-05-21', until: '2026-05-31', rough: true }],
    ['this month', { day: '2026-05-01', until: '2026-05-31' }],
    ['last year', { day: '2025-01-01', until: '2025-12-31' }],
    ['lately', { day: '2026-05-06', until: '2026-05-13', rough: true }],
    ['tomorrow', { day: '2026-05-14' }],
  ])('%j', (text, said) => expect(read(text, 'window')).toEqual(said));
});

describe('what is no date', () => {
  it.each([
    'lentil stew',
    'the sun dried tomatoes',
    'june thirty first',
    '13/13',
    'in the freezer',
    'the soup sat out',
    'two tubs',
    'dates',
  ])('%j', (text) => {
    for (const lean of ['near', 'past', 'future', 'printed', 'window'] as const)
      expect(read(text, lean)).toBeUndefined();
  });
  it('gives an ordinal alone little weight', () => {
    const { found } = matches('the second shelf', 'past');
    expect(found.map(({ weight }) => weight)).toEqual([0.6]);
  });
});

// Outside check: luxon reckons the same days its own way.
describe('against luxon', () => {
  const zones = [
    'America/Chicago',
    'Europe/London',
    'Pacific/Auckland',
    'Asia/Kolkata',
    'America/St_Johns',
    'UTC',
  ];
  const moment = fc.record({
    // Within the hours around changes of the clocks as often as not.
    now: fc
      .oneof(
        fc.date({
          min: new Date('2020-01-01T00:00:00Z'),
          max: new Date('2032-12-31T00:00:00Z'),
          noInvalidDate: true,
        }),
        fc
          .constantFrom(
            '2026-03-08T07:59:00Z',
            '2026-03-08T08:01:00Z',
            '2026-11-01T06:30:00Z',
            '2026-03-29T00:59:00Z',
            '2026-10-25T01:30:00Z',
            '2024-02-29T23:30:00Z',
            '2027-12-31T23:59:00Z',
          )
          .map((text) => new Date(text)),
      )
      .map((date) => date.toISOString()),
    timeZone: fc.constantFrom(...zones),
  });
  const here = ({ now, timeZone }: { now: string; timeZone: string }): DateTime =>
    DateTime.fromISO(now, { zone: timeZone });
  const words = [
    'zero',
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
    'twelve',
  ];

  it('goes days, weeks, months and years back and forth', () => {
    fc.assert(
      fc.property(
        moment,
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom('days', 'weeks', 'months', 'years'),
        (around, many, unit) => {
          const back = here(around)
            .minus({ [unit]: many })
            .toISODate();
          const on = here(around)
            .plus({ [unit]: many })
            .toISODate();
          expect(read(`${words[many]} ${unit} ago`, 'past', around)?.day).toBe(back);
          expect(read(`in ${words[many]} ${unit}`, 'future', around)?.day).toBe(on);
        },
      ),
    );
  });

  it('counts hours in time, not in days, over changes of the clocks', () => {
    fc.assert(
      fc.property(moment, fc.integer({ min: 1, max: 12 }), (around, many) => {
        expect(read(`${words[many]} hours ago`, 'past', around)?.day).toBe(
          here(around).minus({ hours: many }).toISODate(),
        );
      }),
    );
  });

  it('finds weekdays within seven days on the side asked for', () => {
    const names = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
    fc.assert(
      fc.property(moment, fc.integer({ min: 0, max: 6 }), (around, weekday) => {
        const today = here(around).startOf('day');
        for (const [lean, sign] of [
          ['past', -1],
          ['future', 1],
        ] as const) {
          const day = DateTime.fromISO(read(names[weekday]!, lean, around)!.day, { zone: around.timeZone });
          expect(day.weekday).toBe(weekday + 1);
          const gap = sign * Math.round(day.diff(today, 'days').days);
          expect(gap).toBeGreaterThanOrEqual(1);
          expect(gap).toBeLessThanOrEqual(7);
        }
      }),
    );
  });

  it('puts days with a month in the nearest year on the side asked for', () => {
    fc.assert(
      fc.property(
        moment,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 28 }),
        (around, month, day) => {
          const today = here(around).toISODate()!;
          const text = `${day} ${DateTime.local(2024, month, 1).setLocale('en').toFormat('LLLL')}`;
          const [gone, coming] = [read(text, 'past', around)!.day, read(text, 'future', around)!.day];
          expect(gone <= today && today <= coming).toBe(true);
          for (const found of [gone, coming]) {
            const parts = DateTime.fromISO(found);
            expect([parts.month, parts.day]).toEqual([month, day]);
          }
          expect(DateTime.fromISO(coming).year - DateTime.fromISO(gone).year).toBe(gone === coming ? 0 : 1);
        },
      ),
    );
  });

  it('takes this week as the seven days from Monday', () => {
    fc.assert(
      fc.property(moment, (around) => {
        const monday = here(around).startOf('week');
        expect(read('this week', 'window', around)).toEqual({
          day: monday.toISODate(),
          until: monday.plus({ days: 6 }).toISODate(),
        });
        const first = here(around).startOf('month');
        expect(read('this month', 'window', around)).toEqual({
          day: first.toISODate(),
          until: first.endOf('month').toISODate(),
        });
      }),
    );
  });
});

// Easter Sundays as calendars printed them, 2038 being the latest day it can fall on; from memory.
describe('easter', () => {
  it.each([
    '2020-04-12',
    '2021-04-04',
    '2022-04-17',
    '2023-04-09',
    '2024-03-31',
    '2025-04-20',
    '2026-04-05',
    '2027-03-28',
    '2028-04-16',
    '2029-04-01',
    '2030-04-21',
    '2038-04-25',
  ])('%s', (sunday) => {
    const around = { now: `${sunday}T12:00:00.000Z`, timeZone: 'UTC' };
    expect(read('easter', 'near', around)).toEqual({ day: sunday });
    expect(read('easter monday', 'near', around)?.day).toBe(
      DateTime.fromISO(sunday).plus({ days: 1 }).toISODate(),
    );
  });
});
