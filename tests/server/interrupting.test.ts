/** What another did to the thing one is in the middle of is said at once, on whichever server she listens. */
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openPostgresStore } from '../../src/store/postgres.js';
import { bearer, startService, THURSDAY, type Service } from '../support/service.js';
import { connect, listen, type TestSocket } from '../support/socket.js';
import { startPostgres } from '../store/postgres-server.js';

let here: Service;
let url: string;
const open: TestSocket[] = [];
beforeAll(async () => {
  here = await startService();
  url = await listen(here);
});
afterEach(() => open.splice(0).forEach(({ socket }) => socket.terminate()));
afterAll(() => here.close());

/** A device that listens and speaks in a conversation of its own. */
const listener = async (at = url, token = here.tokens.own) => {
  const client = connect(at, bearer(token));
  open.push(client);
  await client.next('welcome');
  const conversation = `c${randomUUID()}`;
  const say = async (text: string) => {
    client.send({ type: 'turn', turn: { id: randomUUID(), conversation, hypotheses: [{ text }] } });
    return (await client.next('reply')).reply.speech.text;
  };
  /** Whether something unasked came before the answer to a ping. */
  const silent = async () => {
    const came: string[] = [];
    client.socket.on('message', (data: Buffer) => {
      const message = JSON.parse(data.toString()) as { type: string };
      if (message.type === 'unasked') came.push(message.type);
    });
    await new Promise((resolve) => setTimeout(resolve, 400));
    return came.length === 0;
  };
  return { client, say, silent };
};

let minutes = 0;
/** The held clock goes on. */
const aMinuteLater = (): void => {
  minutes += 1;
  here.setNow(new Date(Date.parse(THURSDAY) + minutes * 60_000).toISOString());
};

/** Somebody else, over HTTP. */
const other = async (text: string, service = here, token = here.tokens.help): Promise<string> => {
  const response = await service.app.inject({
    method: 'POST',
    url: '/v1/turns',
    headers: bearer(token),
    payload: { id: randomUUID(), conversation: 'other', hypotheses: [{ text }] },
  });
  return response.json<{ speech: { text: string } }>().speech.text;
};

describe('a deed of another', () => {
  it('is told at once where it concerns the item of the steps, and not again', async () => {
    const { client, say } = await listener();
    await say('how do i reheat the lentil stew');
    await say('next');
    await other('finish the lentil stew');
    const note = await client.next('unasked');
    expect(note).toMatchObject({
      kind: 'note',
      speech: { text: 'Somebody finished lentil stew just now.' },
    });
    client.send({ type: 'ack', id: note.id });
    expect(await say('repeat')).not.toMatch(/somebody/i);
    expect(await say('where is the milk')).not.toMatch(/somebody/i);
    await other('undo');
  });

  it('is told at once where the item is being asked about', async () => {
    const { client, say } = await listener();
    expect(await say('move the milk')).toMatch(/^Where /);
    await other('move the milk to the top shelf');
    expect((await client.next('unasked')).speech.text).toMatch(/moved milk/);
    expect(await say('never mind')).not.toMatch(/somebody/i);
    await other('undo');
  });

  it('is told at once where it is in the place being checked', async () => {
    const { client, say } = await listener();
    expect(await say('check the fridge door')).toMatch(/door/);
    await other('finish the milk');
    expect((await client.next('unasked')).speech.text).toBe('Somebody finished milk just now.');
    await other('undo');
  });

  it('waits for the next turn where it concerns nothing she is in the middle of', async () => {
    const { say, silent } = await listener();
    expect(await say('where is the lentil stew')).toMatch(/lentil stew/);
    const quiet = silent();
    aMinuteLater();
    await other('move the lentil stew to the top shelf');
    expect(await quiet).toBe(true);
    expect(await say('how old is it')).toMatch(/somebody moved (the )?lentil stew/i);
    await other('undo');
  });

  it('is told at the next turn when the socket broke before it was heard', async () => {
    const first = await listener();
    const conversation = 'lasting';
    const say = async ({ client }: typeof first, text: string) => {
      client.send({ type: 'turn', turn: { id: randomUUID(), conversation, hypotheses: [{ text }] } });
      return (await client.next('reply')).reply.speech.text;
    };
    await say(first, 'how do i reheat the lentil stew');
    aMinuteLater();
    await other('move the lentil stew to the top shelf');
    await first.client.next('unasked');
    first.client.socket.terminate();
    expect(await say(await listener(), 'next')).toMatch(/somebody moved lentil stew/i);
    await other('undo');
  });
});

it('is heard across servers, and once heard on one not told on another', async () => {
  const postgres = await startPostgres('interrupting');
  if (!postgres) throw new Error('No PostgreSQL answers and Debian’s is not installed.');
  const stores = [openPostgresStore(postgres.url), openPostgresStore(postgres.url)] as const;
  const one = await startService({}, { store: stores[0] });
  const two = await startService({}, { store: stores[1] });
  try {
    const { client, say } = await listener(await listen(one), one.tokens.own);
    await say('how do i reheat the lentil stew');
    await other('finish the lentil stew', two, two.tokens.help);
    const note = await client.next('unasked');
    expect(note.speech.text).toMatch(/finished lentil stew/);
    client.send({ type: 'ack', id: note.id });
    await new Promise((resolve) => setTimeout(resolve, 200));
    const there = await listener(await listen(two), one.tokens.own);
    expect(await there.say('where is the milk')).not.toMatch(/somebody/i);
  } finally {
    open.splice(0).forEach(({ socket }) => socket.terminate());
    await one.close();
    await two.close();
    await Promise.all(stores.map((store) => store.close()));
    await postgres.close();
  }
});
