/** A list somebody has already, brought in over HTTP: seen first, then all of it or none, and undone like anything. */
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { importDone } from '../../shared/wire/exchange.js';
import { livingItems } from '../../src/kitchen/index.js';
import { bearer, startService, type Service } from '../support/service.js';

let service: Service;
beforeEach(async () => {
  service = await startService();
});
afterEach(() => service.close());

const bring = (body: object, token = service.tokens.help) =>
  request(service.app.server).post('/v1/household/import').set(bearer(token)).send(body);
const names = async (): Promise<string[]> =>
  livingItems((await service.households.look('marta')).kitchen).map(({ name }) => name);
const list = 'Item,Location,Quantity,Expiry\nQuince paste,Fridge,2 jars,5/6/2027\nRye bread,Attic,1,\n';

describe('POST /v1/household/import', () => {
  it('shows in a dry run what each heading and cell is taken for, and what is wrong, and does nothing', async () => {
    const before = await names();
    const { body } = await bring({ form: 'csv', text: list, dryRun: true }).expect(200);
    expect(importDone.parse(body)).toEqual(body);
    expect(body).toMatchObject({
      items: 0,
      done: null,
      guessed: {
        headings: expect.arrayContaining([{ heading: 'Expiry', column: 'use by' }]),
        rows: [
          {
            row: 2,
            cells: expect.arrayContaining([
              { column: 'use by', value: '2027-05-06' },
              { column: 'unit', value: 'jar' },
            ]),
          },
          { row: 3 },
        ],
      },
      faults: [{ row: 3, column: 'place', problem: expect.stringMatching(/no place "attic"/) }],
    });
    expect(await names()).toEqual(before);
  });

  it('takes nothing where anything is wrong, and names each fault', async () => {
    const before = await names();
    const { body } = await bring({ form: 'csv', text: list }).expect(409);
    expect(body).toMatchObject({
      code: 'refused',
      detail: 'Nothing was imported.',
      errors: [{ path: 'row 3, place', message: expect.stringMatching(/attic/) }],
    });
    expect(await names()).toEqual(before);
  });

  it('takes all of it in one change, once, and that is undone as one', async () => {
    const before = await names();
    const whole = { form: 'csv', text: list, makePlaces: true };
    const { body } = await bring(whole).expect(200);
    expect(body).toMatchObject({ items: 2, places: ['attic'], faults: [] });
    expect((await names()).length).toBe(before.length + 2);
    const again = await bring(whole).expect(200);
    expect(again.body).toMatchObject({ items: 0, already: 2, done: null });
    await request(service.app.server)
      .post('/v1/kitchen/undo')
      .set(bearer(service.tokens.speak))
      .send({ version: (body as { done: { version: number } }).done.version })
      .expect(200);
    expect((await names()).sort()).toEqual(before.sort());
  });

  it('is not for devices that may only speak, and takes a file of a megabyte but no more', async () => {
    await bring({ form: 'csv', text: list }, service.tokens.speak).expect(403);
    const row = `${'x'.repeat(40)},1\n`;
    const large = `Item,Qty\n${row.repeat(Math.floor((1_000_000 - 9) / row.length))}`;
    await bring({ form: 'csv', text: large, dryRun: true }).expect(200);
    const { body } = await bring({ form: 'csv', text: 'x'.repeat(1_000_001), dryRun: true }).expect(400);
    expect(body).toMatchObject({ code: 'invalid-request' });
  });

  it.each([
    ['no table at all', 'hello'],
    ['an open quote', 'Item,Qty\n"oats,1\n'],
    ['nothing', ''],
  ])('says in words what is wrong with %s', async (_what, text) => {
    const { body } = await bring({ form: 'csv', text }).expect(409);
    expect((body as { errors: unknown[] }).errors.length).toBeGreaterThan(0);
  });
});
