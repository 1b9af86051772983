/**
 * `POST /v1/hooks/…/turns`: turns from another speech front (a home hub, a telephone menu) that knows nothing of
 * this API: words in, SSML out. Signed as the Standard Webhooks specification has it; the id of the message is
 * the id of the turn, so that one sent twice, by a retry or by a listener on the line, is done once.
 */
import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import parseJson from 'secure-json-parse';
import { Webhook } from 'standardwebhooks';
import { z } from 'zod';
import { problem } from '../../../shared/wire/problem.js';
import { hookReply, hookTurn } from '../../../shared/wire/side-doors.js';
import type { TurnReply } from '../../../shared/wire/turn.js';
import type { PresentDevice } from '../../store/port.js';
import type { Context } from '../context.js';
import { ProblemError } from '../problems.js';
import { tellOfTurn } from '../turn-log.js';
import { deviceBehind, hookSecret, same } from './keys.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** The body as it came, which is what was signed. */
    signedBody: string;
  }
}

/** As the specification advises: a message on its way for longer is refused. */
const TOLERANCE_SECONDS = 5 * 60;

const params = z.strictObject({ household: z.string().max(128), device: z.string().max(128) });
const signature = z.looseObject({
  'webhook-id': z.string().min(1).max(256).describe('New for each turn; the same for a retry.'),
  'webhook-timestamp': z
    .string()
    .regex(/^\d{1,12}$/)
    .describe('Seconds since 1970.'),
  'webhook-signature': z
    .string()
    .max(1_000)
    .describe('`v1,` and base64 of HMAC-SHA256 over id, timestamp and body, joined by dots.'),
});

const isSigned = (
  device: PresentDevice,
  headers: z.infer<typeof signature>,
  body: string,
  nowSeconds: number,
): boolean => {
  const at = Number(headers['webhook-timestamp']);
  if (Math.abs(nowSeconds - at) > TOLERANCE_SECONDS) return false;
  const right = new Webhook(hookSecret(device)).sign(headers['webhook-id'], new Date(at * 1000), body);
  return headers['webhook-signature'].split(' ').some((given) => same(given, right));
};

/** Any text may be a message's id; a turn's may not. */
const turnId = (messageId: string): string =>
  `hook.${createHash('sha256').update(messageId).digest('hex').slice(0, 40)}`;

const answer = (request: FastifyRequest, reply: FastifyReply, turn: TurnReply): FastifyReply => {
  const { speech, expects, understood } = turn;
  const wants = request.headers.accept ?? '';
  if (/\bapplication\/json\b/.test(wants))
    return reply.send({
      speech,
      expects: expects.kind !== 'open',
      goodbye: understood.intents.includes('goodbye'),
    });
  return /\btext\/plain\b/.test(wants)
    ? reply.type('text/plain; charset=utf-8').serializer(String).send(speech.text)
    : reply.type('application/ssml+xml; charset=utf-8').serializer(String).send(speech.ssml);
};

export const hooks: FastifyPluginAsyncZod<Context> = async (app, { store, households, config, now }) => {
  app.decorateRequest('signedBody', '');
  // In this plugin only: what was signed is needed as it came.
  app.removeContentTypeParser('application/json');
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    request.signedBody = body as string;
    try {
      done(null, parseJson.parse(body as string, { protoAction: 'error', constructorAction: 'error' }));
    } catch {
      done(new ProblemError('malformed-json'));
    }
  });

  /** Before anything of the body is looked at. */
  const identify = async (request: FastifyRequest): Promise<void> => {
    const found = await deviceBehind(store, request.params as z.infer<typeof params>);
    const device = found && (await store.deviceByTokenHash(found.tokenHash));
    const headers = signature.safeParse(request.headers);
    const seconds = Date.parse(now()) / 1000;
    if (!device || !headers.success || !isSigned(device, headers.data, request.signedBody, seconds))
      throw new ProblemError('not-signed');
    request.device = device;
    await app.countDevice(request);
  };

  app.post(
    '/v1/hooks/:household/:device/turns',
    {
      config: { needs: 'public' },
      bodyLimit: 16 * 1024,
      preValidation: identify,
      schema: {
        tags: ['feeds'],
        summary: 'Words in, speech out, for another speech front',
        description:
          'Address and secret are in `GET /v1/feeds`. Signed by the Standard Webhooks specification. Answers SSML; with `Accept: application/json` the speech and whether an answer is waited for, with `text/plain` the words alone.',
        params,
        headers: signature,
        body: hookTurn,
        produces: ['application/ssml+xml', 'text/plain'],
        response: { 200: hookReply, '4xx': problem },
      },
    },
    async (request, reply) => {
      const started = performance.now();
      const { device } = request;
      if (!device) throw new ProblemError('not-signed');
      const { text, conversation, locale } = request.body;
      const turn = {
        id: turnId(request.headers['webhook-id']),
        conversation,
        hypotheses: text.trim() === '' ? [] : [{ text }],
        ...(locale === undefined ? {} : { locale }),
      };
      const done = await app.asPresent(device, 'speak', (speaker) => households.takeTurn(speaker, turn));
      tellOfTurn(app, request.log, { reply: done, request: turn, started, way: 'hook' }, config);
      return answer(request, reply, done) as never;
    },
  );
};
