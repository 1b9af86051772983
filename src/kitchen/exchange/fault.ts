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

export const faultsIn = (
  error: z.ZodError,
  row: number,
  columnOf: (path: readonly PropertyKey[]) => string,
): readonly Fault[] =>
  error.issues.map((issue) => ({
    row,
    column: columnOf(issue.path) || null,
    problem: issue.message.endsWith('received NaN') ? 'that is no number' : issue.message,
  }));
