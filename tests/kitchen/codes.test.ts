import fc from 'fast-check';
import ndef from 'ndef';
import { describe, expect, it } from 'vitest';
import { checkDigit, gtin14, isInStore } from '../../src/kitchen/codes/gtin.js';
import { centuryYear, readGs1Date } from '../../src/kitchen/codes/gs1-dates.js';
import { readElementString } from '../../src/kitchen/codes/gs1.js';
import { bytesOf, readNdef } from '../../src/kitchen/codes/ndef.js';
import {
  addMarker,
  applyChange,
  emptyKitchen,
  finish,
  isRefused,
  itemDatesOf,
  putAway,
  readCode,
  resolveCode,
  type Doing,
  type Kitchen,
  type Result,
} from '../../src/kitchen/index.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' };

describe('GTIN', () => {
  // 6291041500213 is GS1's own example of the calculation (General Specifications 7.9.1, and GS1's
  // "how to calculate a check digit manually"); the others were worked by hand from the same rule.
  it.each([
    ['629104150021', 3],
    ['123456789012', 8],
    ['760100000000', 2],
    ['2345678', 5],
    ['03600029145', 2],
    ['400638133393', 1],
    ['1061414100041', 5],
    ['501234567890', 0],
    ['9638507', 4],
  ])('%s has check digit %i', (body, digit) => {
    expect(checkDigit(body)).toBe(digit);
    expect(gtin14(`${body}${digit}`)).toBe(`${body}${digit}`.padStart(14, '0'));
    expect(gtin14(`${body}${(digit + 1) % 10}`)).toBeNull();
  });

  it('notices every single wrong digit', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{12}$/),
        fc.nat(12),
        fc.integer({ min: 1, max: 9 }),
        (body, at, by) => {
          const right = `${body}${checkDigit(body)}`;
          const wrong = [...right];
          wrong[at] = String((Number(right[at]) + by) % 10);
          return gtin14(wrong.join('')) === null;
        },
      ),
    );
  });

  it('of a shop’s own weighing is no product elsewhere', () => {
    const own = `21234560150${''}`.padEnd(12, '0');
    expect(isInStore(gtin14(`${own}${checkDigit(own)}`) ?? '')).toBe(true);
    expect(isInStore(gtin14('6291041500213') ?? '')).toBe(false);
    expect(isInStore(gtin14('96385074') ?? '')).toBe(false);
  });
});

describe('GS1 dates', () => {
  // GS1 General Specifications 7.12: YY more than 50 ahead of this year's is the last century's,
  // 50 or more behind is the next one's.
  it.each([
    [26, 2026, 2026],
    [76, 2026, 2076],
    [77, 2026, 1977],
    [99, 2026, 1999],
    [0, 2026, 2000],
    [0, 2049, 2000],
    [0, 2050, 2100],
    [1, 2051, 2101],
    [49, 1999, 2049],
    [50, 1999, 1950],
  ])('year %i seen in %i is %i', (yy, thisYear, year) => {
    expect(centuryYear(yy, thisYear)).toBe(year);
  });

  it('the year is always from 49 back to 50 on', () => {
    fc.assert(
      fc.property(fc.nat(99), fc.integer({ min: 1950, max: 2150 }), (yy, thisYear) => {
        const year = centuryYear(yy, thisYear);
        return year % 100 === yy && year - thisYear >= -49 && year - thisYear <= 50;
      }),
    );
  });

  // Day 00: GS1 General Specifications 3.4 ("130200" is 28 February 2013, "160200" 29 February 2016).
  // Valid and not: the tests of GS1's Syntax Dictionary linters yymmdd and yymmd0.
  it.each([
    ['130200', 2013, '2013-02-28', true],
    ['160200', 2016, '2016-02-29', true],
    ['000229', 2026, '2000-02-29', false],
    ['200600', 2026, '2020-06-30', true],
    ['261231', 2026, '2026-12-31', false],
  ])('%s is %s', (digits, thisYear, day, monthOnly) => {
    expect(readGs1Date(digits, 'expiry', thisYear)).toEqual({ day, monthOnly });
  });

  it.each(['210229', '200431', '201310', '200010', '20043', '2004311', 'abcdef'])(
    '%s is no date',
    (digits) => {
      expect(readGs1Date(digits, 'expiry', 2026)).toBeNull();
    },
  );

  it('2100 is no leap year, and a month of making is its first day', () => {
    expect(readGs1Date('000229', 'expiry', 2060)).toBeNull();
    expect(readGs1Date('260200', 'production', 2026)).toEqual({ day: '2026-02-01', monthOnly: true });
  });
});

describe('GS1 element strings and links', () => {
  const gs = '\u001d';
  const product = (text: string) => {
    const code = readCode(text, clock);
    if (code.kind !== 'product') throw new Error(JSON.stringify(code));
    return code;
  };

  // 09506000134352 is the GTIN of GS1's own examples.
  it.each([
    ['printed', '(01)09506000134352(17)261231(10)AB-12'],
    ['read from a Data Matrix', `]d201095060001343521726123110AB-12`],
    ['with the lot before the date', `]C10109506000134352` + `10AB-12${gs}17261231`],
    ['with FNC1 in front', `${gs}01095060001343521726123110AB-12`],
    ['without any mark', '01095060001343521726123110AB-12'],
    ['as a link', 'https://example.com/01/09506000134352/10/AB-12?17=261231'],
    [
      'as a link with a path in front',
      'https://example.com/some/shelf/01/9506000134352/10/AB-12?17=261231&linkType=all',
    ],
    ['as an older link', 'https://example.com/gtin/09506000134352/lot/AB-12?exp=261231'],
  ])('%s', (_, text) => {
    expect(product(text)).toEqual({
      kind: 'product',
      gtin: '09506000134352',
      inStore: false,
      dates: { expiry: { day: '2026-12-31', monthOnly: false } },
      lot: 'AB-12',
      serial: null,
    });
  });

  it('keeps each kind of date apart, and gives items those they keep', () => {
    const code = product('(01)09506000134352(11)260501(13)260502(15)260600(16)260610(17)260701');
    expect(code.dates).toEqual({
      production: { day: '2026-05-01', monthOnly: false },
      packaging: { day: '2026-05-02', monthOnly: false },
      bestBefore: { day: '2026-06-30', monthOnly: true },
      sellBy: { day: '2026-06-10', monthOnly: false },
      expiry: { day: '2026-07-01', monthOnly: false },
    });
    expect(itemDatesOf(code)).toEqual({ made: '2026-05-01', bestBefore: '2026-06-30', useBy: '2026-07-01' });
  });

  it('steps over weights and other elements it does not need', () => {
    const elements = readElementString(
      `]C1019950600013435${checkDigit('9950600013435')}3103001250` + `392212${gs}15260630`,
    );
    expect([...(elements ?? [])].map(([ai]) => ai)).toEqual(['01', '3103', '3922', '15']);
  });

  it.each([
    ['a wrong check digit', '4006381333932', 'check-digit'],
    ['a wrong check digit in a link', 'https://example.com/01/09506000134353', 'check-digit'],
    ['a day that is not', '(01)09506000134352(17)260231', 'no-such-day'],
  ])('says so of %s', (_, text, fault) => {
    expect(readCode(text, clock)).toMatchObject({ kind: 'faulty', fault });
  });

  it('leaves words and other links as they are', () => {
    expect(readCode('  Marta’s glass bead ', clock)).toEqual({ kind: 'words', text: 'Marta’s glass bead' });
    expect(readCode('https://example.com/recipes/01/stew', clock)).toMatchObject({ kind: 'link' });
    expect(readCode('01 but not quite', clock)).toMatchObject({ kind: 'words' });
  });

  it('never throws, whatever a reader sends', () => {
    const odd = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.stringMatching(/^(?:\]C1|\]d2|ndef:|https:\/\/a\/01\/|\(01\))[\d()A-F/?=&%]{0,60}$/),
    );
    fc.assert(
      fc.property(odd, (text) => ['words', 'link', 'product', 'faulty'].includes(readCode(text, clock).kind)),
      { numRuns: 500 },
    );
  });
});

describe('NFC records', () => {
  // NFC Forum URI Record Type Definition 1.0, appendix A; Text Record Type Definition 1.0, section 3.
  it.each([
    ['a web address', 'D1 01 08 55 01 6E 66 63 2E 63 6F 6D', [{ kind: 'uri', uri: 'http://www.nfc.com' }]],
    [
      'a telephone number',
      'D1 01 0D 55 05 2B 33 35 38 39 31 32 33 34 35 36 37',
      [{ kind: 'uri', uri: 'tel:+35891234567' }],
    ],
    [
      'a text',
      'D1 01 10 54 02 65 6E 48 65 6C 6C 6F 2C 20 77 6F 72 6C 64 21',
      [{ kind: 'text', text: 'Hello, world!', language: 'en' }],
    ],
    ['a text in UTF-16', 'D1 01 07 54 82 66 72 00 E9 00 74', [{ kind: 'text', text: 'ét', language: 'fr' }]],
    [
      'a text in two chunks',
      'B1 01 05 54 02 65 6E 48 65 56 00 03 6C 6C 6F',
      [{ kind: 'text', text: 'Hello', language: 'en' }],
    ],
    ['an empty record', 'D0 00 00', []],
    [
      'a record as a chip’s memory holds it',
      '03 0C D1 01 08 55 01 6E 66 63 2E 63 6F 6D FE',
      [{ kind: 'uri', uri: 'http://www.nfc.com' }],
    ],
  ])('read %s', (_, hex, contents) => {
    expect(readNdef(bytesOf(hex) ?? new Uint8Array())).toEqual(contents);
  });

  it.each([
    'D1',
    'D1 01 FF 54 02',
    '51 01 01 54',
    'D1 01 08 55 01 6E',
    '91 01 01 54 02',
    'D1 01 03 54 02 65 6E FF',
  ])('refuse %s, which is cut off or not one message', (hex) => {
    expect(readNdef(bytesOf(hex) ?? new Uint8Array())).toBeNull();
  });

  // Outside check: the records that another library writes.
  it('read what another library wrote', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), fc.webUrl(), (text, uri) => {
        const bytes = Uint8Array.from(ndef.encodeMessage([ndef.textRecord(text, 'en'), ndef.uriRecord(uri)]));
        expect(readNdef(bytes)).toEqual([
          { kind: 'text', text, language: 'en' },
          { kind: 'uri', uri },
        ]);
        const spelled = Buffer.from(bytes).toString('base64');
        expect(bytesOf(spelled)).toEqual(Buffer.from(bytes));
      }),
    );
  });

  it('hold what a code holds', () => {
    const record = (text: string) =>
      `ndef:${Buffer.from(ndef.encodeMessage([ndef.textRecord(text)])).toString('hex')}`;
    expect(readCode(record('kitchen marker seven'), clock)).toEqual({
      kind: 'words',
      text: 'kitchen marker seven',
    });
    expect(readCode(record('9506000134352'), clock)).toMatchObject({
      kind: 'product',
      gtin: '09506000134352',
    });
    expect(readCode('ndef:D000 00', clock)).toMatchObject({ kind: 'faulty', fault: 'nothing-on-it' });
    expect(readCode('ndef:!!', clock)).toMatchObject({ kind: 'faulty', fault: 'broken-record' });
  });
});

describe('a touched code', () => {
  let serial = 0;
  const doing = (kitchen: Kitchen): Doing => ({
    kitchen,
    clock,
    speaker: { personId: null },
    newId: () => `id${++serial}`,
  });
  const after = (kitchen: Kitchen, build: (d: Doing) => Result): Kitchen => {
    const result = build(doing(kitchen));
    if (isRefused(result)) throw new Error(result.refused);
    return applyChange(kitchen, result);
  };
  const household = {
    id: 'h',
    name: 'h',
    timeZone: 'UTC',
    locale: 'en',
    region: 'us',
    measures: 'us',
    microwaveWatts: null,
    summaryAt: null,
    quietHours: null,
    dotMeanings: {},
  } as const;

  it('leads to its marker and what it stands on, however it was written down', () => {
    let kitchen = after(emptyKitchen(household), (d) =>
      addMarker(d, { touch: { texture: 'cardboard' }, codes: ['Kitchen marker  seven'] }),
    );
    const markerId = [...kitchen.markers.keys()][0]!;
    expect(resolveCode(kitchen, 'kitchen MARKER seven', clock)).toMatchObject({
      marker: { id: markerId },
      items: [],
    });
    kitchen = after(kitchen, (d) => putAway(d, { name: 'red lentils', markerId }));
    const chip = `ndef:${Buffer.from(ndef.encodeMessage([ndef.textRecord('kitchen marker seven')])).toString('base64')}`;
    expect(resolveCode(kitchen, chip, clock).items.map(({ name }) => name)).toEqual(['red lentils']);
  });

  it('leads to the packet that bears it, or to the one that is gone', () => {
    let kitchen = after(emptyKitchen(household), (d) =>
      putAway(d, { name: 'oats', codes: ['9506000134352'] }),
    );
    const link = 'https://example.com/01/09506000134352?17=261231';
    const id = [...kitchen.items.keys()][0]!;
    expect(resolveCode(kitchen, link, clock)).toMatchObject({ items: [{ id }], lastGone: null });
    kitchen = after(kitchen, (d) => finish(d, id));
    expect(resolveCode(kitchen, link, clock)).toMatchObject({ items: [], lastGone: { id } });
    expect(resolveCode(kitchen, '6291041500213', clock)).toMatchObject({
      marker: null,
      items: [],
      lastGone: null,
    });
  });
});
