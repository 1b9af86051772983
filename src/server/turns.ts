/** `POST /v1/turns`: one turn of a conversation over HTTP. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { problem } from '../../shared/wire/problem.js';
import { turnReply, turnRequest } from '../../shared/wire/turn.js';
import type { Context } from './context.js';
import { asSpeaker } from './identify.js';
import { tellOfTurn } from './turn-log.js';

export const turns: FastifyPluginAsyncZod<Context> = async (app, { households, config }) => {
  app.post(
    '/v1/turns',
    {
      config: { needs: 'speak' },
      bodyLimit: 64 * 1024,
      schema: {
        tags: ['conversation'],
        summary: 'Say something, get the spoken answer',
        description:
          'Send what the recogniser heard, best guess first. The same id again is answered from the record and changes nothing, so a turn whose answer was lost can be sent again.',
        body: turnRequest,
        response: { 200: turnReply, '4xx': problem, '5xx': problem },
      },
    },
    async (request) => {
      const started = performance.now();
      const reply = await asSpeaker(request, (speaker) => households.takeTurn(speaker, request.body));
      tellOfTurn(app, request.log, { reply, request: request.body, started, way: 'http' }, config);
      return reply;
    },
  );
};
