/** Liveness (`/health/live`): the process turns. Readiness (`/health/ready`): it can answer turns now. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../shared/wire/problem.js';
import type { Context } from './context.js';
import { ProblemError } from './problems.js';

const fine = z.strictObject({ status: z.literal('ok') });
/** A household id nobody has: asking for it shows that the store answers. */
const NOBODY = '-';

export const health: FastifyPluginAsyncZod<Context> = async (app, { store }) => {
  app.get(
    '/health/live',
    {
      config: { needs: 'public' },
      schema: { tags: ['operations'], summary: 'The process runs', response: { 200: fine } },
    },
    async () => ({ status: 'ok' as const }),
  );
  app.get(
    '/health/ready',
    {
      config: { needs: 'public' },
      schema: {
        tags: ['operations'],
        summary: 'The service can answer turns',
        response: { 200: fine, '5xx': problem },
      },
    },
    async (request) => {
      if (app.closing) throw new ProblemError('closing', { retryAfter: 1 });
      try {
        await store.beginTurn(NOBODY, NOBODY, NOBODY);
      } catch (error) {
        request.log.error({ err: error }, 'the store does not answer');
        throw new ProblemError('overloaded', { detail: 'The store does not answer.', retryAfter: 5 });
      }
      return { status: 'ok' as const };
    },
  );
};
