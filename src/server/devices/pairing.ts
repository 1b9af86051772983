/** `POST /v1/pairings` (a new device asks) and `POST /v1/pairings/confirm` (an owner lets it in). */
import { randomUUID } from 'node:crypto';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import {
  device as deviceView,
  pairingConfirm,
  pairingRequest,
  pairingStarted,
} from '../../../shared/wire/devices.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Device } from '../../store/port.js';
import type { Context } from '../context.js';
import { deviceOf } from '../identify.js';
import { ProblemError } from '../problems.js';
import { CODE_LIVES_MS } from '../../turn/index.js';
import { createPairingDesk } from './pairing-desk.js';
import { whoOf } from '../errors.js';
import { refusal } from './devices.js';
import { asView } from './view.js';

/** "1 2 3 4, 5 6 7 8": how a synthesiser says digits one by one. */
const spoken = (code: string): string =>
  `${[...code.slice(0, 4)].join(' ')}, ${[...code.slice(4)].join(' ')}`;

export const pairing: FastifyPluginAsyncZod<Context> = async (app, { store, households, now }) => {
  const desk = createPairingDesk(store, now);

  app.post(
    '/v1/pairings',
    {
      config: { needs: 'public' },
      bodyLimit: 4_096,
      schema: {
        tags: ['devices'],
        summary: 'A new device asks to be let in',
        description:
          'Answers with a code to say or show and a token that works once an owner has confirmed the code. The code lasts ten minutes. Ask `GET /v1/me` with the token until it answers.',
        body: pairingRequest,
        response: { 201: pairingStarted, '4xx': problem },
      },
    },
    async (request, reply) => {
      const started = await desk.start(request.body.name, request.ip);
      if (started === 'share-full') {
        throw new ProblemError('too-many-requests', {
          detail: 'Too many devices from your address wait to be let in.',
          retryAfter: CODE_LIVES_MS / 1000,
        });
      }
      if (started === 'full') {
        throw new ProblemError('overloaded', {
          detail: 'Too many devices wait to be let in.',
          retryAfter: CODE_LIVES_MS / 1000,
        });
      }
      const { code, token, expiresAt } = started;
      return reply.code(201).send({ code, spoken: spoken(code), token, expiresAt });
    },
  );

  app.post(
    '/v1/pairings/confirm',
    {
      config: { needs: 'own' },
      bodyLimit: 4_096,
      schema: {
        tags: ['devices'],
        summary: 'An owner lets a waiting device in',
        body: pairingConfirm,
        response: { 201: deviceView, '4xx': problem },
      },
    },
    async (request, reply) => {
      const owner = deviceOf(request);
      const { code, scope, personId } = request.body;
      if (personId !== null) {
        const { kitchen } = await households.look(owner.householdId);
        if (!kitchen.people.has(personId))
          throw new ProblemError('not-found', { detail: 'No such person here.' });
      }
      const waiting = await desk.take(code, owner.householdId);
      if (waiting === 'too-many') {
        throw new ProblemError('too-many-requests', {
          detail: 'Too many wrong codes.',
          retryAfter: CODE_LIVES_MS / 1000,
        });
      }
      if (waiting === 'wrong') throw new ProblemError('code-not-valid');
      const device: Device = {
        id: randomUUID(),
        householdId: owner.householdId,
        name: waiting.name,
        tokenHash: waiting.tokenHash,
        scope,
        personId,
        pairedAt: now(),
        lastSeenAt: null,
        revokedAt: null,
      };
      const done = await store.changeDevices(owner.householdId, {
        deeds: [{ kind: 'let-in', device }],
        by: owner.id,
        at: now(),
        whence: request.ip,
      });
      if (done.outcome === 'refused') throw refusal(done.why);
      app.deviceChanged(device);
      request.log.info({ ...whoOf(request), about: device.id, scope }, 'device paired');
      return reply.code(201).send(asView(device, owner));
    },
  );
};
