/** Where a device takes notices: asked for by itself, outside the house only, gone with the device. */
import webPush from 'web-push';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isOutside } from '../../src/server/devices/notices.js';
import { bearer, letIn, startService, type Service } from '../support/service.js';

const { publicKey } = webPush.generateVAPIDKeys();
let service: Service;
let without: Service;
beforeAll(async () => {
  service = await startService({ NOTICE_PUBLIC_KEY: publicKey });
  without = await startService();
});
afterAll(async () => {
  await service.close();
  await without.close();
});

const address = (name = 'one') => ({
  endpoint: `https://push.kitchen.example/${name}`,
  p256dh: 'B'.repeat(87),
  auth: 'a'.repeat(22),
});
const call = (method: 'GET' | 'PUT' | 'DELETE', token: string, payload?: object, on: Service = service) =>
  on.app.inject({ method, url: '/v1/notices', headers: bearer(token), ...(payload ? { payload } : {}) });
const here = async (token: string) => (await call('GET', token)).json<{ here: boolean }>().here;

describe('notices', () => {
  it('come to the device that asks, and to no other, until it asks no more', async () => {
    const { speak, help } = service.tokens;
    expect((await call('GET', speak)).json()).toEqual({ key: publicKey, here: false });
    expect((await call('PUT', speak, address())).statusCode).toBe(204);
    expect([await here(speak), await here(help)]).toEqual([true, false]);
    expect((await call('PUT', speak, address('two'))).statusCode).toBe(204);
    expect((await service.store.noticeAddresses('marta')).map(({ endpoint }) => endpoint)).toEqual([
      'https://push.kitchen.example/two',
    ]);
    expect((await call('DELETE', speak)).statusCode).toBe(204);
    expect(await here(speak)).toBe(false);
  });

  it('end with the device', async () => {
    const { token, device } = await letIn(service.store, 'marta', 'speak');
    await call('PUT', token, address('lost'));
    await service.app.inject({
      method: 'DELETE',
      url: `/v1/devices/${device.id}`,
      headers: bearer(service.tokens.own),
    });
    expect(await service.store.noticeAddresses('marta')).toEqual([]);
  });

  it('are not to be had where the service has no key', async () => {
    expect((await call('GET', without.tokens.own, undefined, without)).json()).toEqual({
      key: null,
      here: false,
    });
    expect((await call('PUT', without.tokens.own, address(), without)).statusCode).toBe(409);
  });

  it.each(['https://push.kitchen.example/x', 'https://a.b.example:443/x'])('may go to %s', (endpoint) =>
    expect(isOutside(endpoint)).toBe(true),
  );

  it.each([
    'http://push.kitchen.example/x',
    'https://push.kitchen.example:8443/x',
    'https://somebody@push.kitchen.example/x',
    'https://127.0.0.1/x',
    'https://2130706433/x',
    'https://0x7f.1/x',
    'https://[::1]/x',
    'https://192.168.1.1/x',
    'https://localhost/x',
    'https://localhost./x',
    'https://printer.local/x',
    'https://printer.LOCAL./x',
    'https://door.internal/x',
    'https://nas/x',
    'https://1.0.0.127.in-addr.arpa/x',
    'nonsense',
  ])('never to %s', async (endpoint) => {
    expect(isOutside(endpoint)).toBe(false);
    const refused = await call('PUT', service.tokens.own, { ...address(), endpoint });
    expect([400, 409]).toContain(refused.statusCode);
  });
});
