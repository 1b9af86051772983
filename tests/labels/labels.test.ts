import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import jsQRModule from 'jsqr';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import { wrapCells } from '../../src/labels/brf.js';
import {
  brfFile,
  freeStock,
  fromBraille,
  labelSheet,
  labelForItem,
  loadStocks,
  toBraille,
  type Label,
} from '../../src/labels/index.js';

// The package is CommonJS; its types and Node agree on where its function is.
const jsQR = jsQRModule.default;

const stew: Label = {
  title: 'Lentil stew',
  lines: ['Contains celery, wheat', 'Made Nov 12, 2026'],
  brailleLines: ['Contains celery, wheat', 'Made 12 November'],
  vital: 1,
  address: 'http://kitchen.test/this/item/stew-1',
};

const saved = (pdf: Buffer): string => {
  const file = join(mkdtempSync(join(tmpdir(), 'labels-')), 'sheet.pdf');
  writeFileSync(file, pdf);
  return file;
};
const textOf = (file: string): string =>
  execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });

describe('a sheet of labels', () => {
  it('draws Braille dots at the sizes of the source, whose inches and millimetres agree', () => {
    const { source, ...millimetres } = JSON.parse(
      readFileSync(projectFile('shared', 'labels', 'braille-dots.json'), 'utf8'),
    ) as { source: { year: number; section: string; inches: Record<string, number> } } & Record<
      string,
      number
    >;
    expect(source).toMatchObject({ year: 2008, section: expect.stringContaining('3.2') as unknown });
    for (const [name, inches] of Object.entries(source.inches))
      expect(Math.abs((millimetres[name] ?? 0) - inches * 25.4), name).toBeLessThan(0.03);
  });

  it('holds its text as text on every stock', async () => {
    for (const stock of loadStocks()) {
      const sheet = await labelSheet([stew, { ...stew, title: 'Bean chilli' }], { stock, grade: 2 });
      const text = textOf(saved(sheet.pdf)).replace(/\s+/g, ' ');
      expect(text, stock.id).toContain('Lentil stew');
      expect(text, stock.id).toContain('Bean chilli');
    }
  });

  it('prints nothing under 18 points', async () => {
    const file = saved((await labelSheet([stew], { stock: freeStock([150, 90]), grade: 1 })).pdf);
    const html = execFileSync('pdftotext', ['-bbox-layout', file, '-'], { encoding: 'utf8' });
    const heights = [
      ...html.matchAll(/<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)"/g),
    ].map((match) => Number(match[2]) - Number(match[1]));
    expect(heights.length).toBeGreaterThan(5);
    for (const height of heights) expect(height).toBeGreaterThanOrEqual(18);
  });

  it('carries a square code that a camera reads back', async () => {
    const file = saved((await labelSheet([stew], { stock: freeStock([150, 90]), grade: null })).pdf);
    const base = file.replace(/\.pdf$/, '');
    execFileSync('pdftoppm', ['-r', '200', '-png', '-singlefile', file, base]);
    const png = PNG.sync.read(readFileSync(`${base}.png`));
    const code = jsQR(new Uint8ClampedArray(png.data), png.width, png.height);
    expect(code?.data).toBe(stew.address);
  });

  it('says what a small label could not hold', async () => {
    const sheet = await labelSheet([stew], { stock: freeStock([60, 30]), grade: 2 });
    expect(sheet.notes.join(' ')).toMatch(/Lentil stew: no room for .*square code/);
    expect(textOf(saved(sheet.pdf))).toContain('Lentil stew');
  });

  it('misses no Braille where none was wanted', async () => {
    for (const size of [
      [60, 30],
      [90, 60],
      [150, 90],
    ] as const) {
      const { notes } = await labelSheet([stew], { stock: freeStock(size), grade: null });
      expect(notes.join(' ')).not.toMatch(/Braille/);
    }
  });

  it('goes on to a second page, past the labels already used', async () => {
    const stock = freeStock([90, 60]);
    const perPage = stock.columns * stock.rows;
    const sheet = await labelSheet(
      Array.from({ length: perPage }, () => stew),
      { stock, grade: null, skip: 1 },
    );
    expect(sheet.pages).toBe(2);
  });

  it('refuses a label larger than the page', () => {
    expect(() => freeStock([300, 60])).toThrow(/larger than the page/);
  });

  it('leaves Braille off a name in another script, and says so', async () => {
    const sheet = await labelSheet([{ ...stew, title: 'حمص' }], { stock: freeStock([150, 90]), grade: 2 });
    expect(sheet.notes.join(' ')).toContain('no Braille');
  });
});

/** The Braille of a sheet with one label on it, read back from where its dots were drawn. */
const brailleOn = async (pdf: Buffer): Promise<string> => {
  const svg = saved(pdf).replace(/\.pdf$/, '.svg');
  execFileSync('pdftocairo', ['-svg', svg.replace(/\.svg$/, '.pdf'), svg]);
  const mm = 72 / 25.4;
  // A dot is a closed curve of its diameter, 1.44 millimetres; nothing else on a label is.
  const dots = [...readFileSync(svg, 'utf8').matchAll(/ d="(M[^"]+C[^"]+)"/g)]
    .flatMap((match) => (match[1] ?? '').split('M ').filter((part) => part.includes('C')))
    .map((part) => {
      const numbers = (part.match(/-?[\d.]+/g) ?? []).map(Number);
      const xs = numbers.filter((_, index) => index % 2 === 0);
      const ys = numbers.filter((_, index) => index % 2 === 1);
      const [left, right] = [Math.min(...xs), Math.max(...xs)];
      const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
      return { x: left / mm, y: top / mm, width: (right - left) / mm, height: (bottom - top) / mm };
    })
    .filter(({ width, height }) => Math.abs(width - 1.44) < 0.05 && Math.abs(height - 1.44) < 0.05);
  const left = Math.min(...dots.map(({ x }) => x));
  const rows = new Map<number, Map<number, number>>();
  const top = Math.min(...dots.map(({ y }) => y));
  for (const { x, y } of dots) {
    const row = Math.floor((y - top + 0.3) / 10.16);
    const inRow = Math.round((y - top - row * 10.16) / 2.34);
    const column = Math.floor((x - left + 0.3) / 6.2);
    const half = x - left - column * 6.2 > 1.2 ? 3 : 0;
    const cells = rows.get(row) ?? new Map<number, number>();
    cells.set(column, (cells.get(column) ?? 0) | (1 << (inRow + half)));
    rows.set(row, cells);
  }
  const lines = [...rows.entries()]
    .sort(([one], [other]) => one - other)
    .map(([, cells]) =>
      Array.from({ length: Math.max(...cells.keys()) + 1 }, (_, at) =>
        String.fromCodePoint(0x2800 + (cells.get(at) ?? 0)),
      ).join(''),
    );
  return (await fromBraille(lines, 2)).join(' ');
};

describe('what a label keeps when room is short', () => {
  const kitchen = demoKitchen({ now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' });
  const withAllergens = livingItems(kitchen).filter((item) => item.contains.length > 0);
  const eight = loadStocks().find(({ id }) => id === 'a4-2x4');

  it('the allergens in Braille, on every label of the usual sheet that has them', async () => {
    expect(withAllergens.length).toBeGreaterThan(4);
    expect(eight).toBeDefined();
    for (const item of withAllergens.filter(({ contains }) => contains.length < 4).slice(0, 6)) {
      const label = labelForItem(kitchen, item, 'http://kitchen.test');
      const sheet = await labelSheet([label], { stock: eight!, grade: 2 });
      const braille = (await brailleOn(sheet.pdf)).toLowerCase();
      for (const allergen of item.contains) expect(braille, item.name).toContain(allergen);
      expect(textOf(saved(sheet.pdf)).replace(/\s+/g, ' ')).toContain(`Contains ${item.contains.join(', ')}`);
    }
  });

  it('the name and the allergens before the code, the code before the date', async () => {
    const shorter = async (height: number): Promise<string> =>
      (await labelSheet([stew], { stock: freeStock([99, height]), grade: 2 })).notes.join(' ');
    expect(await shorter(90)).toBe('');
    const tight = await shorter(54);
    expect(tight).not.toContain('Contains');
    expect(tight).toMatch(/square code|Made/);
  });

  it('says each Braille line that it had to leave off', async () => {
    const sheet = await labelSheet([stew], { stock: freeStock([70, 36]), grade: 2 });
    expect(sheet.notes.join(' ')).toMatch(/“Made 12 November” in Braille|the Braille/);
  });
});

describe('a label too small for anything', () => {
  it('is refused in a sentence that says what would do, before any work', () => {
    expect(() => freeStock([30, 20])).toThrow(/30 by 20 millimetres is too small.*40 by 20/);
    expect(() => freeStock([39.9, 60])).toThrow(/too small/);
    expect(() => freeStock([60, 19.9])).toThrow(/too small/);
    expect(() => freeStock([Number.NaN, 60])).toThrow(/too small/);
    expect(freeStock([40, 20]).columns).toBeGreaterThan(0);
  });

  it('is never wrapped for ever: a line holds a cell, or nothing is wrapped', () => {
    for (const width of [0, -1, 0.5, Number.NaN]) expect(() => wrapCells('⠁⠃⠉', width)).toThrow(RangeError);
    expect(wrapCells('⠁⠃⠉', 1)).toEqual(['⠁', '⠃', '⠉']);
  });

  it('the smallest that is taken holds the name, and says what it could not hold', async () => {
    const sheet = await labelSheet([stew], { stock: freeStock([40, 20]), grade: 2 });
    expect(sheet.notes.join(' ')).toContain('Contains celery, wheat');
  });
});

describe('Braille', () => {
  // Rules of Unified English Braille (ICEB, The Rules of Unified English Braille, 2013): capital sign dot 6,
  // "st" dots 3-4, "en" dots 2-6, numeric indicator dots 3-4-5-6.
  it('is contracted UEB in grade 2 and letter by letter in grade 1', async () => {
    expect(await toBraille(['Lentil stew', '12'], 2)).toEqual(['⠠⠇⠢⠞⠊⠇⠀⠌⠑⠺', '⠼⠁⠃']);
    expect(await toBraille(['Lentil stew'], 1)).toEqual(['⠠⠇⠑⠝⠞⠊⠇⠀⠎⠞⠑⠺']);
  });

  it('makes true fractions', async () => {
    expect(await toBraille(['1/2 jar'], 2)).toEqual(await toBraille(['½ jar'], 2));
  });

  it('keeps empty texts in step', async () => {
    const [one, none, two] = await toBraille(['Rice', '', 'Peas'], 2);
    expect([one, none, two]).toEqual([
      (await toBraille(['Rice'], 2))[0],
      '',
      (await toBraille(['Peas'], 2))[0],
    ]);
  });

  it('comes back to the same print for a thousand labels', async () => {
    const words = [
      'lentil',
      'stew',
      'chilli',
      'bean',
      'with',
      'spiced',
      'the',
      'chicken',
      'shredded',
      'for',
      'Dele',
      'green',
      'tomato',
      'sauerkraut',
      'oat',
      'milk',
      'Sunday',
      'thing',
      'mother',
      'amara',
      'rough',
      'quick',
      'ginger',
      'parsnip',
      'every',
      'soup',
    ];
    const texts = fc.sample(
      fc
        .tuple(
          fc.array(fc.constantFrom(...words), { minLength: 1, maxLength: 5 }),
          fc.integer({ min: 1, max: 31 }),
        )
        .map(([parts, day]) => `${parts.join(' ')} ${day} March`),
      { numRuns: 1000, seed: 7 },
    );
    for (const grade of [1, 2] as const) {
      const cells = await toBraille(texts, grade);
      const back = await fromBraille(
        cells.map((line) => line ?? ''),
        grade,
      );
      expect(back).toEqual(texts);
    }
  });
});

describe('a file for an embosser', () => {
  it('uses the same ASCII Braille as liblouis', async () => {
    const texts = [
      'The quick brown fox, 1234567890!',
      'jumps (over) "the" lazy dog; & so: on?',
      'Crème brûlée’s 50% * 3 + 4 = 7 @ home / #1',
    ];
    const cells = (await toBraille(texts, 2)).map((line) => line ?? '');
    const ours = brfFile([cells], { cells: 200, lines: 25 }).split('\r\n').slice(0, texts.length);
    const theirs = execFileSync('lou_translate', ['--forward', 'en-ueb-g2.ctb'], {
      input: texts.map((text) => `${text}\n`).join(''),
      encoding: 'utf8',
    });
    expect(ours).toEqual(
      theirs
        .trimEnd()
        .toUpperCase()
        .split('\n')
        .map((line) =>
          line
            .replaceAll('`', '@')
            .replaceAll('{', '[')
            .replaceAll('|', '\\')
            .replaceAll('}', ']')
            .replaceAll('~', '^'),
        ),
    );
  });

  it('never runs over the line or the page', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.stringMatching(/^[\u2800-\u283f]{0,60}$/), { maxLength: 4 }), { maxLength: 12 }),
        fc.integer({ min: 5, max: 42 }),
        fc.integer({ min: 3, max: 30 }),
        (labels, cells, lines) => {
          for (const page of brfFile(labels, { cells, lines }).split('\f')) {
            const rows = page.split('\r\n').slice(0, -1);
            expect(rows.length).toBeLessThanOrEqual(lines);
            for (const row of rows) expect(row.length).toBeLessThanOrEqual(cells);
          }
        },
      ),
    );
  });
});
