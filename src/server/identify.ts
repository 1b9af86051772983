/**
 * Who asks: a device by its bearer token, or a page by its session cookie. Routes say what
 * they need with `config: { needs: 'speak' | 'help' | 'own' }`; a route that says nothing is
 * closed to everybody, so that a forgotten line never opens a door.
 */
import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { LRUCache } from 'lru-cache';
import type { Device, Store } from '../store/port.js';
import type { TurnSpeaker } from '../turn/index.js';
import { ProblemError } from './problems.js';
import { hashOf, looksLikeToken } from './tokens.js';
import { SESSION_COOKIE } from './session-cookie.js';

export type Scope = Device['scope'];
const REACH: Record<Scope, number> = { speak: 1, help: 2, own: 3 };

declare module 'fastify' {
  interface FastifyContextConfig {
    /** `public`: no device needed. */
    needs?: Scope | 'public';
  }
  interface FastifyRequest {
    device: Device | null;
    /** True when a cookie, which browsers send by themselves, did the identifying. */
    byCookie: boolean;
  }
  interface FastifyInstance {
    /** A device was changed or revoked: what is remembered of it is dropped, so that it holds at once here. */
    deviceChanged(device: Device): void;
    /** Called with the device as it is after a change. */
    onDeviceChanged(hear: (device: Device) => void): void;
    /** False once the device was revoked. For conversations that last longer than one request. */
    stillValid(device: Device): Promise<boolean>;
  }
}

/** Other servers learn of a revoked device when this has passed. */
const REMEMBER_MS = 5_000;

const bearer = (request: FastifyRequest): string | null => {
  const header = request.headers.authorization;
  return header !== undefined && /^bearer /i.test(header) ? header.slice(7).trim() : null;
};

export const identify = fp<{ store: Store }>(async (app, { store }) => {
  const known = new LRUCache<string, Device>({ max: 20_000, ttl: REMEMBER_MS });
  app.decorateRequest('device', null);
  app.decorateRequest('byCookie', false);
  const listeners: ((device: Device) => void)[] = [];
  app.decorate('onDeviceChanged', (hear: (device: Device) => void) => void listeners.push(hear));
  app.decorate('deviceChanged', (device: Device) => {
    known.delete(device.tokenHash);
    for (const hear of listeners) hear(device);
  });

  const byHash = async (hash: string): Promise<Device | null> => {
    const remembered = known.get(hash);
    if (remembered) return remembered;
    const device = await store.deviceByTokenHash(hash);
    if (!device || device.revokedAt !== null) return null;
    known.set(hash, device);
    return device;
  };
  app.decorate('stillValid', async (device: Device) => (await byHash(device.tokenHash)) !== null);

  const byToken = async (token: string): Promise<Device | null> =>
    looksLikeToken(token) ? byHash(hashOf(token)) : null;

  app.addHook('onRequest', async (request) => {
    const needs = request.routeOptions.config.needs;
    if (needs === 'public' || request.is404) return;
    const token = bearer(request);
    const cookie = token === null ? (request.cookies[SESSION_COOKIE] ?? null) : null;
    const device = await byToken(token ?? cookie ?? '');
    if (!device) throw new ProblemError('not-identified');
    request.device = device;
    request.byCookie = cookie !== null;
    if (needs === undefined || REACH[device.scope] < REACH[needs]) throw new ProblemError('not-allowed');
  });
});

/** The device of an identified request. */
export const deviceOf = (request: FastifyRequest): Device => {
  if (!request.device) throw new ProblemError('not-identified');
  return request.device;
};

export const speakerOf = (device: Device): TurnSpeaker => ({
  householdId: device.householdId,
  deviceId: device.id,
  personId: device.personId,
  owner: device.scope === 'own',
});
