/**
 * Who asks: a device by its bearer token, or a page by its session cookie. Routes say what
 * they need with `config: { needs: 'speak' | 'help' | 'own' }`; a route that says nothing is
 * closed to everybody, so that a forgotten line never opens a door.
 */
import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { LRUCache } from 'lru-cache';
import type { Device, PresentDevice, Store } from '../store/port.js';
import { TurnProblem, type TurnSpeaker } from '../turn/index.js';
import type { Instant } from '../terms/dates.js';
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
    device: PresentDevice | null;
    /** True when a cookie, which browsers send by themselves, did the identifying. */
    byCookie: boolean;
  }
  interface FastifyInstance {
    /** A device was changed or revoked: what is remembered of it is dropped, so that it holds at once here. */
    deviceChanged(device: Device): void;
    /** Called with the device as it is after a change. */
    onDeviceChanged(hear: (device: Device) => void): void;
    /**
     * Works as a device that was looked up earlier. When it turns out that what devices may do was
     * changed since, it is looked up again first; `present` is then called with what it is now.
     * @throws ProblemError `not-identified` once it was revoked, `not-allowed` when it may no longer.
     */
    asPresent<T>(
      device: PresentDevice,
      needs: Scope,
      work: (speaker: TurnSpeaker) => Promise<T>,
      present?: (device: PresentDevice) => void,
    ): Promise<T>;
  }
}

/**
 * Other servers learn of a revoked device when this has passed, at the latest. What changes anything and
 * what is told over a socket is held against the household's rights version each time, besides.
 */
const REMEMBER_MS = 900;
/** Each try means that rights were changed in the moment since the last. */
const TRIES = 4;
/** A device is noted as heard from at most this often. */
const NOTE_EVERY_MS = 5 * 60_000;

const bearer = (request: FastifyRequest): string | null => {
  const header = request.headers.authorization;
  return header !== undefined && /^bearer /i.test(header) ? header.slice(7).trim() : null;
};

export const identify = fp<{ store: Store; now: () => Instant }>(async (app, { store, now }) => {
  const known = new LRUCache<string, PresentDevice>({ max: 20_000, ttl: REMEMBER_MS });
  app.decorateRequest('device', null);
  app.decorateRequest('byCookie', false);
  const listeners: ((device: Device) => void)[] = [];
  app.decorate('onDeviceChanged', (hear: (device: Device) => void) => void listeners.push(hear));
  app.decorate('deviceChanged', (device: Device) => {
    known.delete(device.tokenHash);
    for (const hear of listeners) hear(device);
  });

  const noteHeard = (device: Device): void => {
    const at = now();
    if (
      device.lastSeenAt !== null &&
      Math.abs(Date.parse(at) - Date.parse(device.lastSeenAt)) < NOTE_EVERY_MS
    )
      return;
    store
      .deviceHeard(device.householdId, device.id, at)
      .catch((error: unknown) => app.log.warn({ err: error }, 'not noted as heard from'));
  };

  const byHash = async (hash: string): Promise<PresentDevice | null> => {
    const remembered = known.get(hash);
    if (remembered) return remembered;
    const device = await store.deviceByTokenHash(hash);
    if (!device || device.revokedAt !== null) return null;
    known.set(hash, device);
    noteHeard(device);
    return device;
  };

  app.decorate('asPresent', async (device, needs, work, present = () => undefined) => {
    let current = device;
    for (let tries = 1; ; tries += 1) {
      try {
        return await work(speakerOf(current));
      } catch (error) {
        if (!(error instanceof TurnProblem && error.code === 'rights-changed') || tries === TRIES)
          throw error;
      }
      known.delete(device.tokenHash);
      const now = await byHash(device.tokenHash);
      if (!now) throw new ProblemError('not-identified');
      present(now);
      if (REACH[now.scope] < REACH[needs]) throw new ProblemError('not-allowed');
      current = now;
    }
  });

  const byToken = async (token: string): Promise<PresentDevice | null> =>
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
export const deviceOf = (request: FastifyRequest): PresentDevice => {
  if (!request.device) throw new ProblemError('not-identified');
  return request.device;
};

/** What the route of an identified request needs. */
const needsOf = (request: FastifyRequest): Scope => {
  const { needs } = request.routeOptions.config;
  return needs === undefined || needs === 'public' ? 'own' : needs;
};

/** Works as the request's device, as it is now; see `asPresent`. */
export const asSpeaker = <T>(
  request: FastifyRequest,
  work: (speaker: TurnSpeaker) => Promise<T>,
): Promise<T> =>
  request.server.asPresent(deviceOf(request), needsOf(request), work, (device) => {
    request.device = device;
  });

const speakerOf = (device: PresentDevice): TurnSpeaker => ({
  householdId: device.householdId,
  deviceId: device.id,
  personId: device.personId,
  owner: device.scope === 'own',
  rights: device.rights,
});
