/** `/v1/notices`: where this device's browser takes notices while no page of it is open (W3C Push API). */
import { isIP } from 'node:net';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { noticeAddress, noticeState } from '../../../shared/wire/devices.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { ProblemError } from '../problems.js';

/** Names that lead into a home or a machine, never to a push service (RFC 6761, 6762, 8375, 9476). */
const AT_HOME = /(?:^|\.)(?:localhost|local|internal|lan|home|arpa|alt|onion|invalid|test)$/;

/**
 * True for an address that could be a push service's. This service posts to it, so a device must not be able to
 * point it at something in the house.
 */
export const isOutside = (endpoint: string): boolean => {
  const url = URL.canParse(endpoint) ? new URL(endpoint) : null;
  if (
    url === null ||
    url.protocol !== 'https:' ||
    url.port !== '' ||
    url.username !== '' ||
    url.password !== ''
  )
    return false;
  const host = url.hostname.toLowerCase().replace(/\.$/, '');
  return host.includes('.') && !host.startsWith('[') && isIP(host) === 0 && !AT_HOME.test(host);
};

const tags = ['devices'];

export const notices: FastifyPluginAsyncZod<Context> = async (app, { store, config }) => {
  const key = config.NOTICE_PUBLIC_KEY ?? null;

  app.get(
    '/v1/notices',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'Whether this device takes notices',
        description: 'With the service’s public key, which a browser needs to ask for an address.',
        response: { 200: noticeState, '4xx': problem },
      },
    },
    async (request) => {
      const { householdId, id } = deviceOf(request);
      const all = key === null ? [] : await store.noticeAddresses(householdId);
      return { key, here: all.some(({ deviceId }) => deviceId === id) };
    },
  );

  app.put(
    '/v1/notices',
    {
      config: { needs: 'speak' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'Timers, reminders and the summary go to this device’s browser too',
        body: noticeAddress,
        response: { 204: z.null(), '4xx': problem },
      },
    },
    async (request, reply) => {
      if (key === null) throw new ProblemError('refused', { detail: 'This service sends no notices.' });
      if (!isOutside(request.body.endpoint))
        throw new ProblemError('refused', { detail: 'That is no address of a push service.' });
      const { householdId, id } = deviceOf(request);
      await store.keepNoticeAddress(householdId, { deviceId: id, ...request.body });
      return reply.code(204).send(null);
    },
  );

  app.delete(
    '/v1/notices',
    {
      config: { needs: 'speak' },
      schema: {
        tags,
        summary: 'They go to this device’s browser no more',
        response: { 204: z.null(), '4xx': problem },
      },
    },
    async (request, reply) => {
      const { householdId, id } = deviceOf(request);
      await store.dropNoticeAddress(householdId, id);
      return reply.code(204).send(null);
    },
  );
};
