/** A whole service on an embedded store, for tests: real rooms throughout, only the clock is held. */
import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { pino } from 'pino';
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import { createApp, hashOf, newToken, readConfig, tellOfFault } from '../../src/server/index.js';
import { openSqliteStore, type Device, type Store } from '../../src/store/index.js';
import { createHouseholds, createTongues, type Households, type Tongues } from '../../src/turn/index.js';
import type { TurnReply } from '../../shared/wire/turn.js';

/** A Thursday evening in the demo household's zone. */
export const THURSDAY = '2026-05-14T23:00:00.000Z';

export interface Service {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly households: Households;
  readonly kitchen: Kitchen;
  /** Tokens of one device of each scope. */
  readonly tokens: Readonly<Record<Device['scope'], string>>;
  readonly devices: Readonly<Record<Device['scope'], Device>>;
  /** Log lines, parsed. */
  readonly logged: readonly Record<string, unknown>[];
  setNow(instant: string): void;
  close(): Promise<void>;
}

/** A device of the household, let in. */
export const letIn = async (
  store: Store,
  householdId: string,
  scope: Device['scope'],
): Promise<{ token: string; device: Device }> => {
  const token = newToken();
  const device: Device = {
    id: randomUUID(),
    householdId,
    name: `${scope} device`,
    tokenHash: hashOf(token),
    scope,
    personId: null,
    pairedAt: THURSDAY,
    lastSeenAt: null,
    revokedAt: null,
  };
  await store.addDevice(device);
  return { token, device };
};

/** The demo kitchen under another household id, so that one store holds several. */
export const kitchenOf = (householdId: string): Kitchen => {
  const kitchen = demoKitchen({ now: THURSDAY, timeZone: 'America/Chicago' });
  return { ...kitchen, household: { ...kitchen.household, id: householdId, name: `Kitchen ${householdId}` } };
};

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, { readonly responses: object }>>>>;
}

/** Every problem a route answered with that its description does not name. */
const watchProblems = (app: FastifyInstance): (() => readonly string[]) => {
  const seen = new Map<string, { path: string; method: string; status: number; code: string }>();
  app.addHook('onSend', async (request, reply, payload) => {
    const { url } = request.routeOptions;
    if (url === undefined || !String(reply.getHeader('content-type')).includes('problem+json')) return;
    const { code } = JSON.parse(String(payload)) as { code: string };
    const path = url.replace(/:(\w+)/g, '{$1}');
    const method = request.method.toLowerCase();
    seen.set(`${method} ${path} ${code}`, { path, method, status: reply.statusCode, code });
  });
  return () => {
    const { paths } = app.swagger() as unknown as Described;
    return [...seen].flatMap(([at, { path, method, status, code }]) => {
      const operation = paths[path]?.[method];
      if (operation === undefined) return [];
      const answers = operation.responses as Record<
        string,
        { content?: Record<string, { examples?: object }> }
      >;
      const named = answers[String(status)]?.content?.['application/problem+json']?.examples ?? {};
      return code in named ? [] : [at];
    });
  };
};

export const startService = async (
  settings: Record<string, string> = {},
  over: Partial<Pick<Service, 'store'>> & { householdId?: string; tongues?: Tongues } = {},
): Promise<Service> => {
  const store = over.store ?? openSqliteStore(':memory:');
  await store.migrate();
  const kitchen = kitchenOf(over.householdId ?? 'marta');
  const { id } = kitchen.household;
  if (!(await store.householdIds()).includes(id)) await store.createHousehold(kitchen, THURSDAY);
  const devices = {
    speak: await letIn(store, id, 'speak'),
    help: await letIn(store, id, 'help'),
    own: await letIn(store, id, 'own'),
  };
  let now = THURSDAY;
  const logged: Record<string, unknown>[] = [];
  const logger = pino(
    { level: 'info' },
    { write: (line: string) => void logged.push(JSON.parse(line) as Record<string, unknown>) },
  );
  const config = readConfig({
    ADDRESS_RATE: '1000000',
    DEVICE_RATE: '1000000',
    LAG_MS: '60000',
    ...settings,
  });
  const households = createHouseholds({
    store,
    tongues:
      over.tongues ??
      createTongues((error) => {
        throw error;
      }),
    now: () => now,
    onFault: (fault) => tellOfFault(logger, fault, config),
  });
  const app = await createApp({ store, households, now: () => now, config }, logger);
  const undescribed = watchProblems(app);
  await app.ready();
  return {
    app,
    store,
    households,
    kitchen,
    tokens: { speak: devices.speak.token, help: devices.help.token, own: devices.own.token },
    devices: { speak: devices.speak.device, help: devices.help.device, own: devices.own.device },
    logged,
    setNow: (instant) => {
      now = instant;
    },
    close: async () => {
      const found = undescribed();
      await app.close();
      if (!over.store) await store.close();
      if (found.length > 0)
        throw new Error(`Answered, and not in the OpenAPI document: ${found.join('; ')}.`);
    },
  };
};

export const bearer = (token: string): { authorization: string } => ({ authorization: `Bearer ${token}` });

/** Says something over HTTP and gives the whole answer. */
export const say = async (
  service: Pick<Service, 'app' | 'tokens'>,
  words: string,
  more: Record<string, unknown> = {},
): Promise<TurnReply> => {
  const response = await service.app.inject({
    method: 'POST',
    url: '/v1/turns',
    headers: bearer(service.tokens.speak),
    payload: { id: randomUUID(), hypotheses: [{ text: words }], ...more },
  });
  if (response.statusCode !== 200) throw new Error(`${response.statusCode}: ${response.body}`);
  return response.json();
};
