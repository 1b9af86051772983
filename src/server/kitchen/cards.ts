/**
 * What a card of the board does with one press: put away, take some, move. Each is journalled like a spoken
 * change and can be undone. What a device may say it may press, so these need no more than speaking does.
 */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { newItem, takeSome } from '../../../shared/wire/board.js';
import { changeDone } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { foodKey, move, putAway, setLeft, take, type Doing, type Result } from '../../kitchen/index.js';
import type { Context } from '../context.js';
import { makeChange } from './make-change.js';

const tags = ['kitchen'];
const id = z.strictObject({ id: z.string().max(128) });
const response = { 200: changeDone, '4xx': problem };
const retry = 'Send an `Idempotency-Key` header to be able to send it again without doing it twice.';

/** Lines of the list to buy that name this food: putting it away fulfils them. */
const fulfilled = ({ kitchen }: Doing, name: string): string[] =>
  [...kitchen.purchases.values()]
    .filter((line) => foodKey(line.name) === foodKey(name))
    .map((line) => line.id);

const putAwayFrom = (doing: Doing, told: z.output<typeof newItem>): Result =>
  putAway(doing, {
    name: told.name,
    dates: told.dates,
    maker: told.maker,
    contains: told.contains,
    shares: told.shares.map(({ count, unit, placeId, markerId }) => ({
      amount: count === null ? null : { value: count, unit },
      placeId,
      markerId,
    })),
    purchaseIds: fulfilled(doing, told.name),
  });

const takeFrom = (doing: Doing, itemId: string, told: z.output<typeof takeSome>): Result => {
  if ('fraction' in told) return take(doing, itemId, told);
  const unit = doing.kitchen.items.get(itemId)?.amount?.unit ?? 'piece';
  return 'left' in told
    ? setLeft(doing, itemId, { value: told.left, unit })
    : take(doing, itemId, { value: told.count, unit });
};

export const kitchenCards: FastifyPluginAsyncZod<Context> = async (app, context) => {
  app.post(
    '/v1/kitchen/items',
    {
      config: { needs: 'speak' },
      bodyLimit: 16 * 1024,
      schema: {
        tags,
        summary: 'Food is put away, in one place or shared out over several',
        description: `A line of the list to buy that names it goes. ${retry}`,
        body: newItem,
        response,
      },
    },
    async (request) => makeChange(context, request, (around) => putAwayFrom(around, request.body)),
  );

  app.post(
    '/v1/kitchen/items/:id/take',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Some of an item is taken, or so much is left',
        description: `Taking all of it uses it up. ${retry}`,
        params: id,
        body: takeSome,
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) => takeFrom(around, request.params.id, request.body)),
  );

  app.post(
    '/v1/kitchen/items/:id/move',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'An item is put somewhere else',
        description: retry,
        params: id,
        body: z.strictObject({ placeId: z.string().max(128) }),
        response,
      },
    },
    async (request) =>
      makeChange(context, request, (around) =>
        move(around, request.params.id, { placeId: request.body.placeId, spot: null }),
      ),
  );
};
