/** Charts on the wire: the same counts for a drawing, a table and a sentence. */
import { z } from 'zod';

export const chartView = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    sentence: z.string().describe('What the chart shows, as one would say it.'),
    groups: z.array(z.string()),
    days: z
      .array(z.string().nullable())
      .describe('For a group that is a day or a month: `YYYY-MM-DD` or `YYYY-MM`; else null.'),
    series: z.array(z.strictObject({ name: z.string(), counts: z.array(z.int()) })),
  })
  .meta({ id: 'Chart' });
