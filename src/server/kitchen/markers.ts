/** `/v1/kitchen/markers`: new ones, how they feel and how they are looked after. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { changeDone, markerChange, newMarker } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { addMarker, markerNote, type MarkerFacts } from '../../kitchen/index.js';
import type { Touch } from '../../terms/touch.js';
import type { Context } from '../context.js';
import { makeChange } from './make-change.js';

const tags = ['kitchen'];
const response = { 200: changeDone, '4xx': problem };

/** Without the parts that were left out. */
const told = (touch: z.infer<typeof newMarker>['touch']): Touch =>
  Object.fromEntries(Object.entries(touch).filter(([, value]) => value !== undefined));

export const markers: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.post(
    '/v1/kitchen/markers',
    {
      config: { needs: 'help' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'A new marker, in the spare box',
        description: 'Refused where a hand would take it for another, unless `anyway`.',
        body: newMarker,
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { touch, care, anyway } = request.body;
        return addMarker(around, { touch: told(touch), care }, { anyway });
      }),
  );

  app.patch(
    '/v1/kitchen/markers/:id',
    {
      config: { needs: 'help' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'How a marker feels, and how it is looked after',
        description: 'Parts left out stay as they are.',
        params: z.strictObject({ id: z.string().max(128) }),
        body: markerChange,
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { touch, care, anyway } = request.body;
        const facts: MarkerFacts = {
          ...(touch === undefined ? {} : { feel: told(touch) }),
          ...(care === undefined ? {} : { care }),
        };
        return markerNote(around, request.params.id, facts, { anyway });
      }),
  );
};
