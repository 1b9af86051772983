/**
 * Sessions for pages. A page trades a device token for an HttpOnly cookie that holds it, so that
 * no script can read it, and sends a second token, which only our own pages can read, with
 * every change. Revoking the device ends the session.
 */
import csrf from '@fastify/csrf-protection';
import type { FastifyInstance } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import fp from 'fastify-plugin';
import { z } from 'zod';
import { problem } from '../../shared/wire/problem.js';
import { webPages } from '../web/plugin.js';
import type { Context } from './context.js';
import { ProblemError } from './problems.js';
import { SESSION_COOKIE } from './session-cookie.js';
import { hashOf, looksLikeToken } from './tokens.js';

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);
/** A session outlives a week on the shelf. */
const SESSION_SECONDS = 30 * 24 * 60 * 60;

/** Refuses changes by cookie without the session's token. */
export const csrfGuard = fp<Context>(async (app, { config }) => {
  await app.register(csrf, {
    sessionPlugin: '@fastify/cookie',
    cookieKey: 'tellshelf_csrf',
    cookieOpts: { httpOnly: true, sameSite: 'strict', secure: config.SECURE_COOKIES, path: '/' },
    getToken: (request) => {
      const header = request.headers['x-csrf-token'];
      return typeof header === 'string' ? header : undefined;
    },
  });
  app.addHook('preValidation', (request, reply, done) => {
    if (!request.byCookie || SAFE.has(request.method)) return done();
    return app.csrfProtection(request, reply, done);
  });
});

export const sessions: FastifyPluginAsyncZod<Context> = async (app, { store, config }) => {
  const cookie = {
    httpOnly: true,
    sameSite: 'strict',
    secure: config.SECURE_COOKIES,
    path: '/',
  } as const;

  app.post(
    '/v1/session',
    {
      config: { needs: 'public' },
      schema: {
        tags: ['devices'],
        summary: 'Start a page’s session',
        description: 'Trades the key of a device for an HttpOnly cookie and a token to send with changes.',
        body: z.strictObject({ token: z.string().max(200) }),
        response: { 200: z.strictObject({ csrfToken: z.string() }), '4xx': problem },
      },
    },
    async (request, reply) => {
      const { token } = request.body;
      const device = looksLikeToken(token) ? await store.deviceByTokenHash(hashOf(token)) : null;
      if (!device || device.revokedAt !== null) throw new ProblemError('not-identified');
      void reply.setCookie(SESSION_COOKIE, token, { ...cookie, maxAge: SESSION_SECONDS });
      return { csrfToken: reply.generateCsrf() };
    },
  );

  app.get(
    '/v1/session',
    {
      config: { needs: 'speak' },
      schema: {
        tags: ['devices'],
        summary: 'The token to send with changes, for a page whose session goes on',
        response: { 200: z.strictObject({ csrfToken: z.string() }), '4xx': problem },
      },
    },
    async (request, reply) => {
      // A page that is used stays let in: the session's time begins anew with each visit.
      const token = request.byCookie ? request.cookies[SESSION_COOKIE] : undefined;
      if (token !== undefined)
        void reply.setCookie(SESSION_COOKIE, token, { ...cookie, maxAge: SESSION_SECONDS });
      return { csrfToken: reply.generateCsrf() };
    },
  );

  app.delete(
    '/v1/session',
    {
      config: { needs: 'speak' },
      schema: { tags: ['devices'], summary: 'End a page’s session', response: { 204: z.null() } },
    },
    async (_request, reply) => {
      void reply.clearCookie(SESSION_COOKIE, cookie);
      return reply.code(204).send(null);
    },
  );
};

/** Serves the pages. They hold nothing private; what they show they ask for with the session's cookie. */
export const registerPages = async (app: FastifyInstance): Promise<void> => {
  await app.register(async (pages) => {
    pages.addHook('onRoute', (route) => {
      route.config = { ...route.config, needs: 'public' };
      route.schema = { ...route.schema, hide: true };
    });
    await pages.register(webPages);
  });
};
