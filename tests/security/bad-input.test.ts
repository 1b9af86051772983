/** Nothing a client can send makes a 5xx, changes the kitchen, or comes back in an error. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { problem } from '../../shared/wire/problem.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
let version = 0;
const versionNow = async () => (await service.households.look('marta')).kitchen.version;
beforeAll(async () => {
  service = await startService();
});
beforeEach(async () => {
  version = await versionNow();
});
afterAll(() => service.close());

const post = (payload: string | Buffer, type = 'application/json', url = '/v1/turns') =>
  service.app.inject({
    method: 'POST',
    url,
    headers: { 'content-type': type, ...bearer(service.tokens.own) },
    payload,
  });
const good = { id: 'g', hypotheses: [{ text: 'hello' }] };

describe('a turn that cannot be one', () => {
  it.each([
    ['no JSON', '{"id": "a", ', 400, 'malformed-json'],
    ['an empty body', '', 400, 'malformed-json'],
    ['null', 'null', 400, 'invalid-request'],
    ['a list', '[]', 400, 'invalid-request'],
    ['text that only looks like JSON', '"hello"', 400, 'invalid-request'],
    ['an unknown part', JSON.stringify({ ...good, shout: true }), 400, 'invalid-request'],
    [
      'an unknown part of a guess',
      JSON.stringify({ id: 'a', hypotheses: [{ text: 'x', lang: 'y' }] }),
      400,
      'invalid-request',
    ],
    ['no id', JSON.stringify({ hypotheses: [] }), 400, 'invalid-request'],
    ['an id with spaces', JSON.stringify({ ...good, id: 'a b' }), 400, 'invalid-request'],
    ['an id of markup', JSON.stringify({ ...good, id: '<script>' }), 400, 'invalid-request'],
    [
      'too many guesses',
      JSON.stringify({ id: 'a', hypotheses: Array(11).fill({ text: 'x' }) }),
      400,
      'invalid-request',
    ],
    [
      'ten thousand words',
      JSON.stringify({ id: 'a', hypotheses: [{ text: 'soup '.repeat(10_000) }] }),
      400,
      'invalid-request',
    ],
    [
      'a body over the limit',
      JSON.stringify({ id: 'a', hypotheses: [{ text: 'soup '.repeat(100_000) }] }),
      413,
      'too-large',
    ],
    [
      'confidence above one',
      JSON.stringify({ id: 'a', hypotheses: [{ text: 'x', confidence: 2 }] }),
      400,
      'invalid-request',
    ],
    ['a poisoned prototype', '{"id":"a","hypotheses":[],"__proto__":{"x":1}}', 400, 'malformed-json'],
    [
      'a poisoned constructor',
      '{"id":"a","hypotheses":[],"constructor":{"prototype":{"x":1}}}',
      400,
      'malformed-json',
    ],
    ['a very deep body', '['.repeat(30_000) + ']'.repeat(30_000), 400, 'invalid-request'],
  ])('%s', async (_name, payload, status, code) => {
    const response = await post(payload);
    expect(response.statusCode).toBe(status);
    expect(response.headers['content-type']).toMatch('application/problem+json');
    const body = problem.parse(response.json());
    expect(body).toMatchObject({ status, code });
    expect(body.instance).toBe(response.headers['x-request-id']);
    expect(response.body).not.toMatch(/shout|<script>|soup/);
    expect(await versionNow()).toBe(version);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });

  it.each(['text/plain', 'application/xml', 'multipart/form-data; boundary=x'])(
    'comes as %s',
    async (type) => {
      const response = await post(JSON.stringify(good), type);
      expect(response.statusCode).toBe(415);
      expect(response.json()).toMatchObject({ code: 'wrong-media-type' });
    },
  );

  it('is binary', async () => {
    const response = await post(Buffer.from([0xff, 0xfe, 0x00, 0x01]));
    expect(response.statusCode).toBe(400);
  });
});

describe('what people and recognisers really send', () => {
  it.each([
    ['nothing', ''],
    ['spaces', '   \t  '],
    ['punctuation', '?!…—'],
    ['emoji', '🍲🍲🍲'],
    ['right-to-left text', 'أين الحساء'],
    ['direction overrides', 'put \u202esoup\u202c away'],
    ['a null character', 'where is the \u0000 soup'],
    ['a lone surrogate', 'where is the \ud800 soup'],
    ['markup', 'where is the <speak><break time="100s"/></speak>'],
    ['many words', 'soup and '.repeat(200)],
    ['one long word', 'a'.repeat(2_000)],
    ['digits', '9'.repeat(2_000)],
    ['SQL', "'; drop table item; --"],
  ])('%s is answered in speech and changes nothing', async (_name, text) => {
    const reply = await say(service, text);
    expect(reply.speech.text.trim()).not.toBe('');
    expect(reply.changes).toEqual([]);
    expect(await versionNow()).toBe(version);
  });
});

describe('hostile names', () => {
  const names = [
    '<b>soup</b>',
    'tom & jerry soup',
    '"quoted" soup',
    "amara's soup",
    '🍲 soup',
    'حساء soup',
    '=1+1 soup',
  ];
  it.each(names)('%s stays words everywhere', async (name) => {
    const { app, tokens } = service;
    const headers = bearer(tokens.help);
    const [item] = [...(await service.households.look('marta')).kitchen.items.values()].filter(
      (one) => !one.gone,
    );
    const response = await app.inject({
      method: 'PATCH',
      url: `/v1/kitchen/items/${item?.id}`,
      headers: { ...headers, 'idempotency-key': randomUUID() },
      payload: { name },
    });
    expect(response.statusCode).toBe(200);
    const got = await app.inject({ url: `/v1/kitchen/items/${item?.id}`, headers });
    expect(got.json()).toMatchObject({ name });
    const reply = await say(service, 'what changed today');
    // Whatever was said of it is well-formed speech: no element came from the name.
    expect(reply.speech.ssml).not.toMatch(/<b>/);
    expect(reply.speech.ssml.replace(/&(amp|lt|gt|quot|apos|#\d+|#x[0-9a-f]+);/gi, '')).not.toMatch(/&/);
  });

  it.each(['', '   ', 'so\u0000up', 'so\u202eup', 'x'.repeat(121)])('%j is refused', async (name) => {
    const [item] = [...(await service.households.look('marta')).kitchen.items.values()];
    const response = await service.app.inject({
      method: 'PATCH',
      url: `/v1/kitchen/items/${item?.id}`,
      headers: bearer(service.tokens.help),
      payload: { name },
    });
    expect(response.statusCode).toBe(400);
    expect(await versionNow()).toBe(version);
  });
});
