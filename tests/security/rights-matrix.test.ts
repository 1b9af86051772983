/**
 * Every operation of the OpenAPI document with every kind of credential: a cell for each, so that a route added
 * tomorrow is judged tomorrow. OWASP ASVS 5.0 V8.2, V8.3.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Device } from '../../src/store/index.js';
import { SESSION_COOKIE } from '../../src/server/session-cookie.js';
import { bearer, letIn, startService, THURSDAY, type Service } from '../support/service.js';

interface Operation {
  readonly method: string;
  readonly path: string;
  readonly needs: Device['scope'] | null;
}

let service: Service;
let operations: readonly Operation[];
let revoked: string;
beforeAll(async () => {
  service = await startService();
  const { token, device } = await letIn(service.store, 'marta', 'own');
  await service.store.changeDevices('marta', {
    deeds: [{ kind: 'send-away', id: device.id }],
    by: null,
    at: THURSDAY,
  });
  revoked = token;
  const document = await service.app.inject({ url: '/v1/openapi.json' });
  const { paths } = document.json<{
    paths: Record<string, Record<string, { security: unknown[]; 'x-needs'?: Device['scope'] }>>;
  }>();
  operations = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { security, 'x-needs': needs }]) => ({
      method: method.toUpperCase(),
      path,
      needs: security.length === 0 ? null : (needs ?? 'own'),
    })),
  );
});
afterAll(() => service.close());

const REACH = { speak: 1, help: 2, own: 3 } as const;
type Expected = 'let in' | 'not identified' | 'not allowed';

/** Its key, or its signature, is what lets in; the matrix has neither. */
const isKeyed = (path: string): boolean => path.includes('{key}') || path.startsWith('/v1/hooks/');

const expectedOf = (
  { method, path, needs }: Operation,
  scope: Device['scope'] | null,
  readsOnly: boolean,
): Expected => {
  if (isKeyed(path)) return 'not identified';
  if (needs === null) return 'let in';
  if (scope === null) return 'not identified';
  if (readsOnly && method !== 'GET') return 'not allowed';
  return REACH[scope] >= REACH[needs] ? 'let in' : 'not allowed';
};

it('each operation lets in whom it should and nobody else', async () => {
  const credentials: readonly {
    readonly name: string;
    readonly headers: () => Record<string, string>;
    readonly scope: Device['scope'] | null;
    readonly readsOnly?: true;
  }[] = [
    { name: 'nobody', headers: () => ({}), scope: null },
    { name: 'a token nobody has', headers: () => bearer('A'.repeat(43)), scope: null },
    { name: 'no token at all', headers: () => bearer(''), scope: null },
    {
      name: 'a token in another scheme',
      headers: () => ({ authorization: `Basic ${service.tokens.own}` }),
      scope: null,
    },
    {
      name: 'a token in the wrong case',
      headers: () => bearer(service.tokens.own.toUpperCase()),
      scope: null,
    },
    {
      // What a page elsewhere can make a browser send: the cookie alone.
      name: 'a session, without what tells a forged request',
      headers: () => ({ cookie: `${SESSION_COOKIE}=${service.tokens.own}` }),
      scope: 'own',
      readsOnly: true,
    },
    { name: 'an owner’s, revoked', headers: () => bearer(revoked), scope: null },
    ...(['speak', 'help', 'own'] as const).map((scope) => ({
      name: scope,
      headers: () => bearer(service.tokens[scope]),
      scope,
    })),
  ];
  const wrong: string[] = [];
  let cells = 0;
  for (const { name, headers, scope, readsOnly } of credentials)
    for (const operation of operations) {
      const { method, path } = operation;
      // The socket answers a plain request with neither; it has its tests in ../server.
      if (path === '/v1/conversation') continue;
      const expected = expectedOf(operation, scope, readsOnly === true);
      const { statusCode } = await service.app.inject({
        method: method as 'GET',
        url: path.replace(/\{\w+\}/g, 'x'),
        headers: headers(),
      });
      const got: Expected =
        statusCode === 401 ? 'not identified' : statusCode === 403 ? 'not allowed' : 'let in';
      if (got !== expected || statusCode >= 500)
        wrong.push(`${name}: ${method} ${path}: ${statusCode}, not ${expected}`);
      cells += 1;
    }
  expect(wrong).toEqual([]);
  expect(cells).toBeGreaterThan(400);
});
