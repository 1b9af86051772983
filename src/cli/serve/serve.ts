import { pino } from 'pino';
import { demoKitchen } from '../../kitchen/index.js';
import { createApp, readConfig, tellOfFault, type Config } from '../../server/index.js';
import type { Store } from '../../store/port.js';
import { createHouseholds, createTongues } from '../../turn/index.js';
import { openStore } from '../open-store.js';
import { putFresh } from '../which-household.js';
import { demoToken } from './demo-device.js';
import { startForgetting } from './forgetting.js';
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

export const serve = async ({ demo }: { readonly demo: boolean }): Promise<void> => {
  const config = readConfig(process.env);
  const logger = pino({
    level: config.LOG_LEVEL,
    redact: ['req.headers.authorization', 'req.headers.cookie'],
  });
  const now = (): string => new Date().toISOString();
  const store = await openStore({ data: config.DATA_DIR, databaseUrl: config.DATABASE_URL });
  const traces = await openTracing(process.env);
  const households = createHouseholds({
    store,
    ...(traces ? { tracing: traces.tracing } : {}),
    tongues: createTongues((error) =>
      logger.error({ phrase: error.phrase, problem: error.problem }, 'phrase'),
    ),
    now,
    onFault: (fault) => tellOfFault(logger, fault, config),
  });
  const app = await createApp({ store, households, now, config }, logger);

  const stopSending = await startSending({ store, households, config, now, logger });

  const stopForgetting = startForgetting(store, now, logger);

  let stopping = false;
  const stop = async (signal: string): Promise<void> => {
    if (stopping) return;
    stopping = true;
    logger.info({ signal }, 'draining');
    stopForgetting();
    await app.close();
    await stopSending();
    await store.close();
    await traces?.close();
    process.exitCode = 0;
  };
  process.once('SIGTERM', (signal) => void stop(signal));
  process.once('SIGINT', (signal) => void stop(signal));

  const address = await app.listen({ host: config.HOST, port: config.PORT });
  const token = await offerDemo(store, config, demo, now);
  if (token !== null) {
    process.stdout.write(`\nMarta's demo kitchen is served at ${address}
Its key, new at each start: ${token}

  curl -s ${address}/v1/turns -H 'authorization: Bearer ${token}' \\
    -H 'content-type: application/json' \\
    -d '{"id":"t1","hypotheses":[{"text":"what should I use first"}]}'

`);
  }
};
