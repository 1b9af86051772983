/** `/v1/kitchen/reminders`: timers and reminders still to come, and ending one before its time. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../../shared/wire/problem.js';
import { changeDone } from '../../../shared/wire/kitchen.js';
import { reminderView } from '../../../shared/wire/reminders.js';
import { cancelReminder } from '../../kitchen/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { makeChange } from './make-change.js';
import { viewReminder } from './views.js';

export const kitchenReminders: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.get(
    '/v1/kitchen/reminders',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['kitchen'],
        summary: 'Timers and reminders still to come, soonest first',
        response: { 200: z.array(reminderView), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await context.households.look(deviceOf(request).householdId);
      return [...kitchen.reminders.values()]
        .filter((reminder) => reminder.deliveredAt === null)
        .sort((one, other) => one.due.localeCompare(other.due))
        .map(viewReminder);
    },
  );

  app.delete(
    '/v1/kitchen/reminders/:id',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['kitchen'],
        summary: 'A timer or reminder is ended before its time',
        description: 'Can be undone. Send an `Idempotency-Key` header to be able to send it again.',
        params: z.strictObject({ id: z.string().max(128) }),
        response: { 200: changeDone, '4xx': problem },
      },
    },
    async (request) => makeChange(context, request, (around) => cancelReminder(around, request.params.id)),
  );
};
