/** Turns whatever was thrown into one of the problems on the list. */
import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { StoreError, type StoreFault } from '../store/index.js';
import { TurnProblem, type TurnProblemCode } from '../turn/index.js';
import { lostPage } from '../web/lost-page.js';
import { ProblemError, toProblem, type ProblemCode } from './problems.js';

const OF_TURNS: Record<TurnProblemCode, ProblemCode> = {
  'no-such-household': 'not-found',
  'turn-id-reused': 'id-reused',
  'too-many-waiting': 'too-many-waiting',
  'too-busy': 'too-busy',
  'rights-changed': 'too-busy',
};

/** Faults of the store that are nobody's mistake: nothing was changed, and trying again may help. */
const OF_STORE: Partial<Record<StoreFault, ProblemCode>> = {
  'no-such-household': 'not-found',
  'disk-full': 'storage-full',
  busy: 'overloaded',
  unavailable: 'overloaded',
  'not-known': 'not-known',
};

const OF_FASTIFY: Record<string, ProblemCode> = {
  FST_ERR_CTP_INVALID_JSON_BODY: 'malformed-json',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'malformed-json',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'wrong-media-type',
  FST_ERR_CTP_BODY_TOO_LARGE: 'too-large',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'invalid-request',
  FST_CSRF_MISSING_SECRET: 'csrf-token-missing',
  FST_CSRF_INVALID_TOKEN: 'csrf-token-missing',
};

/** Where each complaint is and what it is, never what was sent: that may be private or hostile. */
export const issuesOf = (error: z.ZodError): { path: string; message: string }[] =>
  error.issues.slice(0, 20).map((issue) => ({
    path: issue.path.map(String).join('.').slice(0, 200),
    message:
      issue.code === 'unrecognized_keys'
        ? `${issue.keys.length === 1 ? 'one part' : `${issue.keys.length} parts`} not known here`
        : issue.message.slice(0, 200),
  }));

export const problemOf = (error: unknown): ProblemError => {
  if (error instanceof ProblemError) return error;
  if (error instanceof TurnProblem) return new ProblemError(OF_TURNS[error.code], { retryAfter: 1 });
  if (error instanceof StoreError)
    return new ProblemError(OF_STORE[error.fault] ?? 'internal', { retryAfter: 5 });
  if (error instanceof z.ZodError) return new ProblemError('invalid-request', { errors: issuesOf(error) });
  const { code, statusCode, cause } = error as { code?: string; statusCode?: number; cause?: unknown };
  if (code !== undefined && OF_FASTIFY[code]) return new ProblemError(OF_FASTIFY[code]);
  if (cause instanceof z.ZodError) return problemOf(cause);
  if (hasZodFastifySchemaValidationErrors(error)) {
    return new ProblemError('invalid-request', {
      errors: error.validation.slice(0, 20).map((issue) => ({
        path: issue.instancePath.slice(1).replaceAll('/', '.').slice(0, 200),
        message: /unrecognized key/i.test(issue.message ?? '')
          ? 'a part not known here'
          : (issue.message ?? 'wrong').slice(0, 200),
      })),
    });
  }
  // Also: JSON that tries to poison prototypes, which the parser refuses with a SyntaxError.
  if (error instanceof SyntaxError && statusCode === 400) return new ProblemError('malformed-json');
  if (statusCode === 404) return new ProblemError('not-found');
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    return new ProblemError('invalid-request');
  }
  return new ProblemError('internal');
};

/** Who asks and from where, for a line in the log. Ids only. */
export const whoOf = (request: FastifyRequest): { address: string; device?: string; household?: string } => ({
  address: request.ip,
  ...(request.device ? { device: request.device.id, household: request.device.householdId } : {}),
});

const routeOf = (request: FastifyRequest): string =>
  `${request.method} ${request.routeOptions.url ?? 'none'}`;

export const errors = fp(async (app) => {
  app.setErrorHandler((error, request, reply) => {
    const known = problemOf(error);
    const body = toProblem(known.code, known.details, request.id);
    // A validator's own message may quote what was sent, so it is not logged below error level.
    if (body.status >= 500 && known.code !== 'closing') request.log.error({ err: error }, 'request failed');
    else
      request.log.info(
        { ...whoOf(request), route: routeOf(request), problem: known.code },
        'request refused',
      );
    if (known.details.retryAfter !== undefined) void reply.header('retry-after', known.details.retryAfter);
    if (body.status === 401) void reply.header('www-authenticate', 'Bearer realm="tellshelf"');
    return reply.code(body.status).type('application/problem+json').send(body);
  });
  app.setNotFoundHandler((request, reply) => {
    // A person who mistyped an address gets a page; a program that asks for JSON gets the problem.
    const wantsPage =
      request.method === 'GET' &&
      request.headers.accept?.includes('text/html') === true &&
      !request.url.startsWith('/v1/');
    if (wantsPage)
      return reply
        .code(404)
        .type('text/html; charset=utf-8')
        .send(lostPage(request.headers['accept-language']));
    return reply
      .code(404)
      .type('application/problem+json')
      .send(toProblem('not-found', {}, request.id));
  });
});
