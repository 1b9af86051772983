/** `/v1/household` and new places: how a household is set up. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { householdChange, householdView, newPlace } from '../../../shared/wire/home.js';
import { changeDone } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { buildPlaces, setHousehold, type Settings } from '../../kitchen/index.js';
import { allergensOf } from '../../safety/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { makeChange } from '../kitchen/make-change.js';
import { isLocal, publicAddress } from './public-address.js';

const tags = ['household'];

export const setUp: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.get(
    '/v1/household',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'How this household is set up',
        response: { 200: householdView, '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await context.households.look(deviceOf(request).householdId);
      const { dotMeanings, ...household } = kitchen.household;
      const { id, name, timeZone, locale, region, measures, microwaveWatts, summaryAt, quietHours } =
        household;
      const address = publicAddress(context.config, request);
      return {
        id,
        name,
        timeZone,
        locale,
        region,
        measures,
        microwaveWatts,
        summaryAt,
        quietHours,
        meanings: Object.entries(dotMeanings).map(([count, meaning]) => ({ count: Number(count), meaning })),
        allergens: allergensOf(region).map((allergen) => allergen.name),
        address,
        addressIsLocal: isLocal(address),
      };
    },
  );

  app.patch(
    '/v1/household',
    {
      config: { needs: 'own' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Change how it is set up',
        body: householdChange,
        response: { 200: changeDone, '4xx': problem },
      },
    },
    async (request) =>
      makeChange(context, request, (around) =>
        setHousehold(
          around,
          Object.fromEntries(
            Object.entries(request.body).filter(([, value]) => value !== undefined),
          ) as Settings,
        ),
      ),
  );

  app.post(
    '/v1/kitchen/places',
    {
      config: { needs: 'help' },
      bodyLimit: 4_096,
      schema: { tags, summary: 'A new place', body: newPlace, response: { 200: changeDone, '4xx': problem } },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { name, kind, parentId } = request.body;
        return buildPlaces(around, { kind, parentId, names: [name] });
      }),
  );
};
