/** An answer cut off through the socket: a stop, going on where it was cut, and words not yet finished. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { bearer, letIn, startService, type Service } from '../support/service.js';
import { connect, listen, type TestSocket } from '../support/socket.js';

let service: Service;
let url: string;
let client: TestSocket;
let turns = 0;
beforeAll(async () => {
  service = await startService();
  url = await listen(service);
});
afterEach(() => client.socket.terminate());
afterAll(() => service.close());

const begin = async (): Promise<void> => {
  client = connect(url, bearer(service.tokens.speak));
  await client.next('welcome');
};
const say = async (text: string, cutAt?: string) => {
  turns += 1;
  const id = `b${turns}`;
  const turn = { id, conversation: `talk-${service.kitchen.household.id}`, hypotheses: [{ text }] };
  client.send({ type: 'turn', turn: cutAt === undefined ? turn : { ...turn, cutAt } });
  const { reply } = await client.next('reply');
  expect(reply.id).toBe(id);
  return reply;
};

it('a stop at a mark is silence, and going on begins at that sentence', async () => {
  await begin();
  const long = await say('read me the summary for the week');
  const { sentences, ssml } = long.speech;
  expect(sentences.length).toBeGreaterThan(2);
  sentences.forEach((_sentence, at) => expect(ssml).toContain(`<mark name="s${at + 1}"/>`));
  const stopped = await say('stop', 's2');
  expect(stopped.speech.text).toBe('');
  const rest = await say('go on');
  expect(rest.speech.sentences).toEqual(sentences.slice(1));
});

it('going on at once, without a stop, begins there too', async () => {
  await begin();
  const { speech } = await say('read me the summary for the week');
  const rest = await say('go on', 's3');
  expect(rest.speech.sentences).toEqual(speech.sentences.slice(2));
});

it('another question cuts it just as well', async () => {
  await begin();
  const { speech } = await say('read me the summary for the week');
  const asked = await say('where is the milk', 's2');
  expect(asked.speech.text).toContain('milk');
  expect(asked.speech.sentences).toHaveLength(1);
  const rest = await say('go on');
  expect(rest.speech.sentences.slice(1)).toEqual(speech.sentences.slice(1));
});

it('a device that removes itself hears that it did, and is then cut off', async () => {
  const alone = await startService();
  const { token, device } = await letIn(alone.store, 'marta', 'own');
  const there = connect(await listen(alone), bearer(token));
  await there.next('welcome');
  const turn = async (id: string, text: string) => {
    there.send({ type: 'turn', turn: { id, hypotheses: [{ text }] } });
    return (await there.next('reply')).reply.speech.text;
  };
  const gone = new Promise<void>((resolve) => there.socket.once('close', () => resolve()));
  expect(await turn('r1', 'remove this device')).toMatch(/the one you speak on/);
  expect(await turn('r2', 'yes')).toMatch(/is removed/);
  await gone;
  const after = (await alone.store.devices('marta')).find(({ id }) => id === device.id);
  expect(after?.revokedAt).not.toBeNull();
  await alone.close();
});

it('words so far never act, whatever they would do when finished', async () => {
  await begin();
  const version = async () => (await service.households.look('marta')).kitchen.version;
  const before = await version();
  for (const text of [
    'finish the',
    'finish the milk',
    'throw out the cream',
    'undo',
    'yes',
    'clear the list',
  ]) {
    client.send({ type: 'partial', text });
    expect(await client.next('partial')).toMatchObject({ type: 'partial' });
  }
  expect(await version()).toBe(before);
  // The open question is still open for the whole words.
  await say('finish the bean chilli');
  client.send({ type: 'partial', text: 'the second' });
  await client.next('partial');
  expect(await version()).toBe(before);
  expect((await say('the second')).changes.map(({ verb }) => verb)).toEqual(['finished']);
});
