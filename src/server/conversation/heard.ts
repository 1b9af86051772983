/** That something said unasked was heard by somebody: by a socket's `ack`, or over HTTP. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problem } from '../../../shared/wire/problem.js';
import type { Id } from '../../kitchen/model.js';
import { rankUseFirst } from '../../safety/index.js';
import { dueNow, heardChange, type DueTelling } from '../../schedule/index.js';
import type { TurnSpeaker } from '../../turn/index.js';
import type { Context } from '../context.js';
import { asSpeaker } from '../identify.js';

/** Records it, once; null when it is not due (any more) or was heard before. */
export const markHeard = async (
  { households }: Pick<Context, 'households'>,
  speaker: TurnSpeaker,
  id: Id,
): Promise<DueTelling['kind'] | null> => {
  const around = await households.look(speaker.householdId);
  const due = dueNow(around.kitchen, around.clock, rankUseFirst).find((one) => one.id === id);
  if (!due) return null;
  const result = await households.change(speaker, { id: `heard:${id}`, said: id }, (doing) => {
    const change = heardChange(doing, id);
    return change ? { changes: [change] } : { refused: 'heard before' };
  });
  return result.outcome === 'done' ? due.kind : null;
};

export const heard: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.post(
    '/v1/unasked/:id/heard',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags: ['conversation'],
        summary: 'A timer, reminder or summary was heard by somebody',
        description:
          'For whatever speaks what a webhook or a broker carried: until it says so, devices that connect are told as well. Its id is the delivery’s. Harmless to send twice.',
        params: z.strictObject({ id: z.string().max(128) }),
        response: { 204: z.null(), '4xx': problem },
      },
    },
    async (request, reply) => {
      const kind = await asSpeaker(request, (speaker) => markHeard(context, speaker, request.params.id));
      if (kind !== null) app.meters.unasked.inc({ kind });
      return reply.code(204).send(null);
    },
  );
};
