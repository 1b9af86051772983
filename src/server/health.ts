/** Liveness (`/health/live`): the process turns. Readiness (`/health/ready`): it can answer turns now. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../shared/wire/problem.js';
import type { Context } from './context.js';
import { ProblemError } from './problems.js';

const fine = z.strictObject({ status: z.literal('ok') });
/** The store is tried at most this often, however many ask; milliseconds. */
const TRY_EVERY = 2_000;
/** A store that answers later than this is as good as none. */
const ANSWERS_WITHIN = 4_000;

/** The last real read, write and sync, not older than a moment; who asks meanwhile shares it. */
const createTrying = (probe: () => Promise<void>) => {
  let last: { readonly at: number; readonly done: Promise<void> } | null = null;
  return (): Promise<void> => {
    if (last && performance.now() - last.at < TRY_EVERY) return last.done;
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error('the store does not answer in time')), ANSWERS_WITHIN);
    });
    const done = Promise.race([probe(), late]).finally(() => clearTimeout(timer));
    // A failure is not remembered: the next who asks tries again.
    done.catch(() => (last = null));
    last = { at: performance.now(), done };
    return done;
  };
};

export const health: FastifyPluginAsyncZod<Context> = async (app, { store }) => {
  const tried = createTrying(() => store.probe());
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
        await tried();
      } catch (error) {
        request.log.error({ err: error }, 'the store does not answer');
        throw new ProblemError('overloaded', { detail: 'The store does not answer.', retryAfter: 5 });
      }
      return { status: 'ok' as const };
    },
  );
};
