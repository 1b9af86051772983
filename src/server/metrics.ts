/** `GET /metrics` for Prometheus. Labels never hold ids or words: nobody can be followed by them. */
import fp from 'fastify-plugin';
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';

export interface Meters {
  readonly turns: Counter<'way' | 'verdict'>;
  readonly turnSeconds: Histogram<'way'>;
  readonly sockets: Gauge;
  readonly requests: Counter<'route' | 'method' | 'status'>;
  readonly unasked: Counter<'kind'>;
}
declare module 'fastify' {
  interface FastifyInstance {
    meters: Meters;
  }
}

export const metrics = fp(async (app) => {
  const register = new Registry();
  collectDefaultMetrics({ register });
  const registers = [register];
  app.decorate('meters', {
    turns: new Counter({
      name: 'tellshelf_turns_total',
      help: 'Turns answered, by way in and verdict.',
      labelNames: ['way', 'verdict'],
      registers,
    }),
    turnSeconds: new Histogram({
      name: 'tellshelf_turn_seconds',
      help: 'Time from a turn’s arrival to its answer.',
      labelNames: ['way'],
      buckets: [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1],
      registers,
    }),
    sockets: new Gauge({ name: 'tellshelf_sockets', help: 'Open conversations.', registers }),
    requests: new Counter({
      name: 'tellshelf_http_requests_total',
      help: 'Requests answered, by route pattern and status.',
      labelNames: ['route', 'method', 'status'],
      registers,
    }),
    unasked: new Counter({
      name: 'tellshelf_unasked_total',
      help: 'Timers, reminders and summaries acknowledged by a device.',
      labelNames: ['kind'],
      registers,
    }),
  });
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none';
    app.meters.requests.inc({ route, method: request.method, status: String(reply.statusCode) });
  });
  app.get('/metrics', { config: { needs: 'public' }, schema: { hide: true } }, async (_request, reply) =>
    reply.type(register.contentType).send(await register.metrics()),
  );
});
