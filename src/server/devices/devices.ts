/** `/v1/me` and `/v1/devices`: who may speak here. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { device as deviceView, deviceChange, me } from '../../../shared/wire/devices.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Device } from '../../store/port.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { ProblemError } from '../problems.js';
import { asView } from './view.js';

const oneDevice = z.strictObject({ id: z.string().max(128) });

export const devices: FastifyPluginAsyncZod<Context> = async (app, { store, households, now }) => {
  const find = async (asker: Device, id: string): Promise<Device> => {
    const found = (await store.devices(asker.householdId)).find((device) => device.id === id);
    if (!found) throw new ProblemError('not-found');
    return found;
  };

  /** A household whose last owner is gone could never let anybody in again. */
  const keepAnOwner = async (asker: Device, changed: Device): Promise<void> => {
    const others = (await store.devices(asker.householdId)).filter((device) => device.id !== changed.id);
    const owners = [...others, changed].filter(
      (device) => device.scope === 'own' && device.revokedAt === null,
    );
    if (owners.length === 0) throw new ProblemError('refused', { detail: 'One device must stay an owner.' });
  };

  const save = async (asker: Device, after: Device): Promise<Device> => {
    await keepAnOwner(asker, after);
    await store.updateDevice(after);
    app.deviceChanged(after);
    return after;
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
      const before = await find(asker, request.params.id);
      const { name = before.name, scope = before.scope, personId = before.personId } = request.body;
      if (personId !== null && personId !== before.personId) {
        const { kitchen } = await households.look(asker.householdId);
        if (!kitchen.people.has(personId))
          throw new ProblemError('not-found', { detail: 'No such person here.' });
      }
      return asView(await save(asker, { ...before, name, scope, personId }), asker);
    },
  );

  app.delete(
    '/v1/devices/:id',
    {
      config: { needs: 'own' },
      schema: {
        tags: ['devices'],
        summary: 'Revoke a device',
        description: 'Its token stops working at once on this server and within five seconds on others.',
        params: oneDevice,
        response: { 200: deviceView, '4xx': problem },
      },
    },
    async (request) => {
      const asker = deviceOf(request);
      const before = await find(asker, request.params.id);
      const after = { ...before, revokedAt: before.revokedAt ?? now() };
      request.log.info({ deviceId: before.id }, 'device revoked');
      return asView(await save(asker, after), asker);
    },
  );
};
