/** A kitchen's living items as a file. */
import { livingItems } from '../items.js';
import type { Kitchen } from '../model.js';
import { writeCsv } from './csv.js';
import type { FileForm } from './import.js';
import { writeJson } from './json.js';
import { rowOfItem } from './row.js';

export const exportItems = (kitchen: Kitchen, form: FileForm): string => {
  const rows = livingItems(kitchen).map((item) => rowOfItem(kitchen, item));
  return form === 'csv' ? writeCsv(rows) : writeJson(rows);
};
