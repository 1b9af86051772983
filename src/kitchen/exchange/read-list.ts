/** A file of items, ours or somebody's own, planned as one change; what was guessed of it is told with it. */
import { parse } from 'csv-parse/sync';
import type { Doing } from '../doing.js';
import type { Fault } from './fault.js';
import { guessTable, type GuessedHeading } from './headings.js';
import { planImport, type FileForm, type ImportPlan } from './import.js';

export interface GuessedRow {
  /** As a spreadsheet counts them. */
  readonly row: number;
  /** What was taken for what: column of ours and value, the empty ones left out. */
  readonly cells: readonly (readonly [column: string, value: string])[];
}

export interface ReadList {
  readonly plan: ImportPlan;
  /** Null for a file of ours, which is read as it is. */
  readonly guessed: {
    readonly headings: readonly GuessedHeading[];
    readonly rows: readonly GuessedRow[];
  } | null;
}

/** Countries that write the month first. */
const MONTH_FIRST: ReadonlySet<string> = new Set(['US', 'PH', 'FM', 'MH', 'PW']);
const writesMonthFirst = (locale: string): boolean =>
  MONTH_FIRST.has(new Intl.Locale(locale).maximize().region ?? '');

const rowsOf = (text: string, above: number): readonly GuessedRow[] => {
  const [columns = [], ...body] = parse(text, { relax_column_count: true }) as string[][];
  return body
    .map((record, index) => ({
      row: index + 2 + above,
      cells: columns.flatMap((column, at) => {
        const value = record[at] ?? '';
        return value === '' ? [] : [[column, value] as const];
      }),
    }))
    .filter(({ cells }) => cells.length > 0);
};

/** Some columns of ours stand at its top: what is wrong is told of the others. */
const hasOurs = ({ faults }: ImportPlan): boolean =>
  !faults.some(({ row, column }) => row === 1 && column === 'name');

const NO_HEADINGS: Fault = {
  row: 1,
  column: null,
  problem:
    'no heading says which column holds the names of the food. Write headings above, such as Item, Location, Quantity',
};

export const readList = (
  doing: Doing,
  text: string,
  form: FileForm,
  how: { readonly makePlaces: boolean },
): ReadList => {
  const plan = planImport(doing, text, form, how);
  // A file of ours is read as it is; of another, the headings are guessed.
  if (form === 'json' || !plan.faults.some(({ row }) => row === 1)) return { plan, guessed: null };
  const guessed = guessTable(text, writesMonthFirst(doing.kitchen.household.locale));
  if (!guessed) return { plan: hasOurs(plan) ? plan : { ...plan, faults: [NO_HEADINGS] }, guessed: null };
  const { above, headings } = guessed;
  const again = planImport(doing, guessed.text, form, how);
  return {
    plan: { ...again, faults: again.faults.map((fault) => ({ ...fault, row: fault.row + above })) },
    guessed: { headings, rows: rowsOf(guessed.text, above) },
  };
};

/** What to write instead, where a cell was not understood. */
export const mendOf = (column: string | null, problem: string): string =>
  column === null
    ? problem
    : ['made', 'bought', 'opened', 'frozen', 'best before', 'use by'].includes(column)
      ? `${problem}. Write the day as 2026-05-14, or leave the cell empty.`
      : column === 'amount'
        ? `${problem}. Write a number, such as 2, or leave the cell empty.`
        : column === 'place'
          ? `${problem}. Write a place that is there, or ask for new places to be made.`
          : column === 'name'
            ? `${problem}. Write what the food is, or take the row out.`
            : problem;
