import { connect as tcp } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problem } from '../../shared/wire/problem.js';
import { readConfig } from '../../src/server/config.js';
import { PROBLEMS } from '../../src/server/problems.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

describe('health', () => {
  it('is live and ready', async () => {
    expect((await service.app.inject('/health/live')).json()).toEqual({ status: 'ok' });
    expect((await service.app.inject('/health/ready')).json()).toEqual({ status: 'ok' });
  });

  it('is not ready when the store does not answer', async () => {
    const broken = await startService();
    await broken.store.close();
    const response = await broken.app.inject('/health/ready');
    expect(response.statusCode).toBe(503);
    expect(response.headers['retry-after']).toBe('5');
    expect((await broken.app.inject('/health/live')).statusCode).toBe(200);
    await broken.app.close();
  });
});

describe('metrics', () => {
  it('count turns without words or ids', async () => {
    await say(service, 'where is the heliotrope marmalade');
    const { body } = await service.app.inject('/metrics');
    expect(body).toMatch(/tellshelf_turns_total\{way="http",verdict="[a-z-]+"\} [1-9]/);
    expect(body).toMatch(/tellshelf_turn_seconds_bucket/);
    expect(body).not.toMatch(/marmalade|marta/i);
  });
});

describe('the description of the API', () => {
  it('is OpenAPI 3.1 made from the schemas, with the socket’s messages', async () => {
    const document = (await service.app.inject('/v1/openapi.json')).json<{
      openapi: string;
      paths: Record<string, unknown>;
      components: { schemas: Record<string, unknown> };
    }>();
    expect(document.openapi).toBe('3.1.0');
    expect(Object.keys(document.paths)).toEqual(
      expect.arrayContaining(['/v1/turns', '/v1/conversation', '/v1/kitchen/items/{id}']),
    );
    expect(Object.keys(document.components.schemas)).toEqual(
      expect.arrayContaining(['TurnRequestInput', 'TurnReply', 'ClientMessage', 'ServerMessage', 'Problem']),
    );
    expect(JSON.stringify(document)).not.toMatch(/"\$ref":"#\/definitions/);
  });

  it('reads as a page without script', async () => {
    const page = await service.app.inject('/v1/reference');
    expect(page.headers['content-type']).toMatch('text/html');
    expect(page.body).toMatch(/<html lang="en">/);
    expect(page.body).not.toMatch(/<script/);
    for (const code of Object.keys(PROBLEMS)) expect(page.body).toContain(`<tr id="${code}">`);
  });
});

describe('guards', () => {
  it('sends headers that keep pages to themselves', async () => {
    const { headers } = await service.app.inject('/health/live');
    expect(headers['content-security-policy']).toMatch(/default-src 'self'/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['strict-transport-security']).toBeDefined();
  });

  it('limits an address, and a device, and says when to come back', async () => {
    const strict = await startService({ ADDRESS_RATE: '12', DEVICE_RATE: '3' });
    const ask = (token: string) => strict.app.inject({ url: '/v1/me', headers: bearer(token) });
    const statuses: number[] = [];
    for (let n = 0; n < 4; n += 1) statuses.push((await ask(strict.tokens.speak)).statusCode);
    expect(statuses).toEqual([200, 200, 200, 429]);
    expect((await ask(strict.tokens.help)).statusCode).toBe(200);
    let last = await ask('tsf_guess');
    for (let n = 0; n < 10; n += 1) last = await ask(`tsf_guess${n}`);
    expect(last.statusCode).toBe(429);
    expect(Number(last.headers['retry-after'])).toBeGreaterThan(0);
    expect(problem.parse(last.json()).code).toBe('too-many-requests');
    await strict.close();
  });

  it('answers what is not there as a problem', async () => {
    for (const url of ['/nothing', '/v1/nothing', '/v1/turns/../../etc/passwd', '/v1/kitchen/items/%00']) {
      const response = await service.app.inject({ url, headers: bearer(service.tokens.own) });
      expect(response.statusCode, url).toBe(404);
      expect(problem.parse(response.json()).code).toBe('not-found');
    }
  });

  it('hangs up on a client that never finishes its headers', async () => {
    const slow = await startService();
    // Fastify's own limit is seconds; the test does not wait for it but reads what is set.
    expect(slow.app.server.headersTimeout).toBeLessThanOrEqual(10_000);
    expect(slow.app.server.requestTimeout).toBeLessThanOrEqual(15_000);
    const address = new URL(await slow.app.listen({ host: '127.0.0.1', port: 0 }));
    const broken = await new Promise<string>((resolve) => {
      const socket = tcp(Number(address.port), '127.0.0.1', () =>
        socket.write('GET / HTTP/1.1\r\nbad header\r\n\r\n'),
      );
      socket.on('data', (data) => resolve(data.toString()));
    });
    expect(broken).toMatch(/^HTTP\/1.1 400/);
    await slow.close();
  });
});

describe('settings', () => {
  it('name each one that is wrong', () => {
    expect(() => readConfig({ PORT: 'eighty', LOG_LEVEL: 'loud' })).toThrow(/PORT.*LOG_LEVEL/s);
  });
  it('log no speech unless asked', () => {
    expect(readConfig({}).LOG_SPEECH).toBe(false);
    expect(readConfig({ LOG_SPEECH: 'true' }).LOG_SPEECH).toBe(true);
  });
});
