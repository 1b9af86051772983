/** The service, put together: one feature a file, each a fastify plugin. */
import cookie from '@fastify/cookie';
import Fastify, { LogController, type FastifyBaseLogger, type FastifyInstance } from 'fastify';
import { validatorCompiler } from 'fastify-type-provider-zod';
import type { Logger } from 'pino';
import type { Context } from './context.js';
import { charts } from './charts.js';
import { lessons } from './lessons.js';
import { conversation } from './conversation/conversation.js';
import { heard } from './conversation/heard.js';
import { devices } from './devices/devices.js';
import { invitations } from './devices/invitations.js';
import { notices } from './devices/notices.js';
import { pairing } from './devices/pairing.js';
import { errors } from './errors.js';
import { health } from './health.js';
import { importing } from './home/importing.js';
import { people } from './home/people.js';
import { setUp } from './home/set-up.js';
import { household } from './household.js';
import { identify } from './identify.js';
import { kitchenBiasing } from './kitchen/biasing.js';
import { kitchenBoard } from './kitchen/board.js';
import { kitchenCards } from './kitchen/cards.js';
import { kitchenChanging } from './kitchen/changing.js';
import { markers } from './kitchen/markers.js';
import { kitchenReading } from './kitchen/reading.js';
import { kitchenReminders } from './kitchen/reminders.js';
import { labels } from './labels.js';
import { limits } from './limits.js';
import { metrics } from './metrics.js';
import { openapi, openapiRoutes } from './openapi.js';
import { csrfGuard, registerPages, sessions } from './pages.js';
import { feeds } from './side-doors/feeds.js';
import { hooks } from './side-doors/hooks.js';
import { sounds } from './sounds.js';
import { turns } from './turns.js';

/** A request's own id is believed only when it can do no harm in a log. */
const REQUEST_ID = /^[\w.:-]{1,64}$/;

/**
 * The service, ready to listen or to be injected into. It owns neither the store nor the
 * households: whoever made them closes them, after closing this.
 */
export const createApp = async (context: Context, logger: Logger): Promise<FastifyInstance> => {
  const { config } = context;
  let count = 0;
  const app: FastifyInstance = Fastify({
    loggerInstance: logger as FastifyBaseLogger,
    bodyLimit: 64 * 1024,
    trustProxy: config.TRUST_PROXY.length > 0 ? config.TRUST_PROXY : false,
    // Slow clients: headers and body must come within these, idle connections end.
    requestTimeout: 15_000,
    connectionTimeout: 20_000,
    keepAliveTimeout: 30_000,
    http: { headersTimeout: 10_000, maxHeaderSize: 16 * 1024 },
    genReqId: (request) => {
      const given = request.headers['x-request-id'];
      count += 1;
      return typeof given === 'string' && REQUEST_ID.test(given)
        ? given
        : `r${process.pid.toString(36)}-${count.toString(36)}`;
    },
    // One line a turn says more than two a request; see turn-log.ts.
    logController: new LogController({ disableRequestLogging: true }),
    return503OnClosing: true,
    routerOptions: { maxParamLength: 200 },
  });
  app.setValidatorCompiler(validatorCompiler);
  // Answers are checked by the compiler; checking them again for each request costs more than the turn.
  app.setSerializerCompiler(() => (data) => JSON.stringify(data));
  // Nothing here takes plain text; fastify would.
  app.removeContentTypeParser('text/plain');
  app.addHook('onSend', async (request, reply) => {
    void reply.header('x-request-id', request.id);
    // A refused upgrade is answered on a socket that Node no longer minds: unless ended here it
    // stays half open for good, and the service could never finish closing.
    if (request.headers.upgrade === undefined) return;
    void reply.header('connection', 'close');
    reply.raw.once('finish', () => request.raw.socket.end());
  });

  await app.register(errors);
  await app.register(metrics);
  await app.register(limits, context);
  await app.register(cookie);
  await app.register(identify, context);
  await app.register(csrfGuard, context);
  await app.register(openapi);
  for (const feature of [
    health,
    turns,
    conversation,
    heard,
    pairing,
    invitations,
    notices,
    devices,
    sessions,
    kitchenReading,
    kitchenBoard,
    kitchenCards,
    kitchenChanging,
    markers,
    kitchenReminders,
    kitchenBiasing,
    people,
    setUp,
    household,
    importing,
    labels,
    charts,
    lessons,
    sounds,
    feeds,
    hooks,
  ]) {
    await app.register(feature, context);
  }
  await openapiRoutes(app);
  await registerPages(app);
  return app;
};
