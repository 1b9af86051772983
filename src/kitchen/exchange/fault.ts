/** What is wrong with a file, row by row. */
import type { z } from 'zod';
import type { ItemRow } from './row.js';

export interface Fault {
  /** In a table, as a spreadsheet counts; in JSON, the item's place in the list, from 1. */
  readonly row: number;
  /** The column or field; null when it is the whole row. */
  readonly column: string | null;
  readonly problem: string;
}

export interface ReadRow {
  readonly row: number;
  readonly item: ItemRow;
}

/** What a shape finds wrong, as somebody with a spreadsheet would say it. */
const plainly = ({ code, message, ...issue }: z.core.$ZodIssue): string => {
  if (code === 'invalid_type' && issue.path.length > 0 && 'expected' in issue && issue.expected === 'number')
    return 'this is no number';
  if (code === 'too_small' && 'origin' in issue && issue.origin === 'string') return 'this cell is empty';
  return message;
};

export const faultsIn = (
  error: z.ZodError,
  row: number,
  columnOf: (path: readonly PropertyKey[]) => string,
): readonly Fault[] =>
  error.issues.map((issue) => ({ row, column: columnOf(issue.path) || null, problem: plainly(issue) }));
