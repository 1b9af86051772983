/** Guards that stand before every route: headers, rates, load and drain. */
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import underPressure from '@fastify/under-pressure';
import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { Config } from './config.js';
import { ProblemError } from './problems.js';

declare module 'fastify' {
  interface FastifyInstance {
    /** True once the server has begun to stop. */
    closing: boolean;
    /** Counts a request of an identified device. @throws ProblemError `too-many-requests` */
    countDevice(request: FastifyRequest): Promise<void>;
  }
}

/** Sockets of the host the page was asked from, and of no other. */
const socketsOf = (host: string | undefined): string =>
  host !== undefined && /^[\w.:[\]-]+$/.test(host) ? `ws://${host} wss://${host}` : "'self'";

export const limits = fp<{ config: Config }>(async (app, { config }) => {
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        // Not every browser takes 'self' for our own sockets.
        connectSrc: ["'self'", ({ headers }) => socketsOf(headers.host)],
        objectSrc: ["'none'"],
        frameAncestors: ["'none'"],
        upgradeInsecureRequests: null,
      },
    },
    referrerPolicy: { policy: 'no-referrer' },
  });

  app.decorate('closing', false);
  app.addHook('preClose', async () => {
    app.closing = true;
  });

  await app.register(underPressure, {
    maxEventLoopDelay: config.LAG_MS,
    sampleInterval: 500,
    pressureHandler: (request, _reply, _type, value) => {
      // Not measured yet: the plugin's first sample after a start may be infinite.
      if (value === undefined || !Number.isFinite(value)) return;
      // The probes must still answer: a busy process is alive.
      if (request.url.startsWith('/health/') || request.url === '/metrics') return;
      throw new ProblemError('overloaded', { retryAfter: 2 });
    },
  });

  await app.register(rateLimit, { global: false });
  const byAddress = app.createRateLimit({
    max: config.ADDRESS_RATE,
    timeWindow: '1 minute',
    keyGenerator: (request) => `a:${request.ip}`,
  });
  const byDevice = app.createRateLimit({
    max: config.DEVICE_RATE,
    timeWindow: '1 minute',
    keyGenerator: (request) => `d:${request.device?.id ?? ''}`,
  });
  // Before identification, so that guessing tokens is limited too.
  app.addHook('onRequest', async (request) => {
    const seen = await byAddress(request);
    if (!seen.isAllowed && seen.isExceeded) {
      throw new ProblemError('too-many-requests', { retryAfter: seen.ttlInSeconds });
    }
  });
  app.decorate('countDevice', async (request: FastifyRequest) => {
    const seen = await byDevice(request);
    if (!seen.isAllowed && seen.isExceeded) {
      throw new ProblemError('too-many-requests', { retryAfter: seen.ttlInSeconds });
    }
  });
  app.addHook('preParsing', async (request) => {
    if (request.device) await app.countDevice(request);
  });
});
