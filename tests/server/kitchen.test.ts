import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  item,
  journalRow,
  marker,
  place,
  purchase,
  useFirstRow,
  type ItemView,
} from '../../shared/wire/kitchen.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

const get = (url: string) => service.app.inject({ url, headers: bearer(service.tokens.help) });
const send = (
  method: 'POST' | 'PATCH' | 'DELETE',
  url: string,
  payload?: object,
  headers: Record<string, string> = {},
) =>
  service.app.inject({
    method,
    url,
    headers: { ...bearer(service.tokens.help), ...headers },
    ...(payload ? { payload } : {}),
  });
const items = async (): Promise<ItemView[]> => (await get('/v1/kitchen/items')).json();

describe('reading the kitchen', () => {
  it.each([
    ['/v1/kitchen/places', z.array(place)],
    ['/v1/kitchen/items', z.array(item)],
    ['/v1/kitchen/items?gone=true', z.array(item)],
    ['/v1/kitchen/markers', z.array(marker)],
    ['/v1/kitchen/list', z.array(purchase)],
    ['/v1/kitchen/use-first', z.array(useFirstRow)],
    ['/v1/kitchen/journal', z.array(journalRow)],
  ])('%s keeps to its schema', async (url, schema) => {
    const response = await get(url);
    expect(response.statusCode).toBe(200);
    expect(schema.parse(response.json())).toEqual(response.json());
  });

  it('gives what is in one place, and nothing of a place that is not', async () => {
    const places = (await get('/v1/kitchen/places')).json<z.infer<typeof place>[]>();
    const fridge = places.find((one) => one.parentId === null && one.items > 0);
    const within = (await get(`/v1/kitchen/items?place=${fridge?.id}`)).json<ItemView[]>();
    expect(within).toHaveLength(fridge?.items ?? -1);
    expect(within.every((one) => one.placePath[0] === fridge?.name)).toBe(true);
    expect((await get('/v1/kitchen/items?place=nowhere')).statusCode).toBe(404);
    expect((await get('/v1/kitchen/items?shelf=1')).statusCode).toBe(400);
  });
});

describe('changing the kitchen', () => {
  it('corrects an item, tells it by voice, and takes it back', async () => {
    const [one] = await items();
    const changed = await send('PATCH', `/v1/kitchen/items/${one?.id}`, {
      name: 'walnut pesto',
      contains: ['tree nuts'],
      dates: { made: '2026-05-10' },
    });
    expect(changed.json()).toMatchObject({ changes: [{ verb: 'amended' }] });
    expect((await get(`/v1/kitchen/items/${one?.id}`)).json()).toMatchObject({
      name: 'walnut pesto',
      contains: ['tree nuts'],
      dates: { made: '2026-05-10' },
    });
    expect((await say(service, 'do I have any walnut pesto')).speech.text).toMatch(/walnut pesto/i);

    const [newest] = (await get('/v1/kitchen/journal?limit=1')).json<z.infer<typeof journalRow>[]>();
    expect((await send('POST', '/v1/kitchen/undo', { entry: newest?.id ?? '' })).statusCode).toBe(200);
    expect((await get(`/v1/kitchen/items/${one?.id}`)).json()).toMatchObject({ name: one?.name });
  });

  it('does a request with one key once, and refuses the key for another', async () => {
    const key = { 'idempotency-key': 'k1' };
    const first = await send('POST', '/v1/kitchen/list', { name: 'capers' }, key);
    const again = await send('POST', '/v1/kitchen/list', { name: 'capers' }, key);
    expect(again.json()).toEqual(first.json());
    const other = await send('POST', '/v1/kitchen/list', { name: 'olives' }, key);
    expect(other.json()).toMatchObject({ code: 'id-reused', status: 422 });
    const list = (await get('/v1/kitchen/list')).json<z.infer<typeof purchase>[]>();
    expect(list.filter((line) => line.name === 'capers')).toHaveLength(1);
    const line = list.find(({ name }) => name === 'capers');
    expect((await send('DELETE', `/v1/kitchen/list/${line?.id}`)).statusCode).toBe(200);
    expect((await send('DELETE', `/v1/kitchen/list/${line?.id}`)).statusCode).toBe(404);
  });

  it('refuses a change to what somebody else changed meanwhile', async () => {
    const [, one] = await items();
    const url = `/v1/kitchen/items/${one?.id}`;
    const { etag } = (await get(url)).headers;
    expect((await send('PATCH', url, { notes: ['first'] }, { 'if-match': String(etag) })).statusCode).toBe(
      200,
    );
    const late = await send('PATCH', url, { notes: ['second'] }, { 'if-match': String(etag) });
    expect(late.json()).toMatchObject({ code: 'changed-meanwhile', status: 412 });
  });

  it('moves an item, uses it up, and refuses to use it up twice', async () => {
    const places = (await get('/v1/kitchen/places')).json<z.infer<typeof place>[]>();
    const [, , one] = await items();
    const elsewhere = places.find(
      (candidate) => candidate.parentId !== null && candidate.id !== one?.placeId,
    );
    await send('PATCH', `/v1/kitchen/items/${one?.id}`, { placeId: elsewhere?.id ?? '' });
    expect((await get(`/v1/kitchen/items/${one?.id}`)).json()).toMatchObject({ placeId: elsewhere?.id });
    expect(
      (await send('POST', `/v1/kitchen/items/${one?.id}/finish`, { how: 'thrown out' })).statusCode,
    ).toBe(200);
    const twice = await send('POST', `/v1/kitchen/items/${one?.id}/finish`, { how: 'used' });
    expect(twice.json()).toMatchObject({ code: 'refused' });
    expect((await items()).some(({ id }) => id === one?.id)).toBe(false);
  });

  it.each([
    [{ dates: { made: '2026-02-30' } }, 409],
    [{ dates: { made: 'yesterday' } }, 400],
    [{ amount: { value: -1, unit: 'tub' } }, 400],
    [{ placeId: 'nowhere' }, 404],
    [{ colour: 'red' }, 400],
    [{}, 409],
  ])('refuses %j', async (change, status) => {
    const [one] = await items();
    expect((await send('PATCH', `/v1/kitchen/items/${one?.id}`, change)).statusCode).toBe(status);
  });
});
