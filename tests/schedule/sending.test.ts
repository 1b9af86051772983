/** The whole way out: a timer set in a running service is posted once, and counts as heard when somebody heard it. */
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import { pino } from 'pino';
import { expect, it } from 'vitest';
import { startSending } from '../../src/cli/serve/sending.js';
import { setTimer, isRefused } from '../../src/kitchen/index.js';
import { readConfig } from '../../src/server/index.js';
import { bearer, startService, THURSDAY } from '../support/service.js';

it('a timer that is due in a running service is posted once, and told until somebody heard it', async () => {
  const posted: string[] = [];
  const receiver = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      posted.push(Buffer.concat(chunks).toString('utf8'));
      response.writeHead(204).end();
    });
  }).listen(0, '127.0.0.1');
  await once(receiver, 'listening');
  const service = await startService();
  const { households, store, kitchen } = service;
  const householdId = kitchen.household.id;
  let now = THURSDAY;
  const stop = await startSending({
    store,
    households,
    config: readConfig({
      WEBHOOK_URL: `http://127.0.0.1:${(receiver.address() as AddressInfo).port}/`,
      WEBHOOK_SECRET: randomBytes(32).toString('base64'),
    }),
    now: () => now,
    logger: pino({ level: 'silent' }),
  });
  try {
    await households.change(
      { householdId, personId: null, deviceId: null },
      { id: 'set', said: 'set' },
      (doing) => {
        const change = setTimer(doing, { seconds: 60, label: 'rice' });
        return isRefused(change) ? { refused: change } : { changes: [change] };
      },
    );
    await wait(1_500);
    expect(posted.filter((body) => body.includes('"timer"'))).toEqual([]);
    now = new Date(Date.parse(THURSDAY) + 61_000).toISOString();
    service.setNow(now);
    for (let i = 0; i < 100 && posted.length === 0; i++) await wait(100);
    await wait(1_200);
    const timers = posted.map((body) => JSON.parse(body) as { kind: string; speech: { text: string } });
    expect(timers.filter(({ kind }) => kind === 'timer').map(({ speech }) => speech.text)).toEqual([
      'The rice timer is done.',
    ]);
    // A machine's yes is not somebody's ear: it is still to be told, until whoever heard it says so.
    const open = async (): Promise<number> =>
      [...((await store.loadKitchen(householdId))?.reminders.values() ?? [])].filter(
        (one) => one.label === 'rice' && one.deliveredAt === null,
      ).length;
    expect(await open()).toBe(1);
    const { id } = JSON.parse(posted[0] ?? '{}') as { id: string };
    const heard = await service.app.inject({
      method: 'POST',
      url: `/v1/unasked/${id}/heard`,
      headers: bearer(service.tokens.speak),
    });
    expect(heard.statusCode).toBe(204);
    expect(await open()).toBe(0);
  } finally {
    await stop();
    await service.close();
    receiver.close();
  }
});

it('settings that cannot work are told at the start', async () => {
  expect(() => readConfig({ MQTT_URL: 'http://wrong' })).toThrow(/MQTT_URL/);
  const service = await startService();
  try {
    await expect(
      startSending({
        store: service.store,
        households: service.households,
        config: readConfig({ WEBHOOK_URL: 'http://127.0.0.1:1/' }),
        now: () => THURSDAY,
        logger: pino({ level: 'silent' }),
      }),
    ).rejects.toThrow('WEBHOOK_SECRET');
  } finally {
    await service.close();
  }
});
