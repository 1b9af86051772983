/** What is measured and logged of a turn. Never words, unless LOG_SPEECH asks for them. */
import type { FastifyBaseLogger, FastifyInstance } from 'fastify';
import type { TurnReply, TurnRequest } from '../../shared/wire/turn.js';
import type { Config } from './config.js';

interface Told {
  readonly request: TurnRequest;
  readonly reply: TurnReply;
  /** `performance.now()` when it came in. */
  readonly started: number;
  readonly way: 'http' | 'socket';
}

export const tellOfTurn = (
  app: FastifyInstance,
  log: FastifyBaseLogger,
  { request, reply, started, way }: Told,
  config: Config,
): void => {
  const milliseconds = performance.now() - started;
  const { verdict, intents } = reply.understood;
  app.meters.turns.inc({ way, verdict });
  app.meters.turnSeconds.observe({ way }, milliseconds / 1000);
  log.info(
    {
      verdict,
      intents,
      changes: reply.changes.length,
      version: reply.version,
      milliseconds: Math.round(milliseconds * 100) / 100,
      ...(config.LOG_SPEECH
        ? { heard: request.hypotheses.map((guess) => guess.text), said: reply.speech.text }
        : {}),
    },
    'turn',
  );
};
