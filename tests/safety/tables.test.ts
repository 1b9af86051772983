import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { storageRow } from '../../shared/tables/schema.js';
import { projectFile } from '../../src/project-files.js';
import {
  CAUTION_CODES,
  guidanceFor,
  MATCH_CODES,
  packageDates,
  POWER_REASON_CODES,
  REASON_CODES,
  REFUSAL_CODES,
  STEP_CODES,
  storageRows,
  THAW_ADVICE_CODES,
} from '../../src/safety/index.js';
import { cite, safetyTables } from '../../src/safety/tables.js';

const tables = safetyTables();

describe('the tables', () => {
  it('every storage row has its agency, document, region and basis, and a year or none', () => {
    for (const region of ['us', 'uk'] as const) {
      for (const row of tables.storage[region].values()) {
        const source = cite(tables, row);
        expect(source.region).toBe(region);
        expect(source.agency).not.toBe('');
        expect(source.document).not.toBe('');
        expect(source.year === null || (source.year > 1980 && source.year < 2027)).toBe(true);
      }
    }
  });
  it('no row says "safe"', () => {
    for (const row of [...tables.storage.us.values(), ...tables.storage.uk.values()]) {
      expect(`${row.food} ${row.type} ${row.note}`).not.toMatch(/\bsafe\b/i);
    }
  });
  it('a bad span is refused with what is wrong', () => {
    const [good] = tables.storage.us.values();
    const written = { ...good, fridge: '3 to 4 days', freezer: '', freezer_note: '', section: '', note: '' };
    const result = storageRow.safeParse(written);
    expect(result.success).toBe(false);
    expect(result.error?.issues[0]?.message).toContain('3-4 days');
    expect(storageRow.safeParse({ ...written, fridge: '3-4 days' }).data?.fridge).toEqual({
      low: 3,
      high: 4,
      unit: 'days',
    });
  });
  it('figures from memory stay marked', () => {
    const memory = [...tables.storage.us.values()]
      .filter((row) => row.basis === 'from-memory')
      .map(({ id }) => id);
    expect(memory).toEqual(
      expect.arrayContaining(['shrimp', 'squid', 'molluscs-shucked', 'egg-substitute-unopened']),
    );
    const found = guidanceFor({
      food: 'raw shrimp',
      where: 'fridge',
      region: 'us',
      days: 1,
      clock: { now: '2026-11-25T18:00:00Z', timeZone: 'America/Chicago' },
    });
    expect(found.reasons.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['memory-only', 'shorter-of-two']),
    );
  });
});

describe('every code has its phrase', () => {
  const folder = projectFile('grammars', 'en', 'phrases');
  const phrases = readdirSync(folder)
    .map((file) => readFileSync(`${folder}/${file}`, 'utf8'))
    .join('\n');
  it.each([
    ['safety', REASON_CODES],
    ['caution', CAUTION_CODES],
    ['step', STEP_CODES],
    ['refusal', REFUSAL_CODES],
    ['thaw', THAW_ADVICE_CODES],
    ['power', POWER_REASON_CODES],
    ['match', MATCH_CODES],
  ] as const)('%s-…', (prefix, codes) => {
    const missing = codes.filter((code) => !new RegExp(`^${prefix}-${code} ?=`, 'm').test(phrases));
    expect(missing).toEqual([]);
  });
});

it('rows and kinds of dates of one region are of no other', () => {
  expect(storageRows('uk').every(({ id }) => id.startsWith('uk-'))).toBe(true);
  expect(packageDates('us').every(({ region }) => region === 'us')).toBe(true);
  expect(packageDates(null).length).toBe(packageDates('us').length + packageDates('uk').length);
});
