/** What a device may do is what it may do now, at every server, over HTTP and over sockets that stay open. */
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import WebSocket from 'ws';
import { addDeviceCommands } from '../../src/cli/devices.js';
import { openSqliteStore, type Store } from '../../src/store/index.js';
import type { ServerMessage } from '../../shared/wire/socket.js';
import { Command } from 'commander';
import { bearer, letIn, say, startService, THURSDAY, type Service } from '../support/service.js';

let folder: string;
let stores: Store[];
/** Two servers over one file: what one does, the other finds out from the store alone. */
let here: Service;
let there: Service;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tellshelf-rights-'));
  stores = [0, 1].map(() => openSqliteStore(join(folder, 'kitchen.sqlite')));
  here = await startService({}, { store: stores[0]! });
  there = await startService({}, { store: stores[1]! });
});
afterEach(async () => {
  await here.close();
  await there.close();
  for (const store of stores) await store.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Client {
  readonly heard: ServerMessage[];
  readonly closed: Promise<number>;
  send(message: unknown): void;
  next<T extends ServerMessage['type']>(type: T): Promise<Extract<ServerMessage, { type: T }>>;
}

const connect = async (service: Service, token: string): Promise<Client> => {
  const port =
    (service.app.server.address() as AddressInfo | null)?.port ??
    Number(new URL(await service.app.listen({ port: 0, host: '127.0.0.1' })).port);
  const socket = new WebSocket(`ws://127.0.0.1:${port}/v1/conversation`, { headers: bearer(token) });
  const heard: ServerMessage[] = [];
  socket.on('message', (data: Buffer) => heard.push(JSON.parse(data.toString()) as ServerMessage));
  const closed = once(socket, 'close').then(([code]) => code as number);
  const client: Client = {
    heard,
    closed,
    send: (message) => socket.send(JSON.stringify(message)),
    next: async (type) => {
      for (;;) {
        const at = heard.findIndex((message) => message.type === type);
        if (at >= 0) return heard.splice(at, 1)[0] as never;
        await sleep(10);
      }
    },
  };
  await client.next('welcome');
  return client;
};

const turn = (words: string) => ({
  type: 'turn',
  turn: { id: randomUUID(), conversation: 'talk', hypotheses: [{ text: words }] },
});
const at = (service: Service, method: 'PATCH' | 'DELETE', id: string, token: string, payload?: object) =>
  service.app.inject({
    method,
    url: `/v1/devices/${id}`,
    headers: bearer(token),
    ...(payload ? { payload } : {}),
  });

describe('a device that was sent away at another server', () => {
  it('hears nothing more over the socket it had open, and is cut off', async () => {
    const { token, device } = await letIn(here.store, 'marta', 'speak');
    const gone = await connect(there, token);
    const stays = await connect(there, there.tokens.speak);
    expect((await at(here, 'DELETE', device.id, here.tokens.own)).statusCode).toBe(200);
    const changed = await here.app.inject({
      method: 'POST',
      url: '/v1/kitchen/list',
      headers: bearer(here.tokens.help),
      payload: { name: 'secret medicine' },
    });
    expect(changed.statusCode).toBe(200);
    await stays.next('changed');
    expect(await gone.closed).toBe(1008);
    expect(gone.heard).toEqual([]);
  });

  it('is told of no timer, and acknowledges none', async () => {
    const { token, device } = await letIn(here.store, 'marta', 'speak');
    await say(there, 'set a rice timer for ten minutes');
    const gone = await connect(there, token);
    await at(here, 'DELETE', device.id, here.tokens.own);
    const later = new Date(Date.parse(THURSDAY) + 11 * 60_000).toISOString();
    for (const service of [here, there]) service.setNow(later);
    const stays = await connect(there, there.tokens.speak);
    const told = await stays.next('unasked');
    gone.send({ type: 'ack', id: told.id });
    expect(await gone.closed).toBe(1008);
    expect(gone.heard.filter(({ type }) => type === 'unasked')).toEqual([]);
    const timers = [...((await here.store.loadKitchen('marta'))?.reminders.values() ?? [])];
    expect(timers.filter(({ deliveredAt }) => deliveredAt !== null)).toEqual([]);
  });

  it('is cut off when it was revoked by hand on the machine', async () => {
    const { token, device } = await letIn(here.store, 'marta', 'speak');
    const gone = await connect(there, token);
    const program = new Command().exitOverride();
    addDeviceCommands(program);
    await program.parseAsync(['devices', 'revoke', device.id, '--data', folder, '--household', 'marta'], {
      from: 'user',
    });
    expect(await gone.closed).toBe(1008);
    // Who was looked up a moment ago is remembered for less than a second.
    await sleep(1_000);
    expect((await there.app.inject({ url: '/v1/me', headers: bearer(token) })).statusCode).toBe(401);
  });

  it('stays away, though it was being renamed at that moment', async () => {
    for (let round = 0; round < 8; round += 1) {
      const { token, device } = await letIn(here.store, 'marta', 'own');
      const [, gone] = await Promise.all([
        at(there, 'PATCH', device.id, token, { name: `round ${round}` }),
        at(here, 'DELETE', device.id, here.tokens.own),
        at(here, 'PATCH', device.id, there.tokens.own, { scope: 'help' }),
      ]);
      expect(gone.statusCode).toBe(200);
      const left = (await here.store.devices('marta')).find(({ id }) => id === device.id);
      expect(left?.revokedAt).not.toBeNull();
    }
  });
});

describe('an owner who is one no more', () => {
  it('may not use the socket it had open at another server as if it still were', async () => {
    const { token, device } = await letIn(here.store, 'marta', 'own');
    await letIn(here.store, 'marta', 'help');
    const client = await connect(there, token);
    client.send(turn('which devices are there'));
    await client.next('reply');
    const demoted = await at(here, 'PATCH', device.id, here.tokens.own, { scope: 'speak' });
    expect(demoted.json()).toMatchObject({ scope: 'speak' });
    client.send(turn('remove the help device'));
    const { reply } = await client.next('reply');
    expect(reply.speech.text).toMatch(/owner/i);
    client.send(turn('yes'));
    await client.next('reply');
    const devices = await here.store.devices('marta');
    expect(devices.filter(({ revokedAt }) => revokedAt !== null)).toEqual([]);
  });
});

describe('two owners', () => {
  it('cannot send each other away so that none is left', async () => {
    for (const device of await here.store.devices('marta'))
      if (device.scope === 'own')
        await here.store.changeDevices('marta', {
          deeds: [{ kind: 'send-away', id: device.id }],
          by: null,
          at: THURSDAY,
        });
    const [one, two] = [await letIn(here.store, 'marta', 'own'), await letIn(here.store, 'marta', 'own')];
    const both = await Promise.all([
      at(here, 'DELETE', two.device.id, one.token),
      at(there, 'DELETE', one.device.id, two.token),
    ]);
    expect(both.filter(({ statusCode }) => statusCode === 200)).toHaveLength(1);
    const owners = (await here.store.devices('marta')).filter(
      ({ scope, revokedAt }) => scope === 'own' && revokedAt === null,
    );
    expect(owners).toHaveLength(1);
  });
});

describe('who did what', () => {
  it('is in the devices’ journal and in the log, with what was refused', async () => {
    const { device } = await letIn(here.store, 'marta', 'speak');
    await at(here, 'DELETE', device.id, here.tokens.help);
    await at(here, 'DELETE', device.id, here.tokens.own);
    const journal = await there.app.inject({
      url: '/v1/devices/journal?limit=1',
      headers: bearer(there.tokens.own),
    });
    expect(journal.json()).toEqual([
      expect.objectContaining({
        deed: 'send-away',
        deviceId: device.id,
        by: here.devices.own.id,
        whence: '127.0.0.1',
      }),
    ]);
    const refused = here.logged.find((line) => line['problem'] === 'not-allowed');
    expect(refused).toMatchObject({
      device: here.devices.help.id,
      household: 'marta',
      address: '127.0.0.1',
      route: 'DELETE /v1/devices/:id',
    });
  });

  it('and when each was last heard from', async () => {
    await say(here, 'where is the milk');
    const list = async () =>
      (await here.app.inject({ url: '/v1/devices', headers: bearer(here.tokens.own) })).json<
        { id: string; lastSeenAt: string | null }[]
      >();
    let seen: string | null | undefined = null;
    for (let n = 0; n < 100 && !seen; n += 1) {
      seen = (await list()).find(({ id }) => id === here.devices.speak.id)?.lastSeenAt;
      await sleep(20);
    }
    expect(seen).toBe(THURSDAY);
  });
});

describe('wrong codes', () => {
  it('count whatever right one is entered in between, and for all owners together', async () => {
    const other = await letIn(here.store, 'marta', 'own');
    const confirm = async (token: string, code: string) =>
      (
        await here.app.inject({
          method: 'POST',
          url: '/v1/pairings/confirm',
          headers: bearer(token),
          payload: { code },
        })
      ).statusCode;
    const right = async (): Promise<string> =>
      (await here.app.inject({ method: 'POST', url: '/v1/pairings', payload: { name: 'x' } })).json<{
        code: string;
      }>().code;
    for (let n = 0; n < 3; n += 1) expect(await confirm(here.tokens.own, `1111111${n}`)).toBe(404);
    expect(await confirm(here.tokens.own, await right())).toBe(201);
    expect(await confirm(other.token, '22222222')).toBe(404);
    expect(await confirm(here.tokens.own, await right())).toBe(201);
    expect(await confirm(other.token, '33333333')).toBe(404);
    expect(await confirm(here.tokens.own, await right())).toBe(429);
  });

  it('and one address has but a share of the waiting room', async () => {
    const ask = async (remoteAddress: string) =>
      (
        await here.app.inject({
          method: 'POST',
          url: '/v1/pairings',
          payload: { name: 'x' },
          remoteAddress,
        })
      ).statusCode;
    const many = [];
    for (let n = 0; n < 21; n += 1) many.push(await ask('198.51.100.1'));
    expect(many.filter((status) => status === 201)).toHaveLength(20);
    expect(many.at(-1)).toBe(429);
    expect(await ask('198.51.100.2')).toBe(201);
    // One network of many addresses is one.
    for (let n = 0; n < 20; n += 1) await ask(`2001:db8:1:2::${n + 1}`);
    expect(await ask('2001:db8:1:2::ffff')).toBe(429);
    expect(await ask('2001:db8:1:3::1')).toBe(201);
  });
});
