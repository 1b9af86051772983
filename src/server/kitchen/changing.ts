/** The few changes a page can make, for sighted helpers: each is journalled and can be undone. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { changeDone, itemChange, purchaseRequest, type ItemChange } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import {
  amend,
  buyAdd,
  buyRemove,
  finish,
  lastUndoable,
  move,
  together,
  undo,
  type Doing,
  type Facts,
  type Item,
  type Result,
} from '../../kitchen/index.js';
import type { Context } from '../context.js';
import { ProblemError } from '../problems.js';
import { makeChange } from './make-change.js';
import { etagOf } from './views.js';

const tags = ['kitchen'];
const id = z.strictObject({ id: z.string().max(128) });
const response = { 200: changeDone, '4xx': problem };
const retry = 'Send an `Idempotency-Key` header to be able to send it again without doing it twice.';

/** A whole list as what is added and what is taken away. */
const edit = (old: readonly string[], wanted: readonly string[] | undefined) =>
  wanted === undefined
    ? undefined
    : {
        add: wanted.filter((entry) => !old.includes(entry)),
        remove: old.filter((entry) => !wanted.includes(entry)),
      };

const factsOf = (item: Item, told: ItemChange): Facts => {
  const facts: Record<keyof Facts, unknown> | object = {
    name: told.name,
    amount: told.amount,
    touch: told.touch,
    // A spot belongs to its place: with a new place, moving sets it.
    spot: told.placeId === undefined ? told.spot : undefined,
    dates: told.dates,
    maker: told.maker,
    diets: edit(item.diets, told.diets),
    contains: edit(item.contains, told.contains),
    freeFrom: edit(item.freeFrom, told.freeFrom),
    cautions: edit(item.cautions, told.cautions),
    notes: edit(item.notes, told.notes),
  };
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
};

const changeItem = (doing: Doing, item: Item, told: ItemChange): Result => {
  const facts = factsOf(item, told);
  const { placeId, spot } = told;
  const steps: ((now: Doing) => Result)[] = [];
  if (placeId !== undefined && (placeId !== item.placeId || (spot !== undefined && spot !== item.spot))) {
    steps.push((now) => move(now, item.id, { placeId, spot: spot ?? null }));
  }
  if (Object.keys(facts).length > 0) steps.push((now) => amend(now, item.id, facts));
  return together(doing, steps);
};

export const kitchenChanging: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.patch(
    '/v1/kitchen/items/:id',
    {
      config: { needs: 'help' },
      bodyLimit: 64 * 1024,
      schema: {
        tags,
        summary: 'Correct what is recorded of an item',
        description: `Parts left out stay as they are. With \`If-Match\`, refused when somebody changed the item since. ${retry}`,
        params: id,
        body: itemChange,
        response,
      },
    },
    async (request) => {
      const match = request.headers['if-match'];
      return makeChange(context, request, (around) => {
        const item = around.kitchen.items.get(request.params.id);
        if (!item) return { refused: 'unknown-item' };
        if (match !== undefined && match !== etagOf(item)) throw new ProblemError('changed-meanwhile');
        return changeItem(around, item, request.body);
      });
    },
  );

  app.post(
    '/v1/kitchen/items/:id/finish',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'An item is used up, thrown out or given away',
        description: `Frees its marker. ${retry}`,
        params: id,
        body: z.strictObject({ how: z.enum(['used', 'thrown out', 'given away']).default('used') }).nullish(),
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) => finish(around, request.params.id, request.body?.how)),
  );

  app.post(
    '/v1/kitchen/undo',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Take a change back: the newest, or the one named',
        description: `Refused when something it changed was changed again since. ${retry}`,
        body: z
          .strictObject({
            entry: z.string().max(128).optional(),
            version: z.int().min(0).optional().describe('The change that made this version.'),
          })
          .nullish(),
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) => {
        const { entry: wanted, version } = request.body ?? {};
        const entry =
          wanted === undefined && version === undefined
            ? lastUndoable(around.journal)
            : around.journal.find((one) => one.id === wanted || one.version === version);
        return entry ? undo(around, entry) : { refused: 'nothing-to-undo' };
      }),
  );

  app.post(
    '/v1/kitchen/list',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Put something on the list to buy',
        description: `A line for the same food is changed where something new is said of it. ${retry}`,
        body: purchaseRequest,
        response,
      },
    },
    async (request) => makeChange(context, request, (around) => buyAdd(around, request.body)),
  );

  app.delete(
    '/v1/kitchen/list/:id',
    {
      config: { needs: 'speak' },
      schema: { tags, summary: 'Take a line off the list to buy', description: retry, params: id, response },
    },
    async (request) => makeChange(context, request, (around) => buyRemove(around, [request.params.id])),
  );
};
