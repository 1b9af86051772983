/** `GET /v1/feeds/…`: what other programs of a household subscribe to, by an address that holds its key. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { purchase } from '../../../shared/wire/kitchen.js';
import { problem } from '../../../shared/wire/problem.js';
import { sideDoors } from '../../../shared/wire/side-doors.js';
import { shoppingList } from '../../kitchen/index.js';
import { calendarOf, listLine, wallOf, type WallPart } from '../../schedule/index.js';
import type { Say } from '../../speech/index.js';
import type { Device } from '../../store/port.js';
import { today } from '../../terms/dates.js';
import type { Look } from '../../turn/index.js';
import type { Context } from '../context.js';
import { publicAddress } from '../home/public-address.js';
import { deviceOf } from '../identify.js';
import { pathNames, viewPurchase } from '../kitchen/views.js';
import { ProblemError } from '../problems.js';
import { asICalendar } from './calendar.js';
import { deviceBehind, feedKey, pathsOf, same } from './keys.js';
import { listInPrint } from './list-in-print.js';
import { wallPage } from './wall.js';

const tags = ['feeds'];
const params = z.strictObject({
  household: z.string().max(128),
  device: z.string().max(128),
  key: z.string().max(64).describe('From `GET /v1/feeds`. It opens these feeds and nothing else.'),
});

export const feeds: FastifyPluginAsyncZod<Context> = async (app, { store, households, config }) => {
  app.get(
    '/v1/feeds',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Addresses for a calendar, the list to buy, and another speech front',
        description: 'Made for the device that asks: they end when it is sent away.',
        response: { 200: sideDoors, '4xx': problem },
      },
    },
    async (request) => {
      const base = publicAddress(config, request);
      const { turns, ...read } = pathsOf(deviceOf(request));
      const whole = Object.fromEntries(
        Object.entries(read).map(([name, path]) => [name, base + path]),
      ) as typeof read;
      return { ...whole, turns: { ...turns, url: base + turns.url } };
    },
  );

  /** Whose address it is, and the kitchen. */
  const open = async (request: FastifyRequest): Promise<{ device: Device; around: Look }> => {
    const { key, ...behind } = request.params as z.infer<typeof params>;
    const device = await deviceBehind(store, behind);
    if (device === null || !same(key, feedKey(device)))
      throw new ProblemError('not-identified', { detail: 'No device of this household has that address.' });
    return { device, around: await households.look(device.householdId) };
  };

  /** The same; answers 304 by itself where nothing changed. */
  const opened = async (
    request: FastifyRequest,
    reply: FastifyReply,
  ): Promise<{ device: Device; around: Look } | null> => {
    const found = await open(request);
    const { kitchen, clock } = found.around;
    const etag = `"${kitchen.version}.${today(clock)}"`;
    void reply.header('etag', etag).header('cache-control', 'private, no-cache');
    if (request.headers['if-none-match'] !== etag) return found;
    await reply.code(304).send();
    return null;
  };

  /** No sentence: a heading, a line. */
  const inWords = (around: Look, phrase: Say): string =>
    households.say(around, { parts: [phrase] }).text.replace(/\.$/, '');

  app.get(
    '/v1/feeds/:household/:device/:key/calendar.ics',
    {
      config: { needs: 'public' },
      schema: {
        tags,
        summary: 'Last days by guidance, and reminders, as iCalendar',
        description:
          'RFC 5545. Reports what published guidance says, with its source; never that food is safe. Days of best quality are left out.',
        params,
        produces: ['text/calendar'],
      },
    },
    async (request, reply) => {
      const found = await opened(request, reply);
      if (found === null) return reply;
      const { device, around } = found;
      const { kitchen, clock } = around;
      const name = inWords(around, {
        kind: 'say',
        phrase: 'calendar-name',
        args: { household: kitchen.household.name },
      });
      const days = calendarOf(kitchen, clock, device.personId).map((entry) => ({
        entry,
        spoken: households.say(around, entry.answer),
        where: entry.placeId === null ? [] : pathNames(kitchen, entry.placeId),
      }));
      return reply
        .type('text/calendar; charset=utf-8')
        .send(asICalendar(name, kitchen.household.id, days, clock.now));
    },
  );

  app.get(
    '/v1/feeds/:household/:device/:key/list.txt',
    {
      config: { needs: 'public' },
      schema: { tags, summary: 'The list to buy as plain text', params, produces: ['text/plain'] },
    },
    async (request, reply) => {
      const found = await opened(request, reply);
      if (found === null) return reply;
      const { around } = found;
      const { kitchen } = around;
      const lines = shoppingList(kitchen).map((line) => ({
        section: line.section,
        words: inWords(around, listLine(kitchen, line)),
      }));
      return reply.type('text/plain; charset=utf-8').send(listInPrint(lines));
    },
  );

  app.get(
    '/v1/feeds/:household/:device/:key/list.json',
    {
      config: { needs: 'public' },
      schema: {
        tags,
        summary: 'The list to buy as JSON',
        params,
        response: { 200: z.array(purchase), '4xx': problem },
      },
    },
    async (request, reply) => {
      const found = await opened(request, reply);
      if (found === null) return reply as never;
      const { kitchen } = found.around;
      return shoppingList(kitchen).map((line) => viewPurchase(kitchen, line));
    },
  );

  app.get(
    '/v1/feeds/:household/:device/:key/wall',
    {
      config: { needs: 'public' },
      schema: {
        tags,
        summary: 'A page for a tablet on the wall',
        description:
          'Food whose last day by guidance is within three days, the list to buy, and what will ring, in the household’s language. No script.',
        params,
        querystring: z.strictObject({
          every: z.coerce
            .number()
            .int()
            .min(15)
            .max(3_600)
            .optional()
            .describe('Seconds after which it is read anew. Left out: never.'),
        }),
        produces: ['text/html'],
      },
    },
    async (request, reply) => {
      const { device, around } = await open(request);
      const { kitchen, clock } = around;
      const worded = (phrase: Say): string => households.say(around, { parts: [phrase] }).text;
      const part = ({ heading, lines, none }: WallPart) => ({
        heading: inWords(around, heading),
        lines: lines.map(worded),
        none: worded(none),
      });
      const { days, toBuy, reminders } = wallOf(kitchen, clock, device.personId);
      const say = (phrase: string, args?: Say['args']): string =>
        worded({ kind: 'say', phrase, ...(args ? { args } : {}) });
      const foot = [say('wall-in-doubt'), say('wall-as-of', { time: { kind: 'time', at: clock.now } })];
      const { name, locale } = kitchen.household;
      return reply
        .type('text/html; charset=utf-8')
        .header('cache-control', 'private, no-store')
        .send(wallPage(name, locale, [days, toBuy, reminders].map(part), foot, request.query.every ?? null));
    },
  );
};
