/** What the board's cards and the home page send: put away, take some, move, undo; people, settings, places. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { board } from '../../shared/wire/board.js';
import { person } from '../../shared/wire/home.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
}, 120_000);
afterAll(() => service.close(), 120_000);

const call = async (
  method: 'GET' | 'POST' | 'PATCH',
  url: string,
  payload?: object,
  scope: keyof Service['tokens'] = 'speak',
) =>
  service.app.inject({
    method,
    url,
    headers: bearer(service.tokens[scope]),
    ...(payload === undefined ? {} : { payload }),
  });
const kitchen = async () => (await service.households.look('marta')).kitchen;
const named = async (name: string) =>
  [...(await kitchen()).items.values()].filter((item) => item.name === name && item.gone === null);

describe('the board in one answer', () => {
  it('is what its schema says, amounts in plain words', async () => {
    const response = await call('GET', '/v1/kitchen/board');
    const read = board.parse(response.json());
    const living = [...(await kitchen()).items.values()].filter((item) => item.gone === null);
    expect(read.items).toHaveLength(living.length);
    expect(read.tonight.length).toBeGreaterThan(0);
    for (const { amount, howMuch } of read.items) {
      if (amount === null) expect(howMuch).toBeNull();
      else if (amount.value > 1 && amount.unit !== 'piece')
        expect(howMuch).not.toMatch(/ (tub|portion|jar)$/);
      expect(howMuch ?? '').not.toMatch(/0\.5|piece/);
    }
  });

  it('names whom an allergen of a food concerns', async () => {
    const read = board.parse((await call('GET', '/v1/kitchen/board')).json());
    const people = [...(await kitchen()).people.values()].filter(({ allergens }) => allergens.length > 0);
    const warned = read.items.flatMap(({ warnings }) => warnings);
    for (const { person } of warned) expect(people.map(({ name }) => name)).toContain(person);
  });
});

describe('the list to buy', () => {
  const lines = async () => board.parse((await call('GET', '/v1/kitchen/board')).json()).purchases;
  const put = (body: object) => call('POST', '/v1/kitchen/list', body);

  it('has with each line its shop, its kind and whom it is for, told by voice or by a page', async () => {
    const [{ id = '', name = '' } = {}] = (await kitchen()).people.values();
    await say(service, `put two bags of lentils from the corner shop on the list for ${name}`);
    expect((await lines()).find((line) => line.name === 'lentils')).toMatchObject({
      howMuch: '2 bags',
      shop: 'corner shop',
      note: null,
      forPersonId: id,
      forPerson: name,
    });
    const told = { name: 'tinned pears', note: 'in juice', shop: 'fish market', forPersonId: id };
    expect((await put(told)).statusCode).toBe(200);
    expect((await lines()).find((line) => line.name === 'tinned pears')).toMatchObject({
      ...told,
      howMuch: null,
      forPerson: name,
    });
    const read = await say(service, 'where was I meant to get the tinned pears');
    expect(read.speech.text).toMatch(/fish market/);
  });

  it('changes a line where something new is said of it, and keeps the rest', async () => {
    await put({ name: 'yeast', note: 'dried', shop: 'mill' });
    expect((await put({ name: 'yeast' })).json()).toMatchObject({ code: 'refused' });
    expect((await put({ name: 'yeast', note: 'fresh' })).statusCode).toBe(200);
    expect((await lines()).filter((line) => line.name === 'yeast')).toMatchObject([
      { note: 'fresh', shop: 'mill' },
    ]);
  });

  it('is for nobody who is not of the household', async () => {
    const before = (await kitchen()).version;
    expect((await put({ name: 'salt', forPersonId: 'nobody' })).json()).toMatchObject({ code: 'not-found' });
    expect((await put({ name: 'salt', shop: '' })).json()).toMatchObject({ code: 'invalid-request' });
    expect((await kitchen()).version).toBe(before);
  });
});

describe('a timer that stands still', () => {
  it('says on the board what is left of it', async () => {
    await say(service, 'set a barley timer for ten minutes');
    await say(service, 'pause the barley timer');
    const timers = board.parse((await call('GET', '/v1/kitchen/board')).json()).reminders;
    expect(timers.find(({ label }) => label === 'barley')).toMatchObject({ heldLeft: 600 });
  });
});

describe('putting away from a page', () => {
  it('refuses a place, a marker or a count that cannot be, and changes nothing', async () => {
    const before = (await kitchen()).version;
    for (const [share, status] of [
      [{ placeId: 'nowhere' }, 404],
      [{ markerId: 'none' }, 404],
      [{ count: 0 }, 400],
      [{ count: -1 }, 400],
    ] as const)
      expect((await call('POST', '/v1/kitchen/items', { name: 'soup', shares: [share] })).statusCode).toBe(
        status,
      );
    expect((await call('POST', '/v1/kitchen/items', { name: ' ', shares: [{}] })).statusCode).toBe(400);
    expect((await call('POST', '/v1/kitchen/items', { name: 'soup', shares: [] })).statusCode).toBe(400);
    expect((await kitchen()).version).toBe(before);
  });

  it('keeps what is not said unknown', async () => {
    expect((await call('POST', '/v1/kitchen/items', { name: 'mystery', shares: [{}] })).statusCode).toBe(200);
    expect((await named('mystery'))[0]).toMatchObject({
      amount: null,
      placeId: null,
      dates: {},
      contains: [],
    });
  });
});

describe('taking and moving', () => {
  it('takes, leaves so many, uses up at none, and undoes by version', async () => {
    await call('POST', '/v1/kitchen/items', { name: 'broth', shares: [{ count: 4, unit: 'tub' }] });
    const id = (await named('broth'))[0]?.id ?? '';
    const take = (body: object) => call('POST', `/v1/kitchen/items/${id}/take`, body);
    expect((await take({ count: 1 })).statusCode).toBe(200);
    expect((await named('broth'))[0]?.amount?.value).toBe(3);
    expect((await take({ count: 9 })).json()).toMatchObject({ code: 'refused' });
    expect((await take({ left: 2 })).statusCode).toBe(200);
    const halved = (await take({ fraction: 0.5 })).json<{ version: number }>();
    expect((await named('broth'))[0]?.amount?.value).toBe(1);
    await call('POST', '/v1/kitchen/list', { name: 'thyme' });
    // Not the newest change, but the one that was asked for.
    expect((await call('POST', '/v1/kitchen/undo', { version: halved.version })).statusCode).toBe(200);
    expect((await named('broth'))[0]?.amount?.value).toBe(2);
    expect((await take({ left: 0 })).statusCode).toBe(200);
    expect(await named('broth')).toEqual([]);
    expect((await take({ count: 1 })).json()).toMatchObject({ code: 'refused' });
  });
});

describe('home', () => {
  it('people, settings and places are an owner’s or a helper’s to change', async () => {
    for (const [method, url, body] of [
      ['POST', '/v1/kitchen/people', { name: 'Sam' }],
      ['PATCH', '/v1/household', { microwaveWatts: 800 }],
      ['POST', '/v1/kitchen/places', { name: 'rack', kind: 'shelf' }],
    ] as const)
      expect((await call(method, url, body, 'speak')).statusCode, url).toBe(403);
    expect(
      (await call('POST', '/v1/kitchen/people', { name: 'Sam', allergens: ['sesame'] }, 'own')).statusCode,
    ).toBe(200);
    const sam = [...(await kitchen()).people.values()].find(({ name }) => name === 'Sam');
    expect(sam?.allergens).toEqual(['sesame']);
    // A change that says nothing of allergens takes none away.
    await call('PATCH', `/v1/kitchen/people/${sam?.id}`, { atRisk: true }, 'own');
    expect((await kitchen()).people.get(sam?.id ?? '')).toMatchObject({
      atRisk: true,
      allergens: ['sesame'],
    });
  });

  it('says how somebody’s food is to be and when a guest comes; left out it stays, null forgets the day', async () => {
    const sam = async () =>
      (await call('GET', '/v1/kitchen/people'))
        .json<z.infer<typeof person>[]>()
        .map((one) => person.parse(one))
        .find(({ name }) => name === 'Noor');
    const told = { name: 'Noor', eatsHere: false, needs: ['cut up small'], comesOn: '2026-05-17' };
    expect((await call('POST', '/v1/kitchen/people', told, 'own')).statusCode).toBe(200);
    expect(await sam()).toMatchObject(told);
    const url = `/v1/kitchen/people/${(await sam())?.id}`;
    const change = (body: object) => call('PATCH', url, body, 'own');
    await change({ allergens: ['sesame'] });
    expect(await sam()).toMatchObject({ ...told, allergens: ['sesame'] });
    expect((await say(service, 'tell me about Noor')).speech.text).toMatch(/cut up small/);
    await change({ needs: ['mashed'], comesOn: '2026-05-18' });
    expect(await sam()).toMatchObject({ needs: ['mashed'], comesOn: '2026-05-18' });
    expect((await change({ comesOn: '2026-05-18' })).json()).toMatchObject({ code: 'refused' });
    expect((await change({ comesOn: '2026-02-30' })).json()).toMatchObject({ code: 'refused' });
    expect((await change({ comesOn: 'sunday' })).statusCode).toBe(400);
    await change({ needs: [], comesOn: null });
    expect(await sam()).toMatchObject({ needs: [], comesOn: null, allergens: ['sesame'] });
  });

  it('a session’s cookie begins anew with each visit', async () => {
    const begun = await service.app.inject({
      method: 'POST',
      url: '/v1/session',
      payload: { token: service.tokens.own },
    });
    const cookies = Object.fromEntries(begun.cookies.map(({ name, value }) => [name, value]));
    const again = await service.app.inject({ url: '/v1/session', cookies });
    const renewed = again.cookies.find(({ value }) => value === service.tokens.own);
    expect(renewed?.maxAge).toBeGreaterThan(29 * 24 * 60 * 60);
  });

  it('labels and codes hold the public address, or warn of a local one', async () => {
    const local = (await call('GET', '/v1/household')).json<{ addressIsLocal: boolean }>();
    expect(local.addressIsLocal).toBe(true);
    const open = await startService({ PUBLIC_URL: 'https://kitchen.example/' });
    try {
      const response = await open.app.inject({ url: '/v1/household', headers: bearer(open.tokens.speak) });
      expect(response.json()).toMatchObject({ address: 'https://kitchen.example', addressIsLocal: false });
    } finally {
      await open.close();
    }
  });
});
