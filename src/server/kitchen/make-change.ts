/** A page's change: one journal entry like a spoken one, harmless to send twice. */
import { randomUUID } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { changeDone } from '../../../shared/wire/kitchen.js';
import { wireId } from '../../../shared/wire/turn.js';
import { isRefused, type Refused, type Result } from '../../kitchen/index.js';
import type { Households, Surroundings } from '../../turn/index.js';
import type { Context } from '../context.js';
import { asSpeaker } from '../identify.js';
import { ProblemError, type ProblemCode } from '../problems.js';

/** The Idempotency-Key header (draft-ietf-httpapi-idempotency-key-header), else an id of our own. */
const requestId = (request: FastifyRequest): string => {
  const key = request.headers['idempotency-key'];
  if (key === undefined) return `page.${randomUUID()}`;
  const read = wireId.safeParse(key);
  if (!read.success) {
    throw new ProblemError('invalid-request', {
      errors: [{ path: 'idempotency-key', message: 'letters, digits, dot, colon, dash and underscore only' }],
    });
  }
  return `page.${read.data}`;
};

const codeOf = ({ refused }: Refused): ProblemCode =>
  refused.startsWith('unknown-') ? 'not-found' : 'refused';

/** The kitchen's own reason, as it is said: "The sour cream is off the record already." */
const inWords = (households: Households, around: Surroundings, { refused, about, have }: Refused): string =>
  households.say(around, {
    parts: [
      {
        kind: 'say',
        phrase: `refused-${refused}`,
        args: {
          ...(about && about.length > 0 ? { name: { kind: 'list', of: about } } : {}),
          ...(have ? { have: { kind: 'amount', amount: have } } : {}),
        },
      },
    ],
  }).text;

export const makeChange = async (
  { households }: Context,
  request: FastifyRequest,
  build: (around: Surroundings) => Result,
): Promise<z.infer<typeof changeDone>> => {
  const said = [request.method, request.url, request.body];
  const id = requestId(request);
  /** The kitchen as it was when the change was worked out last. */
  let around: Surroundings | null = null;
  const result = await asSpeaker(request, (speaker) =>
    households.change(speaker, { id, said }, (present) => {
      around = present;
      const built = build(present);
      return isRefused(built) ? { refused: built } : { changes: [built] };
    }),
  );
  if (result.outcome === 'refused') {
    throw new ProblemError(codeOf(result.refused), {
      ...(around === null ? {} : { detail: inWords(households, around, result.refused) }),
    });
  }
  return { version: result.version, changes: result.changes };
};
