/**
 * Invitations: an owner makes a link that lets one device in, once, within an hour, as what the owner chose.
 * The link holds what it grants and a secret; the store holds its SHA-256 among the devices that wait
 * (`pairing`), so that only a link as it was made, and not taken yet, lets anybody in: whoever changes what it
 * grants changes its hash. Whether its maker may still invite is decided when it is taken.
 */
import { randomBytes, randomUUID } from 'node:crypto';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import {
  invitationAccepted,
  invitationGrant,
  invitationMade,
  invitationRequest,
  invitationText,
} from '../../../shared/wire/devices.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Device } from '../../store/port.js';
import type { Context } from '../context.js';
import { whoOf } from '../errors.js';
import { isLocal, publicAddress } from '../home/public-address.js';
import { deviceOf } from '../identify.js';
import { ProblemError } from '../problems.js';
import { hashOf, newToken } from '../tokens.js';
import { asView } from './view.js';

/** Long enough to send it to somebody and for them to come in, short enough to be forgotten safely. */
const INVITATION_LIVES_MS = 60 * 60_000;
const OPEN_AT_MOST = 10_000;
const OPEN_OF_ONE_HOUSEHOLD = 20;

type Grant = z.infer<typeof invitationGrant>;

const seal = (grant: Grant): string =>
  `${Buffer.from(JSON.stringify(grant)).toString('base64url')}.${randomBytes(24).toString('base64url')}`;

/** What it says it grants; only its hash in the store makes that true. */
const open = (text: string): Grant | null => {
  try {
    const json: unknown = JSON.parse(Buffer.from(text.split('.')[0] ?? '', 'base64url').toString('utf8'));
    return invitationGrant.safeParse(json).data ?? null;
  } catch {
    return null;
  }
};

const tags = ['devices'];

export const invitations: FastifyPluginAsyncZod<Context> = async (
  app,
  { store, households, config, now },
) => {
  app.post(
    '/v1/invitations',
    {
      config: { needs: 'own' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'An owner invites a device',
        description:
          'Answers with an address to open on the new device, as a link or a square code. It works once, within an hour.',
        body: invitationRequest,
        response: { 201: invitationMade, '4xx': problem },
      },
    },
    async (request, reply) => {
      const owner = deviceOf(request);
      const { name, scope, personId } = request.body;
      const { kitchen } = await households.look(owner.householdId);
      if (personId !== null && !kitchen.people.has(personId))
        throw new ProblemError('not-found', { detail: 'No such person here.' });
      const { id, name: householdName } = kitchen.household;
      const invitation = seal({
        household: id,
        householdName: householdName.slice(0, 80),
        name,
        scope,
        personId,
        by: owner.id,
      });
      const at = now();
      const expiresAt = new Date(Date.parse(at) + INVITATION_LIVES_MS).toISOString();
      const added = await store.addPairing(
        // Nobody holds the token of this hash: a device gets its own when it comes in.
        { codeHash: hashOf(invitation), name, tokenHash: hashOf(newToken()), expiresAt },
        {
          now: at,
          atMost: OPEN_AT_MOST,
          from: { address: `household ${id}`, atMost: OPEN_OF_ONE_HOUSEHOLD },
        },
      );
      if (added !== 'waiting')
        throw new ProblemError('too-many-requests', {
          detail: 'Too many invitations are open.',
          retryAfter: INVITATION_LIVES_MS / 1000,
        });
      const service = publicAddress(config, request);
      request.log.info({ ...whoOf(request), scope }, 'invitation made');
      return reply.code(201).send({
        invitation,
        address: `${service}/#join=${invitation}`,
        addressIsLocal: isLocal(service),
        expiresAt,
      });
    },
  );

  app.post(
    '/v1/invitations/withdraw',
    {
      config: { needs: 'own' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'An invitation is taken back',
        description: 'Harmless to send twice.',
        body: z.strictObject({ invitation: invitationText }),
        response: { 204: z.null(), '4xx': problem },
      },
    },
    async (request, reply) => {
      const { invitation } = request.body;
      if (open(invitation)?.household === deviceOf(request).householdId)
        await store.takePairing(hashOf(invitation), now());
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/v1/invitations/accept',
    {
      config: { needs: 'public' },
      bodyLimit: 4_096,
      schema: {
        tags,
        summary: 'A new device comes in with an invitation',
        description: 'Answers with the key of the new device. Keep it secret.',
        body: z.strictObject({ invitation: invitationText }),
        response: { 201: invitationAccepted, '4xx': problem },
      },
    },
    async (request, reply) => {
      const { invitation } = request.body;
      const grant = open(invitation);
      const taken = grant === null ? null : await store.takePairing(hashOf(invitation), now());
      if (grant === null || taken === null) throw new ProblemError('invitation-not-valid');
      const { kitchen } = await households.look(grant.household);
      const token = newToken();
      const device: Device = {
        id: randomUUID(),
        householdId: grant.household,
        name: grant.name,
        tokenHash: hashOf(token),
        scope: grant.scope,
        personId: grant.personId !== null && kitchen.people.has(grant.personId) ? grant.personId : null,
        pairedAt: now(),
        lastSeenAt: null,
        revokedAt: null,
      };
      const done = await store.changeDevices(grant.household, {
        deeds: [{ kind: 'let-in', device }],
        by: grant.by,
        at: now(),
        whence: request.ip,
      });
      // Who made it is no owner any more.
      if (done.outcome === 'refused') throw new ProblemError('invitation-not-valid');
      app.deviceChanged(device);
      request.log.info(
        { about: device.id, household: grant.household, scope: grant.scope },
        'invited device came in',
      );
      return reply.code(201).send({ token, device: asView(device, device) });
    },
  );
};
