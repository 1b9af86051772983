import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DynamicRule } from '../../../src/grammar/api.js';
import { isPlainDate } from '../../../src/terms/dates.js';
import { dateRules } from '../../../src/understanding/dates/index.js';
import type { SaidDate } from '../../../src/understanding/intents.js';
import { numberRules, timeRules } from '../../../src/understanding/numbers/index.js';
import { touchRules } from '../../../src/understanding/touch/index.js';
import { lexiconFor } from '../../../src/understanding/words/index.js';

/** Every word of the lists, in any order, with words from nowhere and names that objects have. */
const wordsIn = (value: unknown): string[] => {
  if (typeof value === 'string') return value.split(' ');
  if (Array.isArray(value)) return value.flatMap(wordsIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key.startsWith('about') ? [] : [...key.split(' '), ...wordsIn(inner)],
  );
};

describe.each(['en-US', 'en-GB', 'es-MX'])('any sentence in %s', (locale) => {
  const lexicon = lexiconFor(locale);
  const { numbers, units, times, dates, touch } = lexicon;
  const word = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...wordsIn({ numbers, units, times, dates, touch })) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        'constructor',
        '__proto__',
        'toString',
        '',
        '1/2',
        '6:30',
        '03/15',
        '99/99',
        '31/02/2027',
        '9th',
        '0',
        '1e9',
        '00:00',
      ),
    },
    { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 6 }) },
  );
  const moment = fc
    .date({
      min: new Date('2001-01-01T00:00:00Z'),
      max: new Date('2090-12-31T00:00:00Z'),
      noInvalidDate: true,
    })
    .map((date) => date.toISOString());

  it('gives matches that lie in it, with values of their kind', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 9 }), moment, (tokens, now) => {
        const clock = { now, timeZone: 'Europe/London' };
        const rules: [string, DynamicRule][] = [
          ...numberRules(lexicon),
          ...timeRules(lexicon, '12:30'),
          ...touchRules(lexicon),
          ...dateRules(lexicon, clock, locale),
        ];
        for (const [uri, rule] of rules) {
          for (let from = 0; from <= tokens.length; from += 1) {
            for (const { length, value, weight } of rule.matchesAt(tokens, from)) {
              expect(length).toBeGreaterThanOrEqual(1);
              expect(from + length).toBeLessThanOrEqual(tokens.length);
              if (weight !== undefined) expect(weight > 0 && weight <= 1).toBe(true);
              if (uri.startsWith('builtin:grammar/date')) {
                const { day, until } = value as unknown as SaidDate;
                expect(isPlainDate(day)).toBe(true);
                if (until !== undefined) expect(isPlainDate(until) && until >= day).toBe(true);
              }
              if (uri.startsWith('builtin:grammar/time')) expect(value).toMatch(/^([01]\d|2[0-3]):[0-5]\d$/);
              if (/\/(number|duration|watts)$/.test(uri))
                expect(Number.isFinite(value) && Number(value) >= 0).toBe(true);
              if (uri.endsWith('/amount'))
                expect((value as { value: number }).value).toBeGreaterThanOrEqual(0);
              if (uri.endsWith('/share')) {
                const { fraction } = value as { fraction: number };
                expect(fraction >= 0 && fraction <= 1).toBe(true);
              }
            }
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});
