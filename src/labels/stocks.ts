/** Label sheets by size, from `shared/labels/stocks.json`, and sizes of one's own. */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';

const pair = z.tuple([z.number().positive(), z.number().positive()]);
const stock = z.strictObject({
  id: z.string(),
  name: z.string(),
  page: pair,
  columns: z.int().positive(),
  rows: z.int().positive(),
  size: pair,
  first: z.tuple([z.number().min(0), z.number().min(0)]),
  pitch: pair,
  /** Where its sizes come from. */
  basis: z.string(),
});

/** A sheet of labels; lengths in millimetres. */
export type Stock = Omit<z.infer<typeof stock>, 'basis'>;

const file = z.strictObject({ about: z.string(), source: z.string(), stocks: z.array(stock) });

/** All known sheets. */
export const loadStocks = (): readonly Stock[] =>
  file.parse(JSON.parse(readFileSync(projectFile('shared', 'labels', 'stocks.json'), 'utf8'))).stocks;

/** The smallest label, in millimetres: a line of title at 18 points, five Braille cells, and the margins. */
const SMALLEST = [40, 20] as const;

/**
 * A sheet with as many labels of this size as fit on the page, for plain paper and scissors.
 *
 * @throws RangeError with a sentence for the person when a label is too small to hold anything, or larger
 * than the page.
 */
export const freeStock = (
  size: readonly [number, number],
  page: readonly [number, number] = [210, 297],
): Stock => {
  const margin = 10;
  const gap = 4;
  const [width, height] = size;
  if (!(width >= SMALLEST[0] && height >= SMALLEST[1]))
    throw new RangeError(
      `A label ${width} by ${height} millimetres is too small for large print and Braille. The smallest is ${SMALLEST[0]} by ${SMALLEST[1]}.`,
    );
  const fits = (room: number, length: number): number =>
    Math.floor((room - 2 * margin + gap) / (length + gap));
  const columns = fits(page[0], width);
  const rows = fits(page[1], height);
  if (columns < 1 || rows < 1) throw new RangeError('The label is larger than the page.');
  return {
    id: 'free',
    name: `${width} by ${height} millimetres`,
    page: [page[0], page[1]],
    columns,
    rows,
    size: [width, height],
    first: [margin, margin],
    pitch: [width + gap, height + gap],
  };
};
