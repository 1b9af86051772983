/** The published tables as they stand, for whoever prints them; what they say of a food is asked of the gate. */
import type { PackageDateRow, StorageRow } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import { safetyTables } from './tables.js';

/** Reads and checks every table now, rather than at the first question. @throws TableError where a row is bad. */
export const readTables = (): void => void safetyTables();

export const storageRows = (region: Region, tables = safetyTables()): readonly StorageRow[] => [
  ...tables.storage[region].values(),
];

/** What each kind of date on a package means; of every region where none is given. */
export const packageDates = (region: Region | null, tables = safetyTables()): readonly PackageDateRow[] =>
  tables.packageDates.filter((row) => region === null || row.region === region);
