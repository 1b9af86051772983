/**
 * A list somebody has already, made into a table of ours: any separator, any order of columns, a title above
 * them, headings guessed by `shared/exchange/headings.json` and days in the order of the household's country.
 * Every guess is shown before anything is taken, and so is what is left out.
 */
import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';
import { isPlainDate, type PlainDate } from '../../terms/dates.js';

const { about: _about, ...headings } = z
  .object({ about: z.string() })
  .catchall(z.array(z.string()))
  .parse(JSON.parse(readFileSync(projectFile('shared', 'exchange', 'headings.json'), 'utf8')));

const bare = (cell: string): string =>
  cell
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z ]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const columnOf = (cell: string): string | null =>
  Object.entries(headings).find(
    ([column, ways]) => Array.isArray(ways) && (column === bare(cell) || ways.includes(bare(cell))),
  )?.[0] ?? null;

export interface GuessedHeading {
  /** As it stands in the file. */
  readonly heading: string;
  /** What it is taken for; null where it is left out. */
  readonly column: string | null;
}

export interface GuessedTable {
  readonly headings: readonly GuessedHeading[];
  /** The same as a table of ours. */
  readonly text: string;
  /** Rows of the file above the first row of ours, for the numbers in faults. */
  readonly above: number;
}

/** How far down the headings may stand, under a title. */
const deepest = 6;

const separators = [',', ';', '\t', '|'] as const;

/** The separator that parts the file into most columns, evenly. */
const separatorOf = (text: string): string => {
  const lines = text
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .slice(0, 10);
  const score = (of: string): number => lines.reduce((sum, line) => sum + line.split(of).length - 1, 0);
  return [...separators].toSorted((a, b) => score(b) - score(a))[0]!;
};

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const two = (n: number): string => String(n).padStart(2, '0');
const century = (year: number): number => (year < 100 ? 2000 + year : year);

/** "14/05/2026", "5-14-26", "14 May 2026", "May 14, 2026"; null for what is no such day. */
export const dayIn = (cell: string, monthFirst: boolean): PlainDate | null => {
  const made = (year: number, month: number, day: number): PlainDate | null => {
    const text = `${century(year)}-${two(month)}-${two(day)}`;
    return isPlainDate(text) ? text : null;
  };
  if (isPlainDate(cell)) return cell;
  const figures = /^(\d{1,2})[./-](\d{1,2})[./-](\d{2}|\d{4})$/.exec(cell);
  if (figures) {
    const [a, b, year] = figures.slice(1).map(Number) as [number, number, number];
    // A figure above twelve is a day, whichever comes first here.
    return monthFirst ? (made(year, a, b) ?? made(year, b, a)) : (made(year, b, a) ?? made(year, a, b));
  }
  const named =
    /^(?:(\d{1,2})(?:st|nd|rd|th)?\s+)?([a-z]{3,9})\.?\s*(?:(\d{1,2})(?:st|nd|rd|th)?,?\s+)?,?\s*(\d{2}|\d{4})$/i.exec(
      cell,
    );
  const month = named ? months.indexOf(named[2]!.slice(0, 3).toLowerCase()) + 1 : 0;
  const day = named?.[1] ?? named?.[3];
  return named && month > 0 && day ? made(Number(named[4]), month, Number(day)) : null;
};

const dated: ReadonlySet<string> = new Set(['made', 'bought', 'opened', 'frozen', 'best before', 'use by']);

/** "2 tins", "500g", "3 x": a number and what it is of. */
const amountIn = (cell: string): readonly [string, string] => {
  const [, number = '', unit = ''] = AMOUNT.exec(cell.trim()) ?? [];
  return number === '' ? [cell, ''] : [number, unit.toLowerCase()];
};
/** "1.5", "1/2", "1 1/2", "½", "1½". */
const NUMBER = String.raw`\d+\s+\d+/\d+|\d+[.,/]\d+|\d*\s*[½¼¾⅓⅔]|\d+`;
const AMOUNT = new RegExp(String.raw`^(${NUMBER})\s*(?:x\s*)?([a-z]+)?\.?$`, 'i');

const singular = (unit: string): string =>
  ({ g: 'gram', kg: 'kilogram', ml: 'milliliter', l: 'liter', lb: 'pound', lbs: 'pound', oz: 'ounce' })[
    unit
  ] ?? (unit.length > 3 ? unit.replace(/(?<=[^s])s$/, '').replace(/(?<=x|ch|sh)e$/, '') : unit);

/**
 * The table as ours, or null where no row of it names a food. `monthFirst`: "5/6" is the sixth of May.
 */
export const guessTable = (text: string, monthFirst: boolean): GuessedTable | null => {
  let table: string[][];
  try {
    table = parse(text, {
      bom: true,
      delimiter: separatorOf(text),
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
    }) as string[][];
  } catch {
    return null;
  }
  const at = table.slice(0, deepest).findIndex((row) => row.some((cell) => columnOf(cell) === 'name'));
  if (at < 0) return null;
  const heads = table[at]!;
  const taken = new Set<string>();
  const guessed = heads.map((heading): GuessedHeading => {
    const column = columnOf(heading);
    if (column === null || taken.has(column)) return { heading, column: null };
    taken.add(column);
    return { heading, column };
  });
  const columns = [...taken].filter((column) => column !== 'inside');
  const all = [...columns, ...(taken.has('inside') && !taken.has('place') ? ['place'] : [])];
  const withUnit = all.includes('amount') && !all.includes('unit') ? [...all, 'unit'] : all;
  const rows = table.slice(at + 1).map((record) => {
    const cell = (column: string): string =>
      (record[guessed.findIndex((one) => one.column === column)] ?? '').trim();
    if (record.every((one) => one.trim() === '')) return withUnit.map(() => '');
    return withUnit.map((column) => {
      if (column === 'place')
        return [...cell('place').split(/\s*[>/,]\s*|\s+-\s+/), cell('inside')]
          .map((part) => part.trim().toLowerCase())
          .filter((part) => part !== '')
          .join(' > ');
      if (column === 'amount') return amountIn(cell('amount'))[0];
      if (column === 'unit') return singular(cell('unit').toLowerCase() || amountIn(cell('amount'))[1]);
      if (dated.has(column)) return dayIn(cell(column), monthFirst) ?? cell(column);
      if (column === 'contains' || column === 'diets')
        return cell(column)
          .split(/[;,/]/)
          .map((part) => part.trim().toLowerCase())
          .filter((part) => part !== '')
          .join('; ');
      if (column === 'notes') return cell('notes').replaceAll(';', ',');
      return cell(column);
    });
  });
  return {
    headings: guessed.filter(({ heading }) => heading.trim() !== ''),
    text: stringify([withUnit, ...rows]),
    above: at,
  };
};
