/** Household time against luxon, another reckoning of the same zones. */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { instantOf, lastAt, nextAt } from '../../src/schedule/wall-time.js';
import { isQuiet, nextSummaryAt, quietUntil } from '../../src/schedule/summary-time.js';
import { plusDays } from '../../src/terms/dates.js';
import { at } from './kitchens.js';

const zone = fc.constantFrom(
  'America/Chicago',
  'Europe/London',
  'Australia/Lord_Howe', // moves by half an hour
  'Pacific/Auckland',
  'America/St_Johns',
  'Asia/Kolkata',
  'Africa/Casablanca', // leaves and comes back around Ramadan
);
const time = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([h, m]) => `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`);
const day = fc.integer({ min: 0, max: 1_500 }).map((n) => plusDays('2024-01-01', n));
const instant = fc
  .integer({ min: 0, max: 4 * 365 * 24 * 60 })
  .map((n) => new Date(Date.UTC(2024, 0, 1) + n * 60_000).toISOString());

const shown = (instantText: string, timeZone: string): string =>
  DateTime.fromISO(instantText, { zone: timeZone }).toFormat('yyyy-MM-dd HH:mm');

describe('a wall time on a day', () => {
  it('is the first instant at which the clock shows it, or as much later as a gap is long', () => {
    fc.assert(
      fc.property(day, time, zone, (date, wall, timeZone) => {
        const found = instantOf(date, wall, timeZone);
        const luxon = DateTime.fromISO(`${date}T${wall}`, { zone: timeZone });
        if (shown(found, timeZone) === `${date} ${wall}`) {
          // No earlier instant within three hours shows the same.
          const earlier = [30, 60, 120, 180].map((minutes) =>
            DateTime.fromISO(found, { zone: timeZone }).minus({ minutes }).toFormat('yyyy-MM-dd HH:mm'),
          );
          expect(earlier).not.toContain(`${date} ${wall}`);
        } else {
          // A time that no clock shows: luxon moves it on by the gap as well.
          expect(luxon.toFormat('yyyy-MM-dd HH:mm')).not.toBe(`${date} ${wall}`);
          expect(Date.parse(found)).toBe(luxon.toMillis());
        }
      }),
      { numRuns: 1_000 },
    );
  });

  it.each([
    ['2026-03-08', '02:30', 'America/Chicago', '2026-03-08T08:30:00.000Z'], // there is no half past two: half past three
    ['2026-11-01', '01:30', 'America/Chicago', '2026-11-01T06:30:00.000Z'], // the first of two
    ['2026-10-25', '01:15', 'Europe/London', '2026-10-25T00:15:00.000Z'],
    ['2026-04-05', '01:45', 'Australia/Lord_Howe', '2026-04-04T14:45:00.000Z'],
    ['2011-12-30', '20:00', 'Pacific/Apia', '2011-12-31T06:00:00.000Z'], // a day that was left out
  ])('%s %s in %s is %s', (date, wall, timeZone, expected) =>
    expect(instantOf(date, wall, timeZone)).toBe(expected),
  );

  it('refuses what is not a time', () => {
    for (const wrong of ['24:00', '7:30', '', '12:60'])
      expect(() => instantOf('2026-05-14', wrong, 'Europe/London')).toThrow(RangeError);
  });
});

describe('the summary', () => {
  it('comes once on each of the household’s days, whatever the clocks do', () => {
    fc.assert(
      fc.property(instant, time, zone, (start, summaryAt, timeZone) => {
        let now = start;
        const days: string[] = [];
        for (let i = 0; i < 20; i++) {
          const next = nextSummaryAt({ summaryAt }, at(now, timeZone));
          if (next === null) throw new Error('no summary');
          expect(Date.parse(next)).toBeGreaterThan(Date.parse(now));
          expect(lastAt(summaryAt, next, timeZone)).toBe(next);
          days.push(shown(next, timeZone).slice(0, 10));
          now = next;
        }
        expect(new Set(days).size).toBe(20);
        expect(days.at(-1)).toBe(plusDays(days[0] ?? '', 19));
      }),
      { numRuns: 300 },
    );
  });

  it('is told in the evening of the household, in summer and in winter', () => {
    const next = (now: string) => nextSummaryAt({ summaryAt: '20:00' }, at(now, 'Europe/London'));
    expect(next('2026-07-01T12:00:00.000Z')).toBe('2026-07-01T19:00:00.000Z');
    expect(next('2026-12-01T12:00:00.000Z')).toBe('2026-12-01T20:00:00.000Z');
    expect(next('2026-12-01T20:00:00.000Z')).toBe('2026-12-02T20:00:00.000Z');
    expect(nextSummaryAt({ summaryAt: null }, at('2026-12-01T20:00:00.000Z'))).toBeNull();
  });

  it('that was told last and next lie on either side of now', () => {
    fc.assert(
      fc.property(instant, time, zone, (now, wall, timeZone) => {
        const last = Date.parse(lastAt(wall, now, timeZone));
        const next = Date.parse(nextAt(wall, now, timeZone));
        expect(last).toBeLessThanOrEqual(Date.parse(now));
        expect(next).toBeGreaterThan(Date.parse(now));
        expect(next - last).toBeGreaterThanOrEqual(22.5 * 3_600_000);
        expect(next - last).toBeLessThanOrEqual(25.5 * 3_600_000);
      }),
    );
  });
});

describe('quiet hours', () => {
  const overNight = { quietHours: { from: '22:00', to: '07:00' } };
  const london = (now: string) => at(now, 'Europe/London');
  it('run over midnight and end at their last minute', () => {
    expect(isQuiet(overNight, london('2026-12-01T21:59:59.000Z'))).toBe(false);
    expect(isQuiet(overNight, london('2026-12-01T22:00:00.000Z'))).toBe(true);
    expect(isQuiet(overNight, london('2026-12-02T06:59:00.000Z'))).toBe(true);
    expect(isQuiet(overNight, london('2026-12-02T07:00:00.000Z'))).toBe(false);
    expect(quietUntil(overNight, london('2026-12-01T23:00:00.000Z'))).toBe('2026-12-02T07:00:00.000Z');
    expect(quietUntil(overNight, london('2026-12-01T12:00:00.000Z'))).toBeNull();
  });
  it('may lie within a day, and are an hour shorter or longer on the nights the clocks change', () => {
    const noon = { quietHours: { from: '12:00', to: '14:00' } };
    expect(isQuiet(noon, london('2026-12-01T13:00:00.000Z'))).toBe(true);
    expect(isQuiet(noon, london('2026-12-01T23:00:00.000Z'))).toBe(false);
    expect(quietUntil(overNight, london('2026-03-28T22:00:00.000Z'))).toBe('2026-03-29T06:00:00.000Z');
    expect(quietUntil(overNight, london('2026-10-24T21:00:00.000Z'))).toBe('2026-10-25T07:00:00.000Z');
  });
  it('agree with themselves: not quiet any more when they are over', () => {
    fc.assert(
      fc.property(instant, time, time, zone, (now, from, to, timeZone) => {
        const until = quietUntil({ quietHours: { from, to } }, at(now, timeZone));
        if (until === null) return;
        expect(isQuiet({ quietHours: { from, to } }, at(until, timeZone))).toBe(false);
      }),
    );
  });
});
