/**
 * Items as a table that a spreadsheet opens: one row each, lists separated by semicolons, places from
 * the outside in ("fridge > second shelf"). Preparations do not fit a cell; the JSON form has them.
 */
import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import type { Touch } from '../../terms/touch.js';
import { DATE_KINDS } from '../shapes.js';
import { itemRow, type ItemRow } from './row.js';
import { faultsIn, type Fault, type ReadRow } from './fault.js';

const COLUMNS = [
  'name',
  'amount',
  'unit',
  'about',
  'place',
  'spot',
  'size',
  'container',
  'texture',
  'marker',
  ...DATE_KINDS.map((kind) => ({ bestBefore: 'best before', useBy: 'use by' })[kind as string] ?? kind),
  'maker',
  'owner',
  'diets',
  'contains',
  'free from',
  'cautions',
  'notes',
  'codes',
  'batch',
] as const;

/** A separator that belongs to the words themselves gets a backslash in front. */
const escaped = (words: string, separator: string): string =>
  words.replaceAll('\\', '\\\\').replaceAll(separator, `\\${separator}`);

const joined = (list: readonly string[], separator = ';'): string =>
  list.map((entry) => escaped(entry, separator)).join(separator === ';' ? '; ' : ` ${separator} `);

/** Takes apart what `joined` put together. */
const entries = (cell: string, separator = ';'): readonly string[] => {
  const found = [''];
  for (let at = 0; at < cell.length; at += 1) {
    const letter = cell.charAt(at);
    const last = found.length - 1;
    if (letter === separator) found.push('');
    else if (letter === '\\' && at + 1 < cell.length) found[last] += cell.charAt((at += 1));
    else found[last] += letter;
  }
  return found.map((entry) => entry.trim()).filter((entry) => entry !== '');
};

/** "shape: round; fastening: clip; dots: 2" */
const spelledTouch = (touch: Touch | null): string =>
  joined(Object.entries(touch ?? {}).map(([part, value]) => `${part}: ${String(value)}`));

const cellsOf = (row: ItemRow): readonly string[] => [
  row.name,
  row.amount ? String(row.amount.value) : '',
  row.amount?.unit ?? '',
  row.amount?.rough ? 'yes' : '',
  joined(row.place, '>'),
  row.spot ?? '',
  row.touch.size ?? '',
  row.touch.container ?? '',
  row.touch.texture ?? '',
  spelledTouch(row.marker),
  ...DATE_KINDS.map((kind) => row.dates[kind] ?? ''),
  row.maker ?? '',
  row.owner ?? '',
  joined(row.diets),
  joined(row.contains),
  joined(row.freeFrom),
  joined(row.cautions),
  joined(row.notes),
  joined(row.codes),
  row.batch ?? '',
];

/**
 * What a spreadsheet would take for a formula gets an apostrophe in front (OWASP: CSV Injection);
 * reading takes it off again.
 */
const FORMULA = /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;
const guarded = (cell: string): string =>
  FORMULA.test(cell) || /^'+[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell) ? `'${cell}` : cell;
const unguarded = (cell: string): string =>
  /^'+[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell) ? cell.slice(1) : cell;

export const writeCsv = (rows: readonly ItemRow[]): string =>
  stringify([[...COLUMNS], ...rows.map((row) => cellsOf(row).map(guarded))]);

const NUMBER_PARTS: ReadonlySet<string> = new Set(['dots', 'fastenings']);

const touchIn = (cell: string): unknown =>
  Object.fromEntries(
    entries(cell).map((entry) => {
      const [part = '', ...value] = entry.split(':');
      const said = value.join(':').trim();
      return [part.trim().toLowerCase(), NUMBER_PARTS.has(part.trim().toLowerCase()) ? Number(said) : said];
    }),
  );

/** "1.5", "1/2", "1 1/2", "1½". */
const numberIn = (written: string): number => {
  // One sign for a fraction becomes its two figures.
  const cell = written
    .replace(/\p{No}/gu, (sign) => ` ${sign.normalize('NFKC')}`)
    .replaceAll('\u2044', '/')
    .trim();
  const [, whole = '0', over, under] = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(cell) ?? [];
  return over === undefined ? Number(cell.replace(',', '.')) : Number(whole) + Number(over) / Number(under);
};

const given = (fields: Readonly<Record<string, string>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, cell]) => cell !== ''));

/** What a row means, before it is checked. */
const meant = (cells: ReadonlyMap<string, string>): unknown => {
  const at = (column: string): string => cells.get(column) ?? '';
  return {
    name: at('name'),
    amount:
      at('amount') === ''
        ? null
        : {
            value: numberIn(at('amount')),
            unit: at('unit') || 'piece',
            ...(/^(?:y|yes|true|1|about)$/i.test(at('about')) ? { rough: true } : {}),
          },
    place: entries(at('place'), '>'),
    spot: at('spot') || null,
    touch: given({ size: at('size'), container: at('container'), texture: at('texture') }),
    marker: at('marker') === '' ? null : touchIn(at('marker')),
    dates: given({
      made: at('made'),
      bought: at('bought'),
      opened: at('opened'),
      frozen: at('frozen'),
      thawed: at('thawed'),
      bestBefore: at('best before'),
      useBy: at('use by'),
    }),
    maker: at('maker') || null,
    owner: at('owner') || null,
    diets: entries(at('diets')),
    contains: entries(at('contains')),
    freeFrom: entries(at('free from')),
    cautions: entries(at('cautions')),
    notes: entries(at('notes')),
    codes: entries(at('codes')),
    batch: at('batch') || null,
  };
};

/** In the file's words: what a fault at `dates.useBy` is called in the table. */
const columnOf = (path: readonly PropertyKey[]): string => {
  const [first, second] = path.map(String);
  if (first === 'amount') return second === 'unit' ? 'unit' : 'amount';
  const inner = first === 'dates' || first === 'touch' ? (second ?? '') : (first ?? '');
  return { bestBefore: 'best before', useBy: 'use by', freeFrom: 'free from' }[inner] ?? inner;
};

/** Reads a table. Rows count as a spreadsheet counts them: the heading is row 1. */
export const readCsv = (
  text: string,
): { readonly rows: readonly ReadRow[]; readonly faults: readonly Fault[] } => {
  let table: string[][];
  try {
    table = parse(text, { bom: true, relax_column_count: true, max_record_size: 100_000 }) as string[][];
  } catch (error) {
    const row = error instanceof CsvError && typeof error['lines'] === 'number' ? error['lines'] : 1;
    const problem = error instanceof Error ? error.message : 'not a CSV table';
    return { rows: [], faults: [{ row, column: null, problem }] };
  }
  const [heading = [], ...body] = table;
  const columns = heading.map((cell) => cell.trim().toLowerCase());
  const known: ReadonlySet<string> = new Set(COLUMNS);
  const faults: Fault[] = columns
    .filter((column) => column !== '' && !known.has(column))
    .map((column) => ({ row: 1, column, problem: 'there is no such column' }));
  if (!columns.includes('name')) faults.push({ row: 1, column: 'name', problem: 'this column is missing' });
  if (faults.length > 0) return { rows: [], faults };
  const rows: ReadRow[] = [];
  body.forEach((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return;
    if (record.slice(columns.length).some((cell) => cell.trim() !== '')) {
      faults.push({ row, column: null, problem: 'more cells than the heading has' });
      return;
    }
    const cells = new Map(columns.map((column, at) => [column, unguarded((record[at] ?? '').trim())]));
    const read = itemRow.safeParse(meant(cells));
    if (read.success) rows.push({ row, item: read.data });
    else faults.push(...faultsIn(read.error, row, columnOf));
  });
  return { rows, faults };
};
