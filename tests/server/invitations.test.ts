/** An invitation lets one device in, once, within an hour, as what its maker chose, while its maker may. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bearer, letIn, startService, THURSDAY, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

const post = (url: string, token: string | null, payload: object) =>
  service.app.inject({ method: 'POST', url, headers: token === null ? {} : bearer(token), payload });
const invite = async (more: object = {}, token = service.tokens.own): Promise<string> => {
  const made = await post('/v1/invitations', token, { name: 'Ruth’s phone', scope: 'help', ...more });
  expect(made.statusCode).toBe(201);
  return made.json<{ invitation: string }>().invitation;
};
const accept = (invitation: string) => post('/v1/invitations/accept', null, { invitation });
const after = (milliseconds: number): string => new Date(Date.parse(THURSDAY) + milliseconds).toISOString();
const devices = async () => service.store.devices('marta');

describe('an invitation', () => {
  it('lets one device in under its name and role, and a second one not', async () => {
    const person = [...service.kitchen.people.keys()][0];
    const invitation = await invite({ personId: person });
    const came = await accept(invitation);
    expect(came.statusCode).toBe(201);
    const { token } = came.json<{ token: string }>();
    const me = await service.app.inject({ url: '/v1/me', headers: bearer(token) });
    expect(me.json()).toMatchObject({
      household: { id: 'marta' },
      device: { name: 'Ruth’s phone', scope: 'help' },
    });
    expect((await devices()).find(({ name }) => name === 'Ruth’s phone')?.personId).toBe(person);
    const again = await accept(invitation);
    expect(again.statusCode).toBe(404);
    expect(again.json()).toMatchObject({ code: 'invitation-not-valid' });
  });

  it('holds the address that phones reach, and says where that is none', async () => {
    const made = (await post('/v1/invitations', service.tokens.own, { name: 'tablet' })).json<{
      address: string;
      invitation: string;
      addressIsLocal: boolean;
    }>();
    expect(made.address).toMatch(
      new RegExp(`^http://localhost(:\\d+)?/#join=${made.invitation.slice(0, 20)}`),
    );
    expect(made.addressIsLocal).toBe(true);
    const outside = await startService({ PUBLIC_URL: 'https://kitchen.example' });
    const there = await outside.app.inject({
      method: 'POST',
      url: '/v1/invitations',
      headers: bearer(outside.tokens.own),
      payload: { name: 'tablet' },
    });
    expect(there.json()).toMatchObject({ addressIsLocal: false });
    expect(there.json<{ address: string }>().address).toMatch(/^https:\/\/kitchen\.example\/#join=/);
    await outside.close();
  });

  it('holds for an hour and not a moment longer', async () => {
    const [inTime, late] = [await invite(), await invite()];
    service.setNow(after(60 * 60_000 - 1));
    expect((await accept(inTime)).statusCode).toBe(201);
    service.setNow(after(60 * 60_000));
    expect((await accept(late)).statusCode).toBe(404);
    service.setNow(THURSDAY);
  });

  it('taken back, lets nobody in; taken back twice does no harm', async () => {
    const invitation = await invite();
    for (let times = 0; times < 2; times += 1)
      expect((await post('/v1/invitations/withdraw', service.tokens.own, { invitation })).statusCode).toBe(
        204,
      );
    expect((await accept(invitation)).statusCode).toBe(404);
  });

  it('is for owners to make, and to take back', async () => {
    const invitation = await invite();
    for (const token of [service.tokens.help, service.tokens.speak]) {
      expect((await post('/v1/invitations', token, { name: 'x' })).statusCode).toBe(403);
      expect((await post('/v1/invitations/withdraw', token, { invitation })).statusCode).toBe(403);
    }
    expect((await accept(invitation)).statusCode).toBe(201);
  });

  it('is worth nothing with another role written into it, and stays whole for whom it was meant', async () => {
    const invitation = await invite({ scope: 'speak' });
    const [grant, secret] = invitation.split('.');
    const raised = {
      ...(JSON.parse(Buffer.from(grant ?? '', 'base64url').toString()) as object),
      scope: 'own',
    };
    const forged = `${Buffer.from(JSON.stringify(raised)).toString('base64url')}.${secret ?? ''}`;
    expect((await accept(forged)).statusCode).toBe(404);
    for (const broken of ['x', `${grant ?? ''}.`, `.${secret ?? ''}`, '12345678'])
      expect((await accept(broken)).statusCode).toBe(404);
    const came = await accept(invitation);
    expect(came.json<{ device: { scope: string } }>().device.scope).toBe('speak');
  });

  it('holds no longer than its maker is an owner', async () => {
    const { token, device } = await letIn(service.store, 'marta', 'own');
    const invitation = await invite({}, token);
    const gone = await service.app.inject({
      method: 'DELETE',
      url: `/v1/devices/${device.id}`,
      headers: bearer(service.tokens.own),
    });
    expect(gone.statusCode).toBe(200);
    const before = (await devices()).length;
    expect((await accept(invitation)).statusCode).toBe(404);
    expect(await devices()).toHaveLength(before);
  });

  it('taken by two at once lets one in', async () => {
    const invitation = await invite();
    const both = await Promise.all([accept(invitation), accept(invitation)]);
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([201, 404]);
  });

  it('is no code that an owner could confirm, nor a waiting device an invitation', async () => {
    const asked = await post('/v1/pairings', null, { name: 'speaker' });
    expect((await accept(asked.json<{ code: string }>().code)).statusCode).toBe(404);
  });

  it('cannot be made without end', async () => {
    const busy = await startService();
    const made: number[] = [];
    for (let n = 0; n < 21; n += 1) {
      const response = await busy.app.inject({
        method: 'POST',
        url: '/v1/invitations',
        headers: bearer(busy.tokens.own),
        payload: { name: 'x' },
      });
      made.push(response.statusCode);
    }
    expect(made).toEqual([...Array<number>(20).fill(201), 429]);
    await busy.close();
  });
});
