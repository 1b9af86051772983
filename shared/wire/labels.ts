/** Labels for eye and hand, on the wire. */
import { z } from 'zod';

const ids = z.array(z.string().min(1).max(128)).max(500).default([]);

export const labelRequest = z
  .strictObject({
    kind: z.enum(['pdf', 'brf']).describe('A sheet to print, or a file for an embosser.'),
    items: ids,
    markers: ids,
    grade: z
      .union([z.literal(1), z.literal(2)])
      .nullable()
      .default(2)
      .describe('Unified English Braille; null for none.'),
    stock: z.string().max(40).optional().describe('A sheet by its id, from `GET /v1/labels/stocks`.'),
    size: z
      .tuple([z.number().min(30).max(280), z.number().min(20).max(280)])
      .optional()
      .describe('Width and height of one label in millimetres, instead of a stock; 40 by 20 at least.'),
    skip: z.int().min(0).max(100).default(0).describe('Labels already used on the first sheet.'),
    cells: z.int().min(10).max(60).default(40).describe('Cells in an embosser’s line.'),
    lines: z.int().min(5).max(60).default(25).describe('Lines in an embosser’s page.'),
  })
  .meta({ id: 'LabelRequest' });

export const guideQuery = z.strictObject({
  kind: z.enum(['pdf', 'brf']).default('pdf').describe('A page to print, or a file for an embosser.'),
  grade: z.enum(['1', '2']).default('2').describe('Unified English Braille.'),
});

export const labelFile = z
  .strictObject({
    name: z.string(),
    type: z.string(),
    file: z.string().describe('The file’s bytes in base64.'),
    notes: z.array(z.string()).describe('What could not be done, in sentences.'),
  })
  .meta({ id: 'LabelFile' });

export const labelStock = z
  .strictObject({ id: z.string(), name: z.string(), size: z.tuple([z.number(), z.number()]) })
  .meta({ id: 'LabelStock' });
