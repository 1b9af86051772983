/** `GET /v1/kitchen/biasing`: what a recogniser should listen for here. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { BIASING_FORMS, biasingFor, type BiasingForm } from '../../biasing/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';

const TYPES: Readonly<Record<BiasingForm, string>> = {
  words: 'text/tab-separated-values; charset=utf-8',
  jsgf: 'text/plain; charset=utf-8',
  srgs: 'application/srgs+xml; charset=utf-8',
};

export const kitchenBiasing: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
  app.get(
    '/v1/kitchen/biasing',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['kitchen'],
        summary: 'What a recogniser should listen for in this household',
        description:
          'The names of its food, places, markers and people: alone, a line each (weight, tab, phrase), or within the listening grammar as JSGF or SRGS XML. The ETag changes when they may have changed: ask again with `If-None-Match` after each `changed` on the socket.',
        querystring: z.strictObject({ as: z.enum(BIASING_FORMS).default('words') }),
        produces: ['text/tab-separated-values', 'text/plain', 'application/srgs+xml'],
      },
    },
    async (request, reply) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      const { as } = request.query;
      const etag = `"${kitchen.version}.${as}"`;
      void reply.header('etag', etag).header('cache-control', 'private, no-cache');
      if (request.headers['if-none-match'] === etag) return reply.code(304).send();
      return reply.type(TYPES[as]).send(biasingFor(kitchen, as));
    },
  );
};
