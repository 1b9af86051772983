import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as terms from '../../../src/terms/dates.js';
import * as calendar from '../../../src/understanding/dates/calendar.js';

const day = fc
  .date({ min: new Date('1990-01-01T00:00:00Z'), max: new Date('2090-12-31T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

describe('calendar sums', () => {
  it('are those of the terms', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -2000, max: 2000 }), (from, many) => {
        expect(calendar.plusDays(from, many)).toBe(terms.plusDays(from, many));
        expect(calendar.plusMonths(from, many % 200)).toBe(terms.plusMonths(from, many % 200));
      }),
    );
  });

  it('know which days exist', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1990, max: 2090 }),
        fc.integer({ min: 0, max: 13 }),
        fc.integer({ min: 0, max: 32 }),
        (year, month, dayOfMonth) => {
          const text = `${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
          expect(calendar.plainDate(year, month, dayOfMonth)).toBe(terms.isPlainDate(text) ? text : null);
        },
      ),
    );
  });
});
