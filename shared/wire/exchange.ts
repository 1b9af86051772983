/** Lists brought in from elsewhere, on the wire. */
import { z } from 'zod';
import { changeDone } from './kitchen.js';

export const importRequest = z
  .strictObject({
    text: z.string().max(1_000_000).describe('The file as it is.'),
    form: z
      .enum(['csv', 'json'])
      .describe('`csv`: ours, or anybody’s own list. `json`: as `tellshelf export` makes it.'),
    dryRun: z.boolean().default(false).describe('Only say what would happen.'),
    makePlaces: z.boolean().default(false).describe('Build places that are not there yet.'),
  })
  .meta({ id: 'ImportRequest' });

export const importDone = z
  .strictObject({
    items: z.int().describe('How many were brought in, or would be.'),
    markers: z.int().describe('New markers among them.'),
    places: z.array(z.string()).describe('New places, from the outside in.'),
    already: z.int().describe('Left out, for they are there already.'),
    guessed: z
      .strictObject({
        headings: z.array(z.strictObject({ heading: z.string(), column: z.string().nullable() })),
        rows: z.array(
          z.strictObject({
            row: z.int().describe('As a spreadsheet counts.'),
            cells: z.array(z.strictObject({ column: z.string(), value: z.string() })),
          }),
        ),
      })
      .nullable()
      .describe(
        'What somebody’s own list was taken for; a column of null is left out. Null for a file of ours.',
      ),
    faults: z
      .array(z.strictObject({ row: z.int(), column: z.string().nullable(), problem: z.string() }))
      .describe('What is wrong, in a dry run. With any, nothing would be brought in.'),
    done: changeDone.nullable().describe('Null in a dry run, and where there was nothing to bring in.'),
  })
  .meta({ id: 'ImportDone' });
