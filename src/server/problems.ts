/** Every error the service answers with: one coded list, sent as RFC 9457 problem details. */
import type { Problem } from '../../shared/wire/problem.js';

export const PROBLEMS = {
  'malformed-json': { status: 400, title: 'The body is not JSON.' },
  'invalid-request': { status: 400, title: 'A part of the request is missing, unknown or out of bounds.' },
  'not-identified': { status: 401, title: 'No valid key of a device came with the request.' },
  'not-signed': {
    status: 401,
    title: 'The signature is missing, wrong, or older or newer than five minutes.',
  },
  'not-allowed': { status: 403, title: 'This device may not do that.' },
  'wrong-origin': { status: 403, title: 'Pages from that origin may not speak here.' },
  'csrf-token-missing': {
    status: 403,
    title: 'A page must send the session’s token in the x-csrf-token header.',
  },
  'not-found': { status: 404, title: 'There is no such thing here.' },
  'method-not-allowed': { status: 405, title: 'That path does not take this method.' },
  'code-not-valid': { status: 404, title: 'No device waits with that code. Codes last ten minutes.' },
  'invitation-not-valid': {
    status: 404,
    title: 'This invitation does not hold. It was used, taken back, or is older than an hour.',
  },
  refused: { status: 409, title: 'The kitchen cannot be changed like that.' },
  'too-busy': { status: 409, title: 'Others kept changing the kitchen at the same moment. Try again.' },
  'changed-meanwhile': { status: 412, title: 'Somebody else changed it since you looked.' },
  'too-large': { status: 413, title: 'The request is larger than this service takes.' },
  'wrong-media-type': { status: 415, title: 'Bodies must be application/json.' },
  'id-reused': { status: 422, title: 'This id was used before for something else.' },
  'too-many-requests': { status: 429, title: 'Too many requests. Wait, then go on.' },
  'too-many-waiting': { status: 429, title: 'Too many turns of this household are waiting.' },
  'binary-frame': { status: 400, title: 'Frames must be text that holds one JSON object.' },
  'too-many-sockets': { status: 429, title: 'This device has too many open conversations.' },
  overloaded: { status: 503, title: 'The service is overloaded. Try again shortly.' },
  closing: { status: 503, title: 'This server is about to stop. Connect again.' },
  'storage-full': { status: 507, title: 'There is no room left to keep anything. Nothing was changed.' },
  'not-known': {
    status: 503,
    title: 'It is not known whether that was kept. Send it again with the same id: it is never done twice.',
  },
  internal: { status: 500, title: 'Something went wrong here. See what is there before doing it again.' },
} as const satisfies Record<string, { status: number; title: string }>;
export type ProblemCode = keyof typeof PROBLEMS;

export interface ProblemDetails {
  readonly detail?: string;
  readonly errors?: Problem['errors'];
  /** Seconds after which it makes sense to try again. */
  readonly retryAfter?: number;
}

/** Thrown anywhere in a route: becomes the answer. */
export class ProblemError extends Error {
  constructor(
    readonly code: ProblemCode,
    readonly details: ProblemDetails = {},
  ) {
    super(details.detail ?? PROBLEMS[code].title);
    this.name = 'ProblemError';
  }
}

/** The wire form. `instance` is the request's id. */
export const toProblem = (code: ProblemCode, details: ProblemDetails = {}, instance?: string): Problem => ({
  type: `/v1/problems#${code}`,
  title: PROBLEMS[code].title,
  status: PROBLEMS[code].status,
  code,
  ...(details.detail === undefined ? {} : { detail: details.detail }),
  ...(instance === undefined ? {} : { instance }),
  ...(details.errors === undefined ? {} : { errors: details.errors }),
});
