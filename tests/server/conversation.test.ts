import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { bearer, letIn, say, startService, THURSDAY, type Service } from '../support/service.js';
import { connect, listen, refusedStatus, type TestSocket } from '../support/socket.js';

let service: Service;
let url: string;
const open: TestSocket[] = [];
beforeAll(async () => {
  service = await startService();
  url = await listen(service);
});
afterEach(() => {
  for (const client of open.splice(0)) client.socket.terminate();
  service.setNow(THURSDAY);
});
afterAll(() => service.close());

const talk = async (token = service.tokens.speak): Promise<TestSocket> => {
  const client = connect(url, bearer(token));
  open.push(client);
  await client.next('welcome');
  return client;
};
const turn = (id: string, text: string) => ({ type: 'turn', turn: { id, hypotheses: [{ text }] } });

describe('the conversation socket', () => {
  it('welcomes, answers turns, and answers a retried one from the record', async () => {
    const client = await talk();
    expect(client.socket.protocol).toBe('tellshelf.v1');
    client.send(turn('s1', 'put oats on the list'));
    const { reply } = await client.next('reply');
    expect(reply.changes[0]?.about).toEqual(['oats']);
    client.send(turn('s1', 'put oats on the list'));
    expect((await client.next('reply')).reply).toEqual(reply);
  });

  it('answers in the order it was asked', async () => {
    const client = await talk();
    const ids = ['o1', 'o2', 'o3', 'o4'];
    for (const id of ids) client.send(turn(id, 'what should I use first'));
    const got: string[] = [];
    for (const _ of ids) got.push((await client.next('reply')).reply.id);
    expect(got).toEqual(ids);
  });

  it('tells everyone in the household what changed', async () => {
    const [one, other] = [await talk(), await talk(service.tokens.help)];
    one.send(turn('c1', 'put salt on the list'));
    const changed = await other.next('changed');
    expect(changed.changes[0]).toMatchObject({ verb: 'put on the list', about: ['salt'] });
  });

  it('judges words so far without acting on them', async () => {
    const client = await talk();
    const { version } = (await service.households.look('marta')).kitchen;
    client.send({ type: 'partial', text: 'put the milk on the' });
    expect(await client.next('partial')).toMatchObject({ fits: true });
    client.send({ type: 'partial', text: 'seventeen purple elephants wander because' });
    expect(await client.next('partial')).toMatchObject({ fits: false });
    expect((await service.households.look('marta')).kitchen.version).toBe(version);
  });

  it('answers a ping', async () => {
    const client = await talk();
    client.send({ type: 'ping', id: 'p1' });
    expect(await client.next('pong')).toEqual({ type: 'pong', id: 'p1' });
  });

  it.each([
    ['no JSON', 'hello', 'malformed-json'],
    ['an unknown type', { type: 'shout' }, 'invalid-request'],
    ['an unknown part', { type: 'ping', loud: true }, 'invalid-request'],
    ['a list', [], 'invalid-request'],
    ['a poisoned prototype', '{"type":"ping","__proto__":{"a":1}}', 'malformed-json'],
    ['a turn of ten thousand words', turn('w', 'soup '.repeat(10_000)), 'invalid-request'],
    ['binary', Buffer.from([1, 2, 3]), 'binary-frame'],
  ])('refuses %s and stays open', async (_name, message, code) => {
    const client = await talk();
    client.send(message);
    expect((await client.next('error')).problem).toMatchObject({ code });
    client.send({ type: 'ping', id: 'after' });
    expect(await client.next('pong')).toEqual({ type: 'pong', id: 'after' });
  });

  it('says which turn was wrong', async () => {
    const client = await talk();
    client.send({ type: 'turn', turn: { id: 'bad1', hypotheses: 'soup' } });
    expect(await client.next('error')).toMatchObject({ turn: 'bad1', problem: { code: 'invalid-request' } });
  });

  it('closes on a frame over the limit', async () => {
    const client = await talk();
    client.send(JSON.stringify(turn('big', 'x'.repeat(100_000))));
    expect((await client.closed).code).toBe(1009);
  });

  it('holds off a flood, then cuts it off', async () => {
    const client = await talk();
    for (let n = 0; n < 300; n += 1) client.send({ type: 'ping' });
    expect((await client.next('error')).problem.code).toBe('too-many-requests');
    expect((await client.closed).code).toBe(1008);
  });

  it('lets nobody in without a token, from a foreign page, or too often', async () => {
    expect(await refusedStatus(url, {})).toBe(401);
    expect(
      await refusedStatus(url, { ...bearer(service.tokens.speak), origin: 'https://evil.example' }),
    ).toBe(403);
    const { token } = await letIn(service.store, 'marta', 'speak');
    for (let n = 0; n < 8; n += 1) await talk(token);
    expect(await refusedStatus(url, bearer(token))).toBe(429);
  });

  it('lets its own pages in', async () => {
    const client = connect(url, {
      ...bearer(service.tokens.speak),
      origin: url.replace(/^ws/, 'http').replace(/\/v1.*/, ''),
    });
    open.push(client);
    await client.next('welcome');
  });

  it('ends when its device is revoked', async () => {
    const { token, device } = await letIn(service.store, 'marta', 'speak');
    const client = await talk(token);
    const response = await service.app.inject({
      method: 'DELETE',
      url: `/v1/devices/${device.id}`,
      headers: bearer(service.tokens.own),
    });
    expect(response.statusCode).toBe(200);
    expect((await client.closed).code).toBe(1008);
    expect(await refusedStatus(url, bearer(token))).toBe(401);
  });

  it('speaks first when a timer is done, again after a reconnect, and once it was heard no more', async () => {
    await say(service, 'set a rice timer for ten minutes');
    service.setNow('2026-05-14T23:10:01.000Z');
    const first = await talk();
    const told = await first.next('unasked');
    expect(told).toMatchObject({ kind: 'timer', due: '2026-05-14T23:10:00.000Z' });
    expect(told.speech.text).toMatch(/rice/i);
    first.socket.terminate();

    const again = await talk();
    expect((await again.next('unasked')).id).toBe(told.id);
    again.send({ type: 'ack', id: told.id });
    await again.next('changed');

    const later = await talk();
    later.send({ type: 'ping', id: 'quiet' });
    await later.next('pong');
    await expect(
      Promise.race([
        later.next('unasked'),
        new Promise((_, reject) => setTimeout(() => reject(new Error('silence')), 800)),
      ]),
    ).rejects.toThrow('silence');
  });
});

describe('a server that stops', () => {
  it('answers turns under way, then asks clients to connect again', async () => {
    const other = await startService();
    const client = connect(await listen(other), bearer(other.tokens.speak));
    await client.next('welcome');
    client.send(turn('last', 'what should I use first'));
    // Frames are taken in order: once the ping is answered, the turn is under way.
    client.send({ type: 'ping' });
    await client.next('pong');
    const closing = other.close();
    expect((await client.next('reply')).reply.id).toBe('last');
    expect((await client.closed).code).toBe(1012);
    await closing;
  });
});
