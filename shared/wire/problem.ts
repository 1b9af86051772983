/** An error on the wire: RFC 9457 "Problem Details for HTTP APIs", over HTTP and on the socket. */
import { z } from 'zod';

export const problem = z
  .strictObject({
    type: z.string().describe('URI reference that names the kind of problem: `/v1/problems#` and its code.'),
    title: z.string().describe('The kind of problem, in one sentence. The same for each case.'),
    status: z.number().int(),
    code: z.string().describe('Short name to program against.'),
    detail: z.string().optional().describe('What was wrong this time.'),
    instance: z.string().optional().describe('The request’s id, as in the log.'),
    errors: z
      .array(z.strictObject({ path: z.string(), message: z.string() }))
      .optional()
      .describe('Which parts of the request were wrong. Never repeats what was sent.'),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof problem>;
