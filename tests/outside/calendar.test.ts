/** Reckoning of days over leap days, month ends and clock changes, with luxon as the second opinion. */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dayNumber, plainDate, spanEnds } from '../../src/safety/days.js';
import { guidanceFor, leftOut, thawPlan, wallTime } from '../../src/safety/index.js';
import { daysBetween, plusDays, plusMonths } from '../../src/terms/dates.js';

const zones = ['America/Chicago', 'Europe/London', 'Australia/Lord_Howe', 'America/St_Johns', 'Asia/Kolkata'];
const day = fc
  .integer({ min: 0, max: 365 * 60 })
  .map((days) => DateTime.fromISO('2000-01-01', { zone: 'utc' }).plus({ days }).toISODate() ?? '');
const utc = (text: string) => DateTime.fromISO(text, { zone: 'utc' });

describe('days against luxon', () => {
  it('numbers and back', () =>
    fc.assert(
      fc.property(day, (text) => {
        expect(plainDate(dayNumber(text))).toBe(text);
        expect(dayNumber(text)).toBe(utc(text).diff(utc('1970-01-01'), 'days').days);
      }),
    ));
  it('spans of days, weeks, months and years end where luxon ends them', () =>
    fc.assert(
      fc.property(
        day,
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom('days', 'weeks', 'months', 'years'),
        (text, count, unit) => {
          const { high } = spanEnds(dayNumber(text), { low: count, high: count, unit });
          expect(plainDate(high)).toBe(
            utc(text)
              .plus({ [unit]: count })
              .toISODate(),
          );
        },
      ),
    ));
  it('agree with the days the rest of the kitchen reckons', () =>
    fc.assert(
      fc.property(day, fc.integer({ min: -400, max: 400 }), (text, count) => {
        expect(plusDays(text, count)).toBe(plainDate(dayNumber(text) + count));
        expect(daysBetween(text, plusDays(text, count))).toBe(count);
        expect(plusMonths(text, Math.abs(count) % 30)).toBe(
          utc(text)
            .plus({ months: Math.abs(count) % 30 })
            .toISODate(),
        );
      }),
    ));
  it.each([
    ['2026-01-31', 1, '2026-02-28'],
    ['2028-01-31', 1, '2028-02-29'],
    ['2028-02-29', 12, '2029-02-28'],
    ['2099-11-30', 3, '2100-02-28'],
  ])('%s and %d months: %s', (from, months, to) =>
    expect(plainDate(spanEnds(dayNumber(from), { low: months, high: months, unit: 'months' }).high)).toBe(to),
  );
});

describe('household days across clock changes', () => {
  it('age in days is the difference of wall-calendar days, whatever the clocks do', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: 365 * 24 * 60 }),
        fc.integer({ min: 0, max: 12 }),
        (timeZone, minutes, back) => {
          const now = DateTime.fromISO('2026-01-01T00:00:00Z').plus({ minutes });
          const made = now.setZone(timeZone).startOf('day').minus({ days: back }).toISODate() ?? '';
          const found = guidanceFor({
            food: 'soup',
            where: 'fridge',
            region: 'us',
            dates: { made },
            clock: { now: now.toUTC().toISO() ?? '', timeZone },
          });
          expect(found.daysUsed).toBe(back);
          expect(found.lastDay).toBe(DateTime.fromISO(made, { zone: 'utc' }).plus({ days: 4 }).toISODate());
        },
      ),
    ));
  it('a wall time is the moment luxon says, DST nights included', () =>
    fc.assert(
      fc.property(day, fc.integer({ min: 4, max: 23 }), fc.constantFrom(...zones), (text, hour, zone) => {
        const expected = DateTime.fromISO(`${text}T${String(hour).padStart(2, '0')}:30`, { zone });
        expect(wallTime(text, `${hour}:30`, zone)).toBe(expected.toUTC().toISO());
      }),
    ));
  it('hours out are elapsed hours: the night clocks go back has one more', () => {
    // Chicago, 1 November 2026: 00:30 CDT to 01:45 CST is two hours and a quarter.
    const found = leftOut({
      food: 'soup',
      since: '2026-11-01T05:30:00.000Z',
      clock: { now: '2026-11-01T07:45:00.000Z', timeZone: 'America/Chicago' },
      region: 'us',
    });
    expect([found.verdict, found.minutesOut]).toEqual(['throw-out', 135]);
  });
  it('thawing hours are elapsed hours over the change', () => {
    const wantedAt = wallTime('2026-03-08', '18:00', 'America/Chicago');
    const plan = thawPlan({
      food: 'chicken',
      pounds: 4,
      wantedAt,
      clock: { now: '2026-03-01T12:00:00.000Z', timeZone: 'America/Chicago' },
      region: 'us',
    });
    const start = DateTime.fromISO(plan.options[0]?.startBy ?? '');
    expect(DateTime.fromISO(wantedAt).diff(start, 'hours').hours).toBe(24);
    expect(start.setZone('America/Chicago').toFormat('yyyy-MM-dd HH:mm')).toBe('2026-03-07 17:00');
  });
});
