/** The short sounds that SSML answers name in `<audio>`, for clients that ask for them with `sounds: true`. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { EARCON_NAMES, soundOf, type EarconName } from '../speech/index.js';
import type { Context } from './context.js';

const FILES = EARCON_NAMES.map((name) => `${name}.wav` as const);

export const sounds: FastifyPluginAsyncZod<Context> = async (app) => {
  const made = new Map(EARCON_NAMES.map((name: EarconName) => [`${name}.wav`, Buffer.from(soundOf(name))]));
  app.get(
    '/sounds/:file',
    {
      config: { needs: 'public' },
      schema: {
        tags: ['conversation'],
        summary: 'A short sound that an answer begins with',
        params: z.strictObject({ file: z.enum(FILES) }),
        produces: ['audio/wav'],
      },
    },
    async (request, reply) => {
      void reply.type('audio/wav').header('cache-control', 'public, max-age=86400');
      // Bytes are sent as they are, past the JSON serialiser.
      return reply.send(made.get(request.params.file));
    },
  );
};
