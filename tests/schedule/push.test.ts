/** Notices by Web Push: encrypted for the browser that asked, to those they are for, each device once. */
import { createECDH, randomBytes, type ECDH } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import webPush from 'web-push';
import {
  createPush,
  createScheduler,
  type Carrier,
  type Delivery,
  type Notice,
} from '../../src/schedule/index.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import { letIn } from '../support/service.js';
import { kitchenWith, reminder } from './kitchens.js';
import { householdsOver } from './port.js';

const NOON = '2026-05-14T17:00:00.000Z';
const everybody = { personId: null, quiet: false };
const { publicKey, privateKey } = webPush.generateVAPIDKeys();
const signal = (): AbortSignal => AbortSignal.timeout(10_000);

interface Posted {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

let store: Store;
let posted: Posted[];
/** What the push service answers to each address. */
let answer: (url: string) => number | Error;
let carrier: Carrier;

beforeEach(async () => {
  store = openSqliteStore(':memory:');
  await store.migrate();
  await store.createHousehold(kitchenWith({ reminders: [], household: { summaryAt: null } }), NOON);
  posted = [];
  answer = () => 201;
  carrier = createPush({
    store,
    publicKey,
    privateKey,
    contact: 'mailto:runner@kitchen.example',
    fetch: (input, init) => {
      const url = String(input);
      const { headers, body } = init as { headers: Record<string, string>; body: Uint8Array };
      posted.push({ url, headers, body: Buffer.from(body) });
      const status = answer(url);
      return status instanceof Error
        ? Promise.reject(status)
        : Promise.resolve(new Response(null, { status, headers: { 'retry-after': '90' } }));
    },
  });
});

/** A browser of a device that is let in: it alone can read what it is sent. */
const browser = async (name: string, personId: string | null = null) => {
  const keys = createECDH('prime256v1');
  const auth = randomBytes(16).toString('base64url');
  const p256dh = keys.generateKeys('base64url');
  const { device } = await letIn(store, 'h1', 'speak');
  if (personId !== null)
    await store.changeDevices('h1', {
      deeds: [{ kind: 'change', id: device.id, personId }],
      by: null,
      at: NOON,
      whence: null,
    });
  const endpoint = `https://push.example/${name}`;
  await store.keepNoticeAddress('h1', { deviceId: device.id, endpoint, p256dh, auth });
  return { deviceId: device.id, endpoint, keys, auth };
};

const delivery = (id = 'timer.r1.1778778000'): Delivery => ({
  id,
  household: 'h1',
  kind: 'timer',
  due: NOON,
  sentAt: NOON,
  speech: { ssml: '<speak/>', text: 'The rice timer is done.', sentences: ['The rice timer is done.'] },
});

/** Decrypted with the library that the encryption was written against (RFC 8188). */
const read = async (body: Buffer, { keys, auth }: { keys: ECDH; auth: string }): Promise<Notice> => {
  const name = 'http_ece';
  const ece = (await import(name)) as {
    default: { decrypt(body: Buffer, how: object): Buffer };
  };
  const plain = ece.default.decrypt(body, { version: 'aes128gcm', privateKey: keys, authSecret: auth });
  return JSON.parse(plain.toString('utf8')) as Notice;
};

describe('a notice', () => {
  it('can be read by the browser it is for, and says who sends it', async () => {
    const phone = await browser('phone');
    expect(await carrier.carry(delivery(), signal(), everybody)).toBe('spoken');
    const [one] = posted;
    expect(one?.url).toBe(phone.endpoint);
    expect(await read(one!.body, phone)).toEqual({
      id: 'timer.r1.1778778000',
      kind: 'timer',
      text: 'The rice timer is done.',
      quiet: false,
    });
    expect(one?.body.includes('rice')).toBe(false);
    const token = /t=([^,]+)/.exec(one?.headers['Authorization'] ?? '')?.[1] ?? '';
    const claims = JSON.parse(Buffer.from(token.split('.')[1] ?? '', 'base64url').toString()) as object;
    expect(claims).toMatchObject({ aud: 'https://push.example', sub: 'mailto:runner@kitchen.example' });
    expect(one?.headers).toMatchObject({ TTL: '3600', Urgency: 'high' });
  });

  it('is quiet in quiet hours, and cut where it would be too long for a push service', async () => {
    const phone = await browser('phone');
    const long = delivery();
    const text = 'é'.repeat(3_000);
    await carrier.carry({ ...long, kind: 'summary', speech: { ...long.speech, text } }, signal(), {
      personId: null,
      quiet: true,
    });
    expect(posted[0]?.body.length).toBeLessThanOrEqual(4_096);
    const got = await read(posted[0]!.body, phone);
    expect(got.quiet).toBe(true);
    expect(text.startsWith(got.text)).toBe(true);
    expect(got.text.length).toBeGreaterThan(500);
  });

  it('goes to the devices of whom it is for, and to everybody’s', async () => {
    const [hers, his, all] = [await browser('hers', 'p1'), await browser('his', 'p2'), await browser('all')];
    await carrier.carry(delivery(), signal(), { personId: 'p1', quiet: false });
    expect(posted.map(({ url }) => url).sort()).toEqual([all.endpoint, hers.endpoint].sort());
    await carrier.carry(delivery('timer.r2.1778778000'), signal(), everybody);
    expect(
      posted
        .slice(2)
        .map(({ url }) => url)
        .sort(),
    ).toEqual([all.endpoint, hers.endpoint, his.endpoint].sort());
  });

  it('goes nowhere, and is not tried again, where nobody asked for notices', async () => {
    expect(await carrier.carry(delivery(), signal(), everybody)).toBe('unwanted');
    const { deviceId } = await browser('sent-away');
    await store.changeDevices('h1', {
      deeds: [{ kind: 'send-away', id: deviceId }],
      by: null,
      at: NOON,
      whence: null,
    });
    expect(await carrier.carry(delivery(), signal(), everybody)).toBe('unwanted');
    expect(posted).toEqual([]);
  });

  it('forgets an address that the push service no longer knows, and only that one', async () => {
    const gone = await browser('gone');
    await browser('here');
    answer = (url) => (url === gone.endpoint ? 410 : 201);
    expect(await carrier.carry(delivery(), signal(), everybody)).toBe('spoken');
    expect((await store.noticeAddresses('h1')).map(({ endpoint }) => endpoint)).toEqual([
      'https://push.example/here',
    ]);
  });

  it.each([503, 429, new Error('not reached')])(
    'that failed with %s for one device is tried again for that one alone',
    async (fault) => {
      const bad = await browser('bad');
      const good = await browser('good');
      answer = (url) => (url === bad.endpoint ? fault : 201);
      await expect(carrier.carry(delivery(), signal(), everybody)).rejects.toMatchObject({
        final: false,
        ...(fault instanceof Error ? {} : { retryAfter: 90 }),
      });
      expect(posted.filter(({ url }) => url === good.endpoint)).toHaveLength(1);
      answer = () => 201;
      expect(await carrier.carry(delivery(), signal(), everybody)).toBe('spoken');
      expect(posted.filter(({ url }) => url === good.endpoint)).toHaveLength(1);
      expect(posted.filter(({ url }) => url === bad.endpoint)).toHaveLength(2);
    },
  );

  it('has keys that are keys, or the service does not start', () => {
    const make = (over: object) => () =>
      createPush({ store, publicKey, privateKey, contact: 'mailto:a@b.example', ...over });
    expect(make({})).not.toThrow();
    expect(make({ privateKey: 'x' })).toThrow();
    expect(make({ contact: 'nobody' })).toThrow();
  });
});

describe('the scheduler with notices', () => {
  it('sends each once to those who asked, and settles what nobody asked for', async () => {
    const other = openSqliteStore(':memory:');
    await other.migrate();
    store = other;
    await store.createHousehold(
      kitchenWith({
        reminders: [reminder('t1', NOON, { label: 'rice' })],
        household: { summaryAt: null },
      }),
      '2026-05-14T12:00:00.000Z',
    );
    const phone = await browser('phone');
    const out = createPush({
      store,
      publicKey,
      privateKey,
      contact: 'mailto:a@b.example',
      fetch: (input, init) => {
        posted.push({
          url: String(input),
          headers: {},
          body: Buffer.from((init as { body: Uint8Array }).body),
        });
        return Promise.resolve(new Response(null, { status: 201 }));
      },
    });
    const scheduler = createScheduler({
      store,
      households: householdsOver(store, () => NOON),
      carriers: [out],
      owner: 'p1',
      now: () => NOON,
    });
    await scheduler.planAll();
    expect(await scheduler.tick()).toBe(1);
    expect(await scheduler.tick()).toBe(0);
    expect(posted).toHaveLength(1);
    expect(await read(posted[0]!.body, phone)).toMatchObject({ text: 'The rice timer is done.' });
  });
});
