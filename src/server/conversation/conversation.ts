/**
 * `GET /v1/conversation`: a conversation over a socket. Same turns as HTTP; besides, words so far,
 * and the server may speak first. Messages are in `shared/wire/socket.ts`.
 */
import websocket from '@fastify/websocket';
import type { FastifyBaseLogger } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { SUBPROTOCOL, type ClientMessage } from '../../../shared/wire/socket.js';
import { problem } from '../../../shared/wire/problem.js';
import type { Context } from '../context.js';
import { problemOf } from '../errors.js';
import { deviceOf } from '../identify.js';
import { ProblemError, toProblem } from '../problems.js';
import { tellOfTurn } from '../turn-log.js';
import { createBucket } from './bucket.js';
import { CLOSE, createHub, send, takeUp, type AsOpen, type Open } from './hub.js';
import { createInterrupting } from './interrupting.js';
import { startNews } from './news.js';
import { readFrame } from './read-frame.js';
import { createRights } from './rights.js';
import { startUnasked } from './unasked.js';

const FRAME_BYTES = 64 * 1024;
const PING_MS = 30_000;
/** So many seconds' messages may come at once: partial transcripts come in bursts. */
const BURST_SECONDS = 3;
/** Told off this often, a client is cut off. */
const REFUSALS_AT_MOST = 50;
/** Turns one socket may have waiting. */
const UNDER_WAY_AT_MOST = 8;

export const conversation: FastifyPluginAsyncZod<Context> = async (app, context) => {
  const { households, config } = context;
  const hub = createHub();
  const rights = createRights(context.store, hub);
  const as: AsOpen = async (open, work) => {
    try {
      return await app.asPresent(open.device, 'speak', work, (device) => {
        open.device = device;
      });
    } catch (error) {
      if (error instanceof ProblemError && error.code === 'not-identified')
        open.socket.close(CLOSE.policy, 'this device may no longer speak');
      throw error;
    }
  };
  const unasked = startUnasked(context, hub, rights, as, app.log, (kind) => app.meters.unasked.inc({ kind }));

  await app.register(websocket, {
    options: {
      maxPayload: FRAME_BYTES,
      perMessageDeflate: false,
      clientTracking: false,
      handleProtocols: (offered) => (offered.has(SUBPROTOCOL) ? SUBPROTOCOL : false),
    },
    // Let turns under way be answered, then ask clients to connect elsewhere.
    preClose: async () => {
      clearInterval(heartbeat);
      unasked.stop();
      const patience = performance.now() + config.DRAIN_SECONDS * 1000;
      const busy = () => [...hub.all()].some((open) => open.underWay > 0);
      while (busy() && performance.now() < patience) await new Promise((resolve) => setTimeout(resolve, 20));
      for (const open of hub.all()) open.socket.close(CLOSE.goingAway, 'connect again');
    },
  });

  const heartbeat = setInterval(() => {
    for (const open of hub.all()) {
      if (open.silent) open.socket.terminate();
      else {
        open.silent = true;
        open.socket.ping();
      }
    }
  }, PING_MS).unref();

  const interrupting = createInterrupting(context, as, app.log, () =>
    app.meters.unasked.inc({ kind: 'note' }),
  );
  const news = startNews(context, hub, rights, app.log, (householdId, opens, entries) => {
    unasked.changed(householdId);
    interrupting.tell(opens, entries);
  });
  app.addHook('onClose', async () => news.stop());

  const refuse = (
    open: Open,
    error: unknown,
    log: FastifyBaseLogger,
    instance: string,
    turn?: string,
  ): void => {
    const known = problemOf(error);
    if (known.code === 'internal') log.error({ err: error }, 'turn failed');
    else {
      const { id: device, householdId: household } = open.device;
      log.info({ device, household, problem: known.code }, 'message refused');
    }
    send(open, {
      type: 'error',
      problem: toProblem(known.code, known.details, instance),
      ...(turn === undefined ? {} : { turn }),
    });
  };

  const answer = async (open: Open, message: ClientMessage, log: FastifyBaseLogger): Promise<void> => {
    switch (message.type) {
      case 'ping':
        return send(open, { type: 'pong', ...(message.id === undefined ? {} : { id: message.id }) });
      case 'partial': {
        const fits = await as(open, (speaker) =>
          households.partial(speaker, message.conversation, message.text),
        );
        return send(open, { type: 'partial', conversation: message.conversation, fits });
      }
      case 'ack':
        return interrupting.acknowledged(open, message.id) ?? unasked.acknowledged(open, message.id);
      case 'turn': {
        if (app.closing) throw new ProblemError('closing');
        if (open.underWay >= UNDER_WAY_AT_MOST) throw new ProblemError('too-many-waiting');
        open.underWay += 1;
        const started = performance.now();
        try {
          const told = takeUp(open, message.turn.conversation);
          const reply = await as(open, (speaker) => households.takeTurn(speaker, message.turn, told));
          send(open, { type: 'reply', reply });
          tellOfTurn(app, log, { reply, request: message.turn, started, way: 'socket' }, config);
        } finally {
          open.underWay -= 1;
        }
        return;
      }
    }
  };

  app.get(
    '/v1/conversation',
    {
      websocket: true,
      config: { needs: 'speak' },
      schema: {
        tags: ['conversation'],
        summary: 'Hold a conversation over a socket',
        description: `Upgrade to a WebSocket (subprotocol \`${SUBPROTOCOL}\` if you name one). Each text frame holds one JSON message; see the schemas ClientMessage and ServerMessage.`,
        response: { '4xx': problem },
      },
      preValidation: async (request) => {
        const { origin } = request.headers;
        const ours = `${request.protocol}://${request.host}`;
        if (origin !== undefined && origin !== ours && !config.ORIGINS.includes(origin)) {
          throw new ProblemError('wrong-origin');
        }
        if (hub.size >= config.SOCKETS) throw new ProblemError('overloaded', { retryAfter: 10 });
        if (hub.ofDevice(deviceOf(request)).length >= config.SOCKETS_A_DEVICE) {
          throw new ProblemError('too-many-sockets', { retryAfter: 30 });
        }
      },
    },
    (socket, request) => {
      const open: Open = {
        socket,
        device: deviceOf(request),
        silent: false,
        underWay: 0,
        unacknowledged: new Set(),
        talks: new Map(),
      };
      const { log, id } = request;
      const mayCome = createBucket(config.SOCKET_RATE, config.SOCKET_RATE * BURST_SECONDS, () =>
        performance.now(),
      );
      let refusals = 0;
      const refused = (error: unknown, turn?: string): void => {
        refusals += 1;
        if (refusals > REFUSALS_AT_MOST) socket.close(CLOSE.policy, 'too many refused messages');
        else refuse(open, error, log, id, turn);
      };

      socket.on('message', (data: Buffer, binary: boolean) => {
        open.silent = false;
        if (!mayCome()) return refused(new ProblemError('too-many-requests'));
        const read = readFrame(data, binary);
        if ('problem' in read) return refused(read.problem, read.turn);
        const { message } = read;
        answer(open, message, log).catch((error: unknown) =>
          refused(error, message.type === 'turn' ? message.turn.id : undefined),
        );
      });
      socket.on('pong', () => {
        open.silent = false;
      });
      // A broken or oversized frame closes the socket by itself; there is nothing to add.
      socket.on('error', (error) => log.info({ problem: error.message }, 'socket broke'));
      socket.on('close', () => {
        hub.remove(open);
        news.left(open.device.householdId);
        app.meters.sockets.set(hub.size);
      });

      hub.add(open);
      app.meters.sockets.set(hub.size);
      households
        .look(open.device.householdId)
        .then(async ({ kitchen }) => {
          await news.follow(open.device.householdId, kitchen.version);
          send(open, {
            type: 'welcome',
            household: kitchen.household.name,
            device: open.device.name,
            version: kitchen.version,
          });
          return unasked.tell(open);
        })
        .catch((error: unknown) => refuse(open, error, log, id));
    },
  );

  // Here at once; other servers hear of it by the store.
  app.onDeviceChanged(({ householdId }) => {
    rights
      .check(householdId)
      .catch((error: unknown) => app.log.error({ err: error }, 'could not look who may speak'));
  });
};
