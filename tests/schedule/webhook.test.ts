/** Webhooks over loopback, checked with the specification's own verifying library and by hand. */
import { fork, type ChildProcess } from 'node:child_process';
import { createHmac, randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Webhook } from 'standardwebhooks';
import { projectFile } from '../../src/project-files.js';
import { createWebhook, type Delivery } from '../../src/schedule/index.js';
import { openSqliteStore } from '../../src/store/index.js';
import { kitchenWith, reminder } from './kitchens.js';

const everybody = { personId: null, quiet: false };

interface Posted {
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

const secretBytes = randomBytes(32);
const secret = `whsec_${secretBytes.toString('base64')}`;
let server: Server;
let url: string;
let posted: Posted[];
let reply: (n: number) => { status: number; headers?: Record<string, string> } | null;

beforeEach(async () => {
  posted = [];
  reply = () => ({ status: 204 });
  server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      posted.push({ headers: request.headers, body: Buffer.concat(chunks).toString('utf8') });
      const answer = reply(posted.length);
      // No answer at all: the sender has to give up by itself.
      if (answer !== null) response.writeHead(answer.status, answer.headers).end();
    });
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/told`;
});
afterEach(async () => {
  server.closeAllConnections();
  server.close();
  await once(server, 'close');
});

const delivery = (): Delivery => ({
  id: 'timer.r1.1778778000',
  household: 'h1',
  kind: 'timer',
  due: '2026-05-14T17:00:00.000Z',
  // The verifying library wants a time close to its own clock.
  sentAt: new Date().toISOString(),
  speech: { ssml: '<speak/>', text: 'The “rice” timer is done.', sentences: ['The “rice” timer is done.'] },
});
const soon = (): AbortSignal => AbortSignal.timeout(5_000);
const carry = (signal = soon()) => createWebhook({ url, secret }).carry(delivery(), signal, everybody);

describe('a webhook', () => {
  it('is posted as JSON, signed so that its receiver can trust it', async () => {
    expect(await carry()).toBe('spoken');
    const [{ headers, body }] = posted as [Posted];
    expect(headers['content-type']).toBe('application/json');
    expect(JSON.parse(body)).toMatchObject({ id: 'timer.r1.1778778000', household: 'h1', kind: 'timer' });
    const sent = headers as Record<string, string>;
    expect(() => new Webhook(secret).verify(body, sent)).not.toThrow();
    expect(() => new Webhook(secret).verify(body.replace('rice', 'milk'), sent)).toThrow();
    expect(() => new Webhook(randomBytes(32).toString('base64')).verify(body, sent)).toThrow();
    // The same by hand: HMAC-SHA256 over "id.timestamp.body", base64, with the version before it.
    const signed = `${headers['webhook-id']}.${headers['webhook-timestamp']}.${body}`;
    const mac = createHmac('sha256', secretBytes).update(signed).digest('base64');
    expect(headers['webhook-signature']).toBe(`v1,${mac}`);
  });

  it('keeps its id when it is sent again', async () => {
    reply = (n) => ({ status: n === 1 ? 500 : 200 });
    await expect(carry()).rejects.toThrow('webhook answered 500');
    expect(await carry()).toBe('spoken');
    expect(posted[0]?.headers['webhook-id']).toBe('h1.timer.r1.1778778000');
    expect(posted[1]?.headers['webhook-id']).toBe(posted[0]?.headers['webhook-id']);
  });

  it('hears when to come back, and when not to', async () => {
    reply = () => ({ status: 503, headers: { 'retry-after': '120' } });
    await expect(carry()).rejects.toMatchObject({ retryAfter: 120, final: false });
    reply = () => ({ status: 410 });
    await expect(carry()).rejects.toMatchObject({ final: true });
  });

  it('does not follow a redirect to somewhere nobody chose', async () => {
    reply = () => ({ status: 307, headers: { location: url.replace('told', 'elsewhere') } });
    await expect(carry()).rejects.toThrow();
    expect(posted).toHaveLength(1);
  });

  it('gives up on a receiver that never answers', async () => {
    reply = () => null;
    await expect(carry(AbortSignal.timeout(200))).rejects.toThrow();
  });

  it('cannot be made without a web address and a secret', () => {
    expect(() => createWebhook({ url: 'ftp://example.org', secret })).toThrow(TypeError);
    expect(() => createWebhook({ url: 'nonsense', secret })).toThrow();
    expect(() => createWebhook({ url, secret: '' })).toThrow();
  });

  it('goes only to the households it is for', () => {
    const some = createWebhook({ url, secret, households: ['h1'] });
    expect([some.serves('h1'), some.serves('h2')]).toEqual([true, false]);
    expect(createWebhook({ url, secret }).serves('h2')).toBe(true);
  });
});

describe('three processes on one store', () => {
  it('post each telling once', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'processes-'));
    const file = join(folder, 'kitchen.db');
    const store = openSqliteStore(file);
    const processes: ChildProcess[] = [];
    try {
      await store.migrate();
      const due = '2026-05-14T17:00:00.000Z';
      await store.createHousehold(
        kitchenWith({
          reminders: Array.from({ length: 30 }, (_, i) => reminder(`t${i}`, due, { label: `dish ${i}` })),
          household: { summaryAt: null },
        }),
        due,
      );
      for (let i = 0; i < 3; i++)
        processes.push(
          fork(
            projectFile('tests', 'schedule', 'process.ts'),
            [file, url, secret, '2026-05-14T17:00:01.000Z'],
            {
              execArgv: ['--import', 'tsx'],
            },
          ),
        );
      await Promise.all(processes.map((one) => once(one, 'message')));
      const over = Promise.all(processes.map((one) => once(one, 'exit')));
      for (const one of processes) one.send('go');
      await over;
      const ids = posted.map(({ headers }) => headers['webhook-id']);
      expect(new Set(ids).size).toBe(30);
      expect(ids).toHaveLength(30);
    } finally {
      for (const one of processes) one.kill();
      await store.close();
      rmSync(folder, { recursive: true });
    }
  }, 60_000);
});
