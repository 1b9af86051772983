/** Items as JSON: all that the table has, and how they are got ready. */
import { faultsIn, type Fault, type ReadRow } from './fault.js';
import { itemRow, type ItemRow } from './row.js';

const FORMAT = 'tellshelf items 1';

export const writeJson = (rows: readonly ItemRow[]): string =>
  `${JSON.stringify({ format: FORMAT, items: rows }, null, 2)}\n`;

export const readJson = (
  text: string,
): { readonly rows: readonly ReadRow[]; readonly faults: readonly Fault[] } => {
  const wrong = (problem: string) => ({ rows: [], faults: [{ row: 0, column: null, problem }] });
  let document: unknown;
  try {
    document = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return wrong(error instanceof Error ? error.message : 'not JSON');
  }
  if (
    document === null ||
    typeof document !== 'object' ||
    !('format' in document) ||
    !('items' in document)
  ) {
    return wrong(`not an object with "format": "${FORMAT}" and "items"`);
  }
  if (document.format !== FORMAT) return wrong(`"format" is not "${FORMAT}"`);
  if (!Array.isArray(document.items)) return wrong('"items" is not a list');
  const rows: ReadRow[] = [];
  const faults: Fault[] = [];
  document.items.forEach((item: unknown, index) => {
    const read = itemRow.safeParse(item);
    if (read.success) rows.push({ row: index + 1, item: read.data });
    else faults.push(...faultsIn(read.error, index + 1, (path) => path.map(String).join('.')));
  });
  return { rows, faults };
};
