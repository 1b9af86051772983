/** Lists that people have already: headings, separators and days of different make. */
import { describe, expect, it } from 'vitest';
import { textOfFile } from '../../shared/exchange/file-text.js';
import { dayIn, demoKitchen, guessTable, planImport, readList } from '../../src/kitchen/index.js';
import type { Item } from '../../src/kitchen/model.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const kitchen = demoKitchen(clock);
let ids = 0;
const doing = { kitchen, clock, speaker: { personId: null }, newId: () => `id-${(ids += 1)}` };
const plan = (text: string, monthFirst = true) => {
  const guessed = guessTable(text, monthFirst);
  return guessed ? planImport(doing, guessed.text, 'csv', { makePlaces: true }) : null;
};

const sheets: readonly (readonly [string, string, number])[] = [
  ['commas', 'Item,Location,Qty\noats,pantry,2\nhoney,pantry,1\n', 2],
  ['semicolons', 'Food;Where;How many\noats;pantry;2\n', 1],
  ['tabs', 'Product\tExpiry\noats\t12/31/2026\n', 1],
  ['a bar', 'what|stored in\noats|pantry\n', 1],
  ['another order', 'Qty,Use by,Food\n3,2026-06-01,yogurts\n', 1],
  ['a title above', 'My freezer list,,\n,,\nItem,Qty,Date frozen\npeas,2 bags,1/5/2026\n', 1],
  ['capitals and marks', 'ITEM NAME?,QTY.,LOCATION\n', 0],
  ['amounts with their unit', 'Name,Amount\nflour,2 bags\ntomatoes,3 x\nmilk,500ml\n', 3],
  ['places in parts', 'Food,Location,Shelf\njam,Fridge,top shelf\nham,"Fridge / second shelf",\n', 2],
  ['a byte order mark', '\uFEFFItem,Notes\noats,"half; rolled"\n', 1],
  ['quoted commas', '"Item","Comments"\n"oats, rolled","a big bag, opened"\n', 1],
  ['empty rows', 'Item,Qty\noats,1\n,\nhoney,1\n\n', 2],
  ['allergens in a list', 'Food,Allergens\ncurry paste,"fish, peanuts"\n', 1],
  ['written days', 'Food,Use by\noats,14 May 2027\nhoney,"May 14, 2027"\n', 2],
  ['Windows line ends', 'Item,Qty\r\noats,1\r\nhoney,2\r\n', 2],
  ['columns nobody knows', 'Item,Colour,Price\noats,brown,2.50\n', 1],
  ['two columns of one kind', 'Item,Expiry,Use by\noats,2026-06-01,2026-06-02\n', 1],
  ['no amount', 'Food\noats\nhoney\n', 2],
  ['British days', 'Food,Best before\noats,14/05/2027\n', 1],
  ['Spanish headings', 'Producto;Ubicación;Cantidad;Caducidad\navena;despensa;2 bolsas;30/11/2026\n', 1],
  ['fractions', 'Item,Qty\nflour,1/2 bag\nrice,1½ kg\noats,2 1/4 cups\nhoney,½ jar\n', 4],
  ['Spanish headings', 'Alimento;Cantidad;Lugar;Caducidad\nleche;2;nevera;20/05/2027\n', 1],
  ['dots in days', 'Food,Best before\noats,14.05.2027\n', 1],
];

describe('a list of one’s own', () => {
  it.each(sheets)('with %s', (_name, text, items) => {
    const planned = plan(text, !/British|dots|Spanish/.test(_name));
    if (items === 0) return expect(planned).toBeNull();
    expect(planned?.faults).toEqual([]);
    expect(planned?.items).toBe(items);
  });

  it('shows what each heading is taken for, and what is left out', () => {
    expect(guessTable('Colour,Item,Expiry,Use by\nbrown,oats,,\n', true)?.headings).toEqual([
      { heading: 'Colour', column: null },
      { heading: 'Item', column: 'name' },
      { heading: 'Expiry', column: 'use by' },
      { heading: 'Use by', column: null },
    ]);
  });

  it('has its fractions as numbers, and says what is no number', () => {
    const amounts = plan('Item,Qty\nflour,1/2 bag\nrice,1½ kg\noats,2 1/4 cups\nhoney,½ jar\n');
    expect(amounts?.change?.ops.map(({ after }) => (after as Item).amount)).toMatchObject([
      { value: 0.5, unit: 'bag' },
      { value: 1.5, unit: 'kilogram' },
      { value: 2.25, unit: 'cup' },
      { value: 0.5, unit: 'jar' },
    ]);
    const { faults } = readList(doing, 'Item,Qty\nrice,half a bag\n', 'csv', { makePlaces: false }).plan;
    expect(faults).toEqual([{ row: 2, column: 'amount', problem: 'this is no number' }]);
  });

  it('without headings is told so once', () => {
    for (const text of ['honey,pantry,2\nsalt,pantry,1\n', '', 'hello']) {
      const { plan: none, guessed } = readList(doing, text, 'csv', { makePlaces: false });
      expect(guessed).toBeNull();
      expect(none.faults, text).toMatchObject([
        { row: 1, column: null, problem: expect.stringMatching(/such as Item/) as string },
      ]);
    }
  });

  it('is read in the code that spreadsheets save it in', () => {
    const table = 'Item,Notes\njalapeños,crème\n';
    const utf16 = (text: string, big: boolean): Buffer => {
      const bytes = Buffer.from(`\uFEFF${text}`, 'utf16le');
      return big ? bytes.swap16() : bytes;
    };
    for (const bytes of [
      Buffer.from(table),
      Buffer.from(`\uFEFF${table}`),
      utf16(table, false),
      utf16(table, true),
      Buffer.from(table, 'latin1'),
    ])
      expect(textOfFile(bytes).replace('\uFEFF', '')).toBe(table);
  });

  it('is taken whole or not at all', () => {
    const planned = plan('Item,Use by\noats,2026-06-01\nhoney,sometime\n');
    expect(planned).toMatchObject({ change: null, items: 0 });
    expect(planned?.faults).toMatchObject([{ row: 3, column: 'use by' }]);
  });
});

describe('a file as a spreadsheet wrote it', () => {
  const bytes = (...of: readonly number[]): Uint8Array => Uint8Array.from(of);
  it.each([
    ['Unicode', new TextEncoder().encode('crème'), 'crème'],
    ['Western Windows', bytes(0x63, 0x72, 0xe8, 0x6d, 0x65), 'crème'],
    ['Unicode in pairs, low byte first', bytes(0xff, 0xfe, 0x63, 0x00, 0xe8, 0x00), 'cè'],
    ['Unicode in pairs, high byte first', bytes(0xfe, 0xff, 0x00, 0x63, 0x00, 0xe8), 'cè'],
  ])('in %s', (_name, file, text) => {
    expect(textOfFile(file)).toBe(text);
  });

  it('with no heading for the food says that, once', () => {
    const { plan: planned } = readList(doing, 'FRIDGE\nmilk,2\n', 'csv', { makePlaces: true });
    expect(planned.faults).toHaveLength(1);
    expect(planned.faults[0]?.problem).toContain('Write headings above');
  });

  it.each([
    ['hall refrigerator', 'fridge'],
    ['Nevera', 'fridge'],
    ['Congelador pequeño', 'freezer'],
    ['cold larder', 'pantry'],
    ['the shed', 'cupboard'],
  ])('keeps %s as a %s', (place, kind) => {
    const { plan: planned } = readList(doing, `Item,Place\noats,${place}\n`, 'csv', { makePlaces: true });
    const made = planned.change?.ops.flatMap((op) =>
      op.kind === 'place' && op.after ? [op.after.kind] : [],
    );
    expect(made).toEqual([kind]);
  });
});

describe('a day in a cell', () => {
  it.each([
    ['5/6/2026', true, '2026-05-06'],
    ['5/6/2026', false, '2026-06-05'],
    ['13/5/2026', true, '2026-05-13'],
    ['5/13/26', false, '2026-05-13'],
    ['14 May 2026', false, '2026-05-14'],
    ['May 14, 2026', true, '2026-05-14'],
    ['2026-05-14', true, '2026-05-14'],
    ['31/2/2026', false, null],
    ['soon', true, null],
  ])('%s, month first %s: %s', (cell, monthFirst, day) => {
    expect(dayIn(cell, monthFirst)).toBe(day);
  });
});
