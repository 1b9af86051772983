/** Timers and reminders, on the wire. */
import { z } from 'zod';

export const reminderView = z
  .strictObject({
    id: z.string(),
    kind: z.enum(['timer', 'reminder']),
    label: z.string().nullable(),
    due: z.iso.datetime(),
    heldLeft: z
      .number()
      .nonnegative()
      .optional()
      .describe('A timer that stands still: seconds left of it. `due` then says nothing.'),
  })
  .meta({ id: 'Reminder' });
