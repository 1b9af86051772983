import { toOrdinal } from 'n2words/en-US';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, plusDays } from '../../src/terms/dates.js';
import { american, british, gb, inGb, inUs, say, us } from './helpers.js';

const day = (text: string, monthOnly = false) => ({ kind: 'date', day: text, monthOnly }) as const;
const TODAY = '2026-11-25';

describe('days as spoken', () => {
  it.each([
    ['2026-11-25', 'today', 'today'],
    ['2026-11-24', 'yesterday', 'yesterday'],
    ['2026-11-26', 'tomorrow', 'tomorrow'],
    ['2026-11-20', 'last Friday', 'last Friday'],
    ['2026-11-18', 'a week ago today', 'a week ago today'],
    ['2026-11-28', 'on Saturday', 'on Saturday'],
    ['2026-12-02', 'a week from today', 'a week today'],
    ['2026-12-09', 'on December ninth', 'on the ninth of December'],
    ['2026-10-12', 'on October twelfth', 'on the twelfth of October'],
    ['2027-01-02', 'on January second', 'on the second of January'],
    // Ten months past: without its year it would sound like the January to come.
    ['2026-01-02', 'on January second, twenty twenty-six', 'on the second of January twenty twenty-six'],
    [
      '2025-11-27',
      'on November twenty-seventh, twenty twenty-five',
      'on the twenty-seventh of November twenty twenty-five',
    ],
  ])('%s', (text, american_, british_) => {
    expect(american.phraseText(say('test-on', { day: day(text) }), us)).toBe(american_);
    expect(british.phraseText(say('test-on', { day: day(text) }), gb)).toBe(british_);
  });

  it('months alone', () => {
    expect(inUs(day('2027-03-31', true))).toBe('March');
    expect(inGb(day('2026-11-30', true))).toBe('this month');
    expect(american.phraseText(say('test-on', { day: day('2025-03-31', true) }), us)).toBe(
      'in March twenty twenty-five',
    );
    expect(american.phraseText(say('test-by', { day: day('2027-03-31', true) }), us)).toBe(
      'by the end of March',
    );
    expect(american.phraseText(say('test-by', { day: day('2026-11-27') }), us)).toBe('by Friday');
  });

  it('go by the household’s own day', () => {
    const late = { now: '2026-11-26T04:30:00Z', timeZone: 'America/Chicago' }; // still the 25th there
    expect(american.valueText(day('2026-11-25'), { ...us, clock: late })).toBe('today');
    expect(
      american.valueText(day('2026-11-25'), { ...us, clock: { ...late, timeZone: 'Europe/London' } }),
    ).toBe('yesterday');
  });
});

const named = (date: string, part: 'weekday' | 'month'): string =>
  new Date(`${date}T00:00:00Z`).toLocaleDateString('en', { [part]: 'long', timeZone: 'UTC' });

/** Every day of seven years with its English names, nearest to today first. */
const calendar = Array.from({ length: 2_401 }, (_, i) => plusDays(TODAY, i - 1_200))
  .map((date) => ({
    date,
    away: daysBetween(TODAY, date),
    weekday: named(date, 'weekday'),
    month: named(date, 'month'),
    nth: toOrdinal(Number(date.slice(8))),
    year: Number(date.slice(0, 4)),
  }))
  .sort((a, b) => Math.abs(a.away) - Math.abs(b.away));

const YEARS: Record<string, number> = {
  'twenty twenty-three': 2023,
  'twenty twenty-four': 2024,
  'twenty twenty-five': 2025,
  'twenty twenty-six': 2026,
  'twenty twenty-seven': 2027,
  'twenty twenty-eight': 2028,
  'twenty twenty-nine': 2029,
};

/** Reads a spoken day back, as a listener would: the nearest day of that name unless a year is said. */
const hearDay = (words: string): string | undefined => {
  const fixed: Record<string, number> = {
    today: 0,
    yesterday: -1,
    tomorrow: 1,
    'a week ago today': -7,
    'a week from today': 7,
    'a week today': 7,
  };
  if (words in fixed) return plusDays(TODAY, fixed[words] ?? 0);
  const weekday = /^(last )?(\w+day)$/.exec(words);
  if (weekday)
    return calendar.find((day) => day.weekday === weekday[2] && (weekday[1] ? day.away < 0 : day.away > 0))
      ?.date;
  const { month, nth, year } =
    (
      /^(?<month>\w+) (?<nth>[\w-]+)(?:, (?<year>.+))?$/.exec(words) ??
      /^the (?<nth>[\w-]+) of (?<month>\w+)(?: (?<year>.+))?$/.exec(words)
    )?.groups ?? {};
  return calendar.find(
    (day) => day.month === month && day.nth === nth && (year === undefined || day.year === YEARS[year]),
  )?.date;
};

describe('a day once spoken', () => {
  it('is heard as the same day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -800, max: 800 }), fc.boolean(), (away, isBritish) => {
        const date = plusDays(TODAY, away);
        const words = isBritish ? inGb(day(date)) : inUs(day(date));
        expect(words).not.toMatch(/\d/);
        expect(hearDay(words)).toBe(date);
      }),
      { numRuns: 300 },
    );
  });
});
