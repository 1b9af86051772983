/** A household's own data: taken along whole, or deleted completely. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../shared/wire/problem.js';
import type { Context } from './context.js';
import { deviceOf } from './identify.js';
import { ProblemError } from './problems.js';

const tags = ['household'];

export const household: FastifyPluginAsyncZod<Context> = async (app, { store, households }) => {
  app.get(
    '/v1/household/export',
    {
      config: { needs: 'own' },
      schema: {
        tags,
        summary: 'All that is kept of this household, as JSON',
        description:
          'The archive that `tellshelf restore` reads. Devices are left out: their tokens’ hashes belong to this service, and they pair again.',
        response: { 200: z.record(z.string(), z.unknown()), '4xx': problem },
      },
    },
    async (request, reply) => {
      const archive = await store.archiveHousehold(deviceOf(request).householdId);
      if (!archive) throw new ProblemError('not-found');
      void reply.header('content-disposition', 'attachment; filename="kitchen.json"');
      return { ...archive, devices: [] };
    },
  );

  app.delete(
    '/v1/household',
    {
      config: { needs: 'own' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Delete this household completely',
        description:
          'Records, journal, conversations and devices. It cannot be undone, so its name must be sent.',
        body: z.strictObject({ name: z.string().max(200) }),
        response: { 204: z.null(), '4xx': problem },
      },
    },
    async (request, reply) => {
      const { householdId } = deviceOf(request);
      const { kitchen } = await households.look(householdId);
      if (request.body.name !== kitchen.household.name) {
        throw new ProblemError('refused', { detail: 'The name is not this household’s.' });
      }
      const devices = await store.devices(householdId);
      await store.deleteHousehold(householdId);
      households.forget(householdId);
      for (const device of devices) app.deviceChanged(device);
      request.log.info('household deleted');
      return reply.code(204).send(null);
    },
  );
};
