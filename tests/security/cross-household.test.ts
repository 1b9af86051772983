/**
 * Two households on one store. Generated from the OpenAPI document, so that a new route is
 * covered on the day it is added: with a device of one household, ids of the other are never
 * found, and nothing of the other comes back or changes.
 * OWASP ASVS 5.0 V8.2 (operation and data level authorization), V8.4 (multi-tenant separation).
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { bearer, kitchenOf, letIn, startService, THURSDAY, type Service } from '../support/service.js';

interface Described {
  readonly security?: readonly unknown[];
  readonly parameters?: readonly { name: string; in: string }[];
  readonly requestBody?: unknown;
}
type Paths = Record<string, Record<string, Described>>;

let store: Store;
let service: Service;
let stranger: string;
let paths: Paths;
/** Ids that exist in Marta's kitchen only. */
const secrets: string[] = [];

const routes = () =>
  Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, described]) => ({ path, method: method.toUpperCase(), described })),
  );

beforeAll(async () => {
  store = openSqliteStore(':memory:');
  service = await startService({}, { store });
  const other = kitchenOf('stranger');
  // An empty kitchen: anything that comes back is somebody else's.
  const bare = {
    ...other,
    people: new Map(),
    places: new Map(),
    markers: new Map(),
    items: new Map(),
    purchases: new Map(),
    notes: new Map(),
    reminders: new Map(),
    stockTakes: new Map(),
  };
  await store.createHousehold(bare, THURSDAY);
  stranger = (await letIn(store, 'stranger', 'own')).token;
  const { kitchen } = service;
  secrets.push(
    ...[...kitchen.items.keys()].slice(0, 3),
    ...[...kitchen.markers.keys()].slice(0, 2),
    ...[...kitchen.places.keys()].slice(0, 2),
    ...[...kitchen.people.keys()].slice(0, 2),
    ...Object.values(service.devices).map((device) => device.id),
  );
  const document = await service.app.inject({ url: '/v1/openapi.json' });
  paths = document.json<{ paths: Paths }>().paths;
});
afterAll(async () => {
  await service.close();
  await store.close();
});

/** Bodies that would do something, were the ids the caller's own. */
const bodies: Record<string, (id: string) => unknown> = {
  'POST /v1/turns': () => ({ id: randomUUID(), hypotheses: [{ text: 'finish the rice' }] }),
  'PATCH /v1/kitchen/items/{id}': () => ({ name: 'stolen' }),
  'POST /v1/kitchen/items/{id}/finish': () => ({ how: 'used' }),
  'POST /v1/kitchen/items': (id) => ({ name: 'stolen', shares: [{ placeId: id, markerId: id }] }),
  'POST /v1/kitchen/items/{id}/take': () => ({ fraction: 1 }),
  'POST /v1/kitchen/items/{id}/move': (id) => ({ placeId: id }),
  'POST /v1/kitchen/markers': () => ({ touch: { fastening: 'bead', texture: 'stolen' } }),
  'PATCH /v1/kitchen/markers/{id}': () => ({ touch: { fastening: 'bead', texture: 'stolen' } }),
  'POST /v1/kitchen/places': (id) => ({ name: 'stolen', kind: 'shelf', parentId: id }),
  'POST /v1/kitchen/people': () => ({ name: 'stolen' }),
  'PATCH /v1/kitchen/people/{id}': () => ({ name: 'stolen' }),
  'PATCH /v1/household': () => ({ microwaveWatts: 950 }),
  'POST /v1/kitchen/undo': (id) => ({ entry: id }),
  'POST /v1/kitchen/list': () => ({ name: 'stolen' }),
  'PATCH /v1/devices/{id}': () => ({ name: 'stolen' }),
  'POST /v1/pairings/confirm': (id) => ({ code: '12345678', personId: id }),
  'POST /v1/invitations': (id) => ({ name: 'stolen', personId: id }),
  'POST /v1/invitations/withdraw': (id) => ({ invitation: id }),
  'PUT /v1/notices': () => ({
    endpoint: 'https://push.kitchen.example/stolen',
    p256dh: 'B'.repeat(87),
    auth: 'a'.repeat(22),
  }),
  'POST /v1/labels': (id) => ({ kind: 'pdf', items: [id], markers: [id] }),
  'POST /v1/household/import': () => ({ form: 'csv', text: 'Item,Qty\nstolen,1\n' }),
  'DELETE /v1/household': () => ({ name: service.kitchen.household.name }),
};

const recordsOfMarta = async () => {
  const { items, markers, places, people } = (await service.households.look('marta')).kitchen;
  return [items, markers, places, people].map((records) => [...records]);
};
const snapshot = async () => JSON.stringify([await recordsOfMarta(), await store.devices('marta')]);

describe('the description of the API', () => {
  it('says of every route whether it needs a device', () => {
    expect(routes().length).toBeGreaterThan(15);
    for (const { path, described } of routes()) expect(described.security, path).toBeDefined();
  });
});

describe('without a device', () => {
  it('every route that needs one refuses', async () => {
    for (const { path, method, described } of routes()) {
      if (described.security?.length === 0) continue;
      const response = await service.app.inject({
        method: method as 'GET',
        url: path.replace(/\{\w+\}/g, 'x'),
      });
      expect([401, 404], `${method} ${path}`).toContain(response.statusCode);
      if (path !== '/v1/conversation')
        expect(response.json(), `${method} ${path}`).toMatchObject({ code: 'not-identified' });
    }
  });
});

describe('with a device of another household', () => {
  it('no route gives or changes anything of this one', async () => {
    const before = await snapshot();
    // Eggs and milk are allergens, too, that every household may choose from.
    const names = [...service.kitchen.items.values()]
      .map((item) => item.name)
      .filter((name) => name !== 'eggs' && name !== 'milk');
    for (const { path, method, described } of routes()) {
      if (
        path === '/v1/conversation' ||
        path.startsWith('/health') ||
        (method === 'DELETE' && path === '/v1/session')
      )
        continue;
      for (const id of secrets) {
        const key = `${method} ${path}`;
        const query = (described.parameters ?? [])
          .filter((parameter) => parameter.in === 'query' && !['limit', 'gone'].includes(parameter.name))
          .map((parameter) => `${parameter.name}=${encodeURIComponent(id)}`)
          .join('&');
        const url = path.replace(/\{\w+\}/g, encodeURIComponent(id)) + (query ? `?${query}` : '');
        if (described.requestBody !== undefined && described.security?.length !== 0) {
          expect(bodies, `a body to try ${key} with`).toHaveProperty([key]);
        }
        const body = bodies[key]?.(id);
        const response = await service.app.inject({
          method: method as 'GET',
          url,
          headers: bearer(stranger),
          ...(body === undefined ? {} : { payload: body as object }),
        });
        expect(response.statusCode, key).toBeLessThan(500);
        // That something of another household was heard is no news and no secret: nothing is said and nothing changes.
        const refused = path.endsWith('/heard') ? [204] : [400, 404, 409];
        if (path.includes('{id}')) expect(refused, key).toContain(response.statusCode);
        for (const name of names) expect(response.body, key).not.toContain(`"${name}"`);
        expect(await snapshot(), key).toBe(before);
        if (!/\{|\?/.test(url + path)) break;
      }
    }
  });
});

describe('scopes', () => {
  it('each device may do what its scope says and no more', async () => {
    const reach = { speak: 1, help: 2, own: 3 };
    for (const { path, method, described } of routes()) {
      const needs = (described as { 'x-needs'?: keyof typeof reach })['x-needs'];
      if (needs === undefined || path === '/v1/conversation') continue;
      for (const scope of ['speak', 'help'] as const) {
        if (reach[scope] >= reach[needs]) continue;
        const response = await service.app.inject({
          method: method as 'GET',
          url: path.replace(/\{\w+\}/g, 'x'),
          headers: bearer(service.tokens[scope]),
        });
        expect(response.statusCode, `${scope} ${method} ${path}`).toBe(403);
        expect(response.json()).toMatchObject({ code: 'not-allowed' });
      }
    }
  });
});
