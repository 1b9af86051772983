/** `GET /v1/kitchen/reminders`: timers and reminders still to come. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../../shared/wire/problem.js';
import { reminderView } from '../../../shared/wire/reminders.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';

export const kitchenReminders: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
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
      const { kitchen } = await households.look(deviceOf(request).householdId);
      return [...kitchen.reminders.values()]
        .filter((reminder) => reminder.deliveredAt === null)
        .sort((one, other) => one.due.localeCompare(other.due))
        .map(({ id, kind, label, due }) => ({ id, kind, label, due }));
    },
  );
};
