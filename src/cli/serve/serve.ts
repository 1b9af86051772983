import { pino } from 'pino';
import { demoKitchen } from '../../kitchen/index.js';
import { createApp, readConfig, tellOfFault, type Config } from '../../server/index.js';
import type { Store } from '../../store/port.js';
import { createHouseholds, createTongues } from '../../turn/index.js';
import { openStore } from '../open-store.js';
import { putFresh } from '../which-household.js';
import { demoToken } from './demo-device.js';
import { startForgetting } from './forgetting.js';
import { createLogLines, lastLine } from './log-lines.js';
import { startSending } from './sending.js';
import { openTracing } from './tracing.js';

/** Prints how to try it, when the demo kitchen is what is served. */
const offerDemo = async (
  store: Store,
  config: Config,
  asked: boolean,
  now: () => string,
): Promise<string | null> => {
  // Its household first: the days in it are counted in that household's zone.
  const { id, timeZone } = demoKitchen({ now: now(), timeZone: 'UTC' }).household;
  const clock = { now: now(), timeZone };
  const ids = await store.householdIds();
  if (ids.length > 0 && !ids.includes(id) && !asked) return null;
  // Behind PostgreSQL other servers may be running: the demo must be asked for.
  if (config.DATABASE_URL !== undefined && !asked) return null;
  if (!ids.includes(id)) await putFresh(store, demoKitchen(clock), clock);
  return demoToken(store, id, now());
};

/** Seconds for what comes after draining: connections, the store, traces, the log. */
const STOP_SECONDS = 3;

/**
 * What is to be closed, in order, when the process is asked to end. Whatever hangs, it ends in time:
 * who was in the middle of a turn sends it again elsewhere.
 */
const createStopping = (seconds: number, tell: (why: string) => void) => {
  const closers: (() => unknown)[] = [];
  let stopping = false;
  return {
    /** Closed before what was named earlier. */
    then: (close: () => unknown): void => void closers.unshift(close),
    stop: async (why: string, code = 0): Promise<void> => {
      if (stopping) return;
      stopping = true;
      process.exitCode = code;
      tell(why);
      setTimeout(() => {
        lastLine(process.stdout.fd, '{"level":50,"msg":"not stopped in time; ended"}\n');
        process.exit(code || 1);
      }, seconds * 1000).unref();
      for (const close of closers) await Promise.resolve(close()).catch(() => undefined);
      // Timers and connections of libraries are not waited for.
      process.exit(code);
    },
  };
};

export const serve = async ({
  demo,
  data,
}: {
  readonly demo: boolean;
  readonly data: string;
}): Promise<void> => {
  const config = readConfig({ ...process.env, DATA_DIR: data });
  const lines = createLogLines(process.stdout.fd);
  const logger = pino(
    { level: config.LOG_LEVEL, redact: ['req.headers.authorization', 'req.headers.cookie'] },
    lines,
  );
  const stopping = createStopping(config.DRAIN_SECONDS + STOP_SECONDS, (why) =>
    logger.info({ why }, 'draining'),
  );
  stopping.then(() => lines.close(1_000));
  const now = (): string => new Date().toISOString();
  const store = await openStore({
    data: config.DATA_DIR,
    databaseUrl: config.DATABASE_URL,
    // Who restarts the process reads what the disk has.
    onLost: (error) => {
      logger.fatal({ err: error }, 'the store keeps nothing any more');
      void stopping.stop('store lost', 1);
    },
  });
  stopping.then(() => store.close());
  const traces = await openTracing(process.env);
  stopping.then(() => traces?.close());
  const tongues = createTongues((error) =>
    logger.error({ phrase: error.phrase, problem: error.problem }, 'phrase'),
  );
  // Before anybody is let in: reading grammars holds up whoever is being answered.
  tongues.warm(now());
  const households = createHouseholds({
    store,
    ...(traces ? { tracing: traces.tracing } : {}),
    tongues,
    now,
    bytesInMemory: config.KITCHEN_MEMORY_MB * 1024 * 1024,
    onFault: (fault) => tellOfFault(logger, fault, config),
  });
  const app = await createApp({ store, households, now, config }, logger);
  stopping.then(await startSending({ store, households, config, now, logger }));
  stopping.then(() => app.close());
  stopping.then(startForgetting(store, now, logger));
  process.once('SIGTERM', (signal) => void stopping.stop(signal));
  process.once('SIGINT', (signal) => void stopping.stop(signal));

  const { HOST: host, PORT: port } = config;
  const address = await app.listen({ host, port }).catch((error: NodeJS.ErrnoException) => {
    const taken = error.code === 'EADDRINUSE';
    throw taken
      ? new Error(`Something else listens on ${host}:${port}. Name another port with PORT.`)
      : error;
  });
  const token = await offerDemo(store, config, demo, now);
  if (token !== null) {
    lines.write(`\nMarta's demo kitchen is served at ${address}
Its key, new at each start: ${token}

  curl -s ${address}/v1/turns -H 'authorization: Bearer ${token}' \\
    -H 'content-type: application/json' \\
    -d '{"id":"t1","hypotheses":[{"text":"what should I use first"}]}'

`);
  }
};
