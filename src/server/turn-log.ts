/** What is measured and logged of a turn. Never words, unless LOG_SPEECH asks for them. */
import type { FastifyBaseLogger, FastifyInstance } from 'fastify';
import type { TurnReply, TurnRequest } from '../../shared/wire/turn.js';
import type { TurnFault } from '../turn/index.js';
import type { Config } from './config.js';

interface Told {
  readonly request: TurnRequest;
  readonly reply: TurnReply;
  /** `performance.now()` when it came in. */
  readonly started: number;
  readonly way: 'http' | 'socket' | 'hook';
}

export const tellOfTurn = (
  app: FastifyInstance,
  log: FastifyBaseLogger,
  { request, reply, started, way }: Told,
  config: Config,
): void => {
  const milliseconds = performance.now() - started;
  const { verdict, intents } = reply.understood;
  app.meters.turns.inc({ way, verdict: reply.fault === undefined ? verdict : 'broken' });
  app.meters.turnSeconds.observe({ way }, milliseconds / 1000);
  log.info(
    {
      verdict,
      intents,
      changes: reply.changes.length,
      version: reply.version,
      ...(reply.fault === undefined ? {} : { fault: reply.fault }),
      milliseconds: Math.round(milliseconds * 100) / 100,
      ...(config.LOG_SPEECH
        ? { heard: request.hypotheses.map((guess) => guess.text), said: reply.speech.text }
        : {}),
    },
    'turn',
  );
};

/** Where it broke and what kind of error it was. Its message may hold what was said. */
export const tellOfFault = (
  log: Pick<FastifyBaseLogger, 'error'>,
  { id, householdId, error }: TurnFault,
  { LOG_SPEECH }: Pick<Config, 'LOG_SPEECH'>,
): void => {
  const known = error instanceof Error ? error : new Error(typeof error);
  const where = (known.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  log.error(
    {
      fault: id,
      household: householdId,
      error: known.name,
      where: where.slice(0, 12).map((line) => line.trim()),
      ...(LOG_SPEECH ? { message: known.message } : {}),
    },
    'a turn broke; nothing was changed',
  );
};
