/** `/v1/me` and `/v1/devices`: who may speak here. */
import type { FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { device as deviceView, deviceChange, deviceEntry, me } from '../../../shared/wire/devices.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Device, DeviceDeed, DeviceRefusal } from '../../store/port.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { whoOf } from '../errors.js';
import { ProblemError } from '../problems.js';
import { asView } from './view.js';

const oneDevice = z.strictObject({ id: z.string().max(128) });

export const refusal = (why: DeviceRefusal): ProblemError => {
  switch (why) {
    case 'no-such-device':
      return new ProblemError('not-found');
    case 'not-an-owner':
      return new ProblemError('not-allowed');
    case 'sent-away':
      return new ProblemError('refused', { detail: 'That device was sent away. It can be let in anew.' });
    case 'last-owner':
      return new ProblemError('refused', { detail: 'One device must stay an owner.' });
    case 'let-in-already':
      return new ProblemError('code-not-valid');
  }
};

export const devices: FastifyPluginAsyncZod<Context> = async (app, { store, households, now }) => {
  /** @throws ProblemError when the store refuses. */
  const change = async (request: FastifyRequest, deed: DeviceDeed): Promise<Device> => {
    const asker = deviceOf(request);
    const done = await store.changeDevices(asker.householdId, {
      deeds: [deed],
      by: asker.id,
      at: now(),
      whence: request.ip,
    });
    if (done.outcome === 'refused') throw refusal(done.why);
    const device = done.devices[0]!;
    app.deviceChanged(device);
    request.log.info({ ...whoOf(request), about: device.id, deed: deed.kind }, 'device changed');
    return device;
  };

  // By voice: once the answer is on its way, for a device that was sent away is cut off.
  const stopHearing = households.onCommitted(({ devices: changed }) => {
    if (changed.length > 0) setImmediate(() => changed.forEach((device) => app.deviceChanged(device)));
  });
  app.addHook('onClose', async () => stopHearing());

  app.get(
    '/v1/me',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['devices'],
        summary: 'Which device and household this is',
        response: { 200: me, '4xx': problem },
      },
    },
    async (request) => {
      const device = deviceOf(request);
      const { kitchen } = await households.look(device.householdId);
      const { id, name, locale, timeZone } = kitchen.household;
      return {
        household: { id, name, locale, timeZone },
        device: { id: device.id, name: device.name, scope: device.scope },
      };
    },
  );

  app.get(
    '/v1/devices',
    {
      config: { needs: 'own' },
      schema: {
        tags: ['devices'],
        summary: 'All devices of the household, revoked ones too',
        response: { 200: z.array(deviceView), '4xx': problem },
      },
    },
    async (request) => {
      const asker = deviceOf(request);
      return (await store.devices(asker.householdId)).map((device) => asView(device, asker));
    },
  );

  app.get(
    '/v1/devices/journal',
    {
      config: { needs: 'own' },
      schema: {
        tags: ['devices'],
        summary: 'Who let devices in, renamed them or sent them away, newest first',
        querystring: z.strictObject({ limit: z.coerce.number().int().min(1).max(200).default(50) }),
        response: { 200: z.array(deviceEntry), '4xx': problem },
      },
    },
    async (request) => store.deviceJournal(deviceOf(request).householdId, request.query.limit),
  );

  app.patch(
    '/v1/devices/:id',
    {
      config: { needs: 'own' },
      schema: {
        tags: ['devices'],
        summary: 'Rename a device, or change what it may do',
        params: oneDevice,
        body: deviceChange,
        response: { 200: deviceView, '4xx': problem },
      },
    },
    async (request) => {
      const asker = deviceOf(request);
      const { name, scope, personId } = request.body;
      if (personId !== null && personId !== undefined) {
        const { kitchen } = await households.look(asker.householdId);
        if (!kitchen.people.has(personId))
          throw new ProblemError('not-found', { detail: 'No such person here.' });
      }
      const { id } = request.params;
      return asView(await change(request, { kind: 'change', id, name, scope, personId }), asker);
    },
  );

  app.delete(
    '/v1/devices/:id',
    {
      config: { needs: 'own' },
      schema: {
        tags: ['devices'],
        summary: 'Revoke a device',
        description:
          'Its token stops working at once on this server and within a second on others. It never works again.',
        params: oneDevice,
        response: { 200: deviceView, '4xx': problem },
      },
    },
    async (request) =>
      asView(await change(request, { kind: 'send-away', id: request.params.id }), deviceOf(request)),
  );
};
