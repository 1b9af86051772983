import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../src/store/index.js';
import { bearer, letIn, startService, THURSDAY, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

const call = (
  method: 'GET' | 'POST' | 'PATCH' | 'DELETE',
  url: string,
  token: string | null,
  payload?: object,
) =>
  service.app.inject({
    method,
    url,
    headers: token === null ? {} : bearer(token),
    ...(payload ? { payload } : {}),
  });

describe('pairing', () => {
  it('lets a device in once an owner confirms its code', async () => {
    const started = await call('POST', '/v1/pairings', null, { name: 'pantry speaker' });
    expect(started.statusCode).toBe(201);
    const { code, spoken, token } = started.json<{ code: string; spoken: string; token: string }>();
    expect(code).toMatch(/^\d{8}$/);
    expect(spoken.replace(/\D/g, '')).toBe(code);
    expect((await call('GET', '/v1/me', token)).statusCode).toBe(401);

    // Said and typed in two groups.
    const confirmed = await call('POST', '/v1/pairings/confirm', service.tokens.own, {
      code: `${code.slice(0, 4)} ${code.slice(4)}`,
      scope: 'help',
    });
    expect(confirmed.statusCode).toBe(201);
    const me = await call('GET', '/v1/me', token);
    expect(me.json()).toMatchObject({
      household: { id: 'marta' },
      device: { name: 'pantry speaker', scope: 'help' },
    });

    const twice = await call('POST', '/v1/pairings/confirm', service.tokens.own, { code });
    expect(twice.json()).toMatchObject({ code: 'code-not-valid' });
  });

  it('is for owners to confirm', async () => {
    const response = await call('POST', '/v1/pairings/confirm', service.tokens.help, { code: '00000000' });
    expect(response.statusCode).toBe(403);
  });

  it('limits guesses of one household’s owners', async () => {
    const guessed = await startService();
    const { token } = await letIn(guessed.store, 'marta', 'own');
    const codes: string[] = [];
    for (let n = 0; n < 6; n += 1) {
      const response = await guessed.app.inject({
        method: 'POST',
        url: '/v1/pairings/confirm',
        headers: bearer(n % 2 === 0 ? token : guessed.tokens.own),
        payload: { code: `0000000${n}` },
      });
      codes.push(response.json<{ code: string }>().code);
    }
    await guessed.close();
    expect(codes).toEqual([...Array<string>(5).fill('code-not-valid'), 'too-many-requests']);
  });

  it('makes codes that differ', async () => {
    const codes = new Set<string>();
    for (let n = 0; n < 50; n += 1) {
      // One address may ask for a few only.
      const started = await service.app.inject({
        method: 'POST',
        url: '/v1/pairings',
        payload: { name: 'x' },
        remoteAddress: `192.0.2.${n}`,
      });
      codes.add(started.json<{ code: string }>().code);
    }
    expect(codes.size).toBe(50);
  });

  it('may be asked of one server and confirmed at another', async () => {
    const other = await startService({}, { store: service.store, householdId: 'elsewhere' });
    const started = await call('POST', '/v1/pairings', null, { name: 'hall speaker' });
    const { code, token } = started.json<{ code: string; token: string }>();
    const confirmed = await other.app.inject({
      method: 'POST',
      url: '/v1/pairings/confirm',
      headers: bearer(service.tokens.own),
      payload: { code },
    });
    expect(confirmed.statusCode).toBe(201);
    expect((await call('GET', '/v1/me', token)).json()).toMatchObject({ device: { name: 'hall speaker' } });
    await other.app.close();
  });

  it('ends after ten minutes', async () => {
    const started = await call('POST', '/v1/pairings', null, { name: 'late speaker' });
    const { code, expiresAt } = started.json<{ code: string; expiresAt: string }>();
    service.setNow(expiresAt);
    const confirmed = await call('POST', '/v1/pairings/confirm', service.tokens.own, { code });
    service.setNow(THURSDAY);
    expect(confirmed.json()).toMatchObject({ code: 'code-not-valid' });
  });

  it('keeps no token and no code as it is', async () => {
    const started = await call('POST', '/v1/pairings', null, { name: 'x' });
    const { token } = started.json<{ token: string }>();
    const stored = JSON.stringify(await service.store.devices('marta'));
    expect(stored).not.toContain(token);
    expect(stored).not.toContain(service.tokens.own);
    expect(JSON.stringify(service.logged)).not.toContain(token);
  });
});

describe('devices', () => {
  it('are listed, renamed and revoked by an owner', async () => {
    const { token, device } = await letIn(service.store, 'marta', 'speak');
    const renamed = await call('PATCH', `/v1/devices/${device.id}`, service.tokens.own, {
      name: 'by the sink',
    });
    expect(renamed.json()).toMatchObject({ name: 'by the sink', thisOne: false });
    const list = (await call('GET', '/v1/devices', service.tokens.own)).json<
      { name: string; thisOne: boolean }[]
    >();
    expect(list.find((one) => one.name === 'by the sink')).toBeDefined();
    expect(list.filter((one) => one.thisOne)).toHaveLength(1);
    expect(JSON.stringify(list)).not.toMatch(/token|hash/i);

    expect((await call('GET', '/v1/me', token)).statusCode).toBe(200);
    await call('DELETE', `/v1/devices/${device.id}`, service.tokens.own);
    expect((await call('GET', '/v1/me', token)).statusCode).toBe(401);
  });

  it('keep at least one owner', async () => {
    const alone = await startService();
    for (const change of [
      { method: 'DELETE' as const },
      { method: 'PATCH' as const, payload: { scope: 'speak' } },
    ]) {
      const response = await alone.app.inject({
        url: `/v1/devices/${alone.devices.own.id}`,
        headers: bearer(alone.tokens.own),
        ...change,
      });
      expect(response.statusCode).toBe(409);
    }
    await alone.close();
  });
});

describe('a page’s session', () => {
  it('is an HttpOnly cookie, and changes need its second token too', async () => {
    const started = await call('POST', '/v1/session', null, { token: service.tokens.help });
    expect(started.statusCode).toBe(200);
    const set = started.cookies.map(({ name, httpOnly, sameSite, secure }) => ({
      name,
      httpOnly,
      sameSite,
      secure,
    }));
    expect(set).toEqual(
      expect.arrayContaining([
        { name: 'tellshelf_session', httpOnly: true, sameSite: 'Strict', secure: true },
        { name: 'tellshelf_csrf', httpOnly: true, sameSite: 'Strict', secure: true },
      ]),
    );
    const cookies = Object.fromEntries(started.cookies.map(({ name, value }) => [name, value]));
    const { csrfToken } = started.json<{ csrfToken: string }>();
    const add = (headers: Record<string, string>) =>
      service.app.inject({
        method: 'POST',
        url: '/v1/kitchen/list',
        cookies,
        headers,
        payload: { name: 'tea' },
      });

    expect((await service.app.inject({ url: '/v1/kitchen/list', cookies })).statusCode).toBe(200);
    const forged = await add({});
    expect(forged.statusCode).toBe(403);
    expect(forged.json()).toMatchObject({ code: 'csrf-token-missing' });
    expect((await add({ 'x-csrf-token': 'made-up' })).statusCode).toBe(403);
    expect((await add({ 'x-csrf-token': csrfToken })).statusCode).toBe(200);
  });

  it('is not given for a token that is not one', async () => {
    expect((await call('POST', '/v1/session', null, { token: 'tsf_guess' })).statusCode).toBe(401);
  });
});

describe('a household', () => {
  it('is exported whole, and deleted completely when its name is said', async () => {
    const alone = await startService();
    const headers = bearer(alone.tokens.own);
    const exported = await alone.app.inject({ url: '/v1/household/export', headers });
    const data = exported.json<{ records: { item: unknown[] } }>();
    expect(data.records.item).toHaveLength(alone.kitchen.items.size);
    const elsewhere = openSqliteStore(':memory:');
    await elsewhere.migrate();
    await elsewhere.restoreHousehold(data);
    expect((await elsewhere.loadKitchen('marta'))?.items).toEqual(alone.kitchen.items);
    await elsewhere.close();
    expect(exported.body).not.toContain(alone.devices.own.tokenHash);

    const wrong = await alone.app.inject({
      method: 'DELETE',
      url: '/v1/household',
      headers,
      payload: { name: 'x' },
    });
    expect(wrong.statusCode).toBe(409);
    const gone = await alone.app.inject({
      method: 'DELETE',
      url: '/v1/household',
      headers,
      payload: { name: alone.kitchen.household.name },
    });
    expect(gone.statusCode).toBe(204);
    expect((await alone.app.inject({ url: '/v1/me', headers })).statusCode).toBe(401);
    expect(await alone.store.householdIds()).toEqual([]);
    await alone.close();
  });
});
