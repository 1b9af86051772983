/** `GET /v1/kitchen/…`: the kitchen for pages. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { item, journalRow, marker, place, purchase, useFirstRow } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { itemsAt, livingItems, placesBelow, placesIn, shoppingList } from '../../kitchen/index.js';
import { rankUseFirst } from '../../safety/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { ProblemError } from '../problems.js';
import { etagOf, pathNames, viewEntry, viewItem, viewMarker, viewPlace, viewPurchase } from './views.js';

const tags = ['kitchen'];
const id = z.strictObject({ id: z.string().max(128) });

export const kitchenReading: FastifyPluginAsyncZod<Context> = async (app, { households }) => {
  app.get(
    '/v1/kitchen/places',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Places, each appliance followed by what is in it, top first',
        response: { 200: z.array(place), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      return placesIn(kitchen, null)
        .flatMap((whole) => placesBelow(kitchen, whole.id))
        .map((one) => viewPlace(kitchen, one));
    },
  );

  app.get(
    '/v1/kitchen/items',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Items, oldest record first',
        querystring: z.strictObject({
          place: z.string().max(128).optional().describe('Only in this place or within it.'),
          gone: z.enum(['true', 'false']).default('false').describe('Also what was used up.'),
        }),
        response: { 200: z.array(item), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      const { place: placeId, gone } = request.query;
      if (placeId !== undefined) {
        if (!kitchen.places.has(placeId)) throw new ProblemError('not-found');
        return itemsAt(kitchen, placeId).map((one) => viewItem(kitchen, one));
      }
      const items = gone === 'true' ? [...kitchen.items.values()] : livingItems(kitchen);
      return items.map((one) => viewItem(kitchen, one));
    },
  );

  app.get(
    '/v1/kitchen/items/:id',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'One item, used up or not',
        description: 'The ETag header names this state of it, for `If-Match` when changing it.',
        params: id,
        response: { 200: item, '4xx': problem },
      },
    },
    async (request, reply) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      const found = kitchen.items.get(request.params.id);
      if (!found) throw new ProblemError('not-found');
      void reply.header('etag', etagOf(found));
      return viewItem(kitchen, found);
    },
  );

  app.get(
    '/v1/kitchen/markers',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Markers and what they stand on',
        response: { 200: z.array(marker), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      return [...kitchen.markers.values()].map((one) => viewMarker(kitchen, one));
    },
  );

  app.get(
    '/v1/kitchen/list',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'The list to buy, by section',
        response: { 200: z.array(purchase), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await households.look(deviceOf(request).householdId);
      return shoppingList(kitchen).map((line) => viewPurchase(kitchen, line));
    },
  );

  app.get(
    '/v1/kitchen/use-first',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'What to use first, most urgent first',
        description: 'Says what published guidance says of each item’s age. It never says that food is safe.',
        response: { 200: z.array(useFirstRow), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen, clock } = await households.look(deviceOf(request).householdId);
      return rankUseFirst(kitchen, clock).map(({ item: one, assessment }) => ({
        itemId: one.id,
        name: one.name,
        placePath: pathNames(kitchen, one.placeId),
        state: assessment.verdict,
        daysLeft: assessment.daysLeft,
        says: assessment.row
          ? [assessment.row.source.agency, assessment.row.source.document, assessment.row.source.year]
              .filter((part) => part !== null)
              .join(', ')
          : null,
      }));
    },
  );

  app.get(
    '/v1/kitchen/journal',
    {
      config: { needs: 'help' },
      schema: {
        tags,
        summary: 'The newest changes, newest first',
        querystring: z.strictObject({ limit: z.coerce.number().int().min(1).max(200).default(50) }),
        response: { 200: z.array(journalRow), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen, journal } = await households.look(deviceOf(request).householdId);
      return journal.slice(0, request.query.limit).map((entry) => viewEntry(kitchen, entry));
    },
  );
};
