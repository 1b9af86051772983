/** `/v1/kitchen/people`: who eats here, and what they must not eat. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { newPerson, person, personChange } from '../../../shared/wire/home.js';
import { changeDone } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { addPerson, amendPerson } from '../../kitchen/index.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { makeChange } from '../kitchen/make-change.js';
import { viewPerson } from '../kitchen/views.js';

const tags = ['household'];
const id = z.strictObject({ id: z.string().max(128) });

/** A whole list as what is added and what is taken away. */
const added = (old: readonly string[], wanted: readonly string[] | undefined): readonly string[] =>
  (wanted ?? []).filter((entry) => !old.includes(entry));
const removed = (old: readonly string[], wanted: readonly string[] | undefined): readonly string[] =>
  wanted === undefined ? [] : old.filter((entry) => !wanted.includes(entry));

const known = <T extends object>(told: T): Partial<{ [K in keyof T]: Exclude<T[K], undefined> }> =>
  Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined)) as Partial<{
    [K in keyof T]: Exclude<T[K], undefined>;
  }>;

export const people: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.get(
    '/v1/kitchen/people',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'People of the household',
        response: { 200: z.array(person), '4xx': problem },
      },
    },
    async (request) => {
      const { kitchen } = await context.households.look(deviceOf(request).householdId);
      return [...kitchen.people.values()].map(viewPerson);
    },
  );

  app.post(
    '/v1/kitchen/people',
    {
      config: { needs: 'own' },
      bodyLimit: 16 * 1024,
      schema: {
        tags,
        summary: 'A new person',
        body: newPerson,
        response: { 200: changeDone, '4xx': problem },
      },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { name, comesOn, ...rest } = request.body;
        return addPerson(around, { name, ...known(rest), ...(comesOn ? { comesOn } : {}) });
      }),
  );

  app.patch(
    '/v1/kitchen/people/:id',
    {
      config: { needs: 'own' },
      bodyLimit: 16 * 1024,
      schema: {
        tags,
        summary: 'Change what is recorded of a person',
        params: id,
        body: personChange,
        response: { 200: changeDone, '4xx': problem },
      },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { allergens, diets, needs, ...rest } = request.body;
        const before = around.kitchen.people.get(request.params.id);
        return amendPerson(around, request.params.id, {
          ...known(rest),
          addAllergens: added(before?.allergens ?? [], allergens),
          removeAllergens: removed(before?.allergens ?? [], allergens),
          addDiets: added(before?.diets ?? [], diets),
          removeDiets: removed(before?.diets ?? [], diets),
          addNeeds: added(before?.needs ?? [], needs),
          removeNeeds: removed(before?.needs ?? [], needs),
        });
      }),
  );
};
