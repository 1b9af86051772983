/** The household's devices, by voice, through the service. */
import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { TurnReply } from '../../shared/wire/turn.js';
import { bearer, letIn, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeEach(async () => {
  service = await startService();
  const { own, help } = service.devices;
  await call(own.id, 'kitchen speaker');
  await call(help.id, 'Dele’s phone');
});
afterEach(() => service.close());

const call = (id: string, name: string) =>
  service.store.changeDevices(household(), {
    deeds: [{ kind: 'change', id, name }],
    by: null,
    at: '2026-05-14T09:00:00.000Z',
  });
const household = () => service.kitchen.household.id;
const devices = () => service.store.devices(household());
const nameOf = async (id: string) => (await devices()).find((device) => device.id === id)?.name;
const isRevoked = async (id: string) =>
  (await devices()).find((device) => device.id === id)?.revokedAt !== null;

/** Said on an owner's device, unless another token is given. */
const asOwner = async (words: string, more: Record<string, unknown> = {}, token = service.tokens.own) => {
  const response = await service.app.inject({
    method: 'POST',
    url: '/v1/turns',
    headers: bearer(token),
    payload: { id: randomUUID(), hypotheses: [{ text: words }], ...more },
  });
  expect(response.statusCode).toBe(200);
  return response.json<TurnReply>();
};

const wait = async (name: string) => {
  const started = await service.app.inject({ method: 'POST', url: '/v1/pairings', payload: { name } });
  return started.json<{ code: string; spoken: string; token: string }>();
};
const me = async (token: string) => service.app.inject({ url: '/v1/me', headers: bearer(token) });

it('names the devices that are let in, and none of another household or sent away', async () => {
  const { device } = await letIn(service.store, household(), 'speak');
  await call(device.id, 'hall speaker');
  await call(service.devices.help.id, 'lost tablet');
  await service.store.changeDevices(household(), {
    deeds: [{ kind: 'send-away', id: service.devices.help.id }],
    by: null,
    at: '2026-05-14T10:00:00.000Z',
  });
  const { speech, changes } = await say(service, 'which devices are there', { conversation: 'devices' });
  expect(speech.text).toContain('hall speaker');
  expect(speech.text).not.toContain('lost tablet');
  expect(changes).toEqual([]);
});

it('lets a device in by its code, however the code was written down', async () => {
  for (const write of [
    ({ code }: { code: string }) => `let in the device with code ${code.slice(0, 4)} ${code.slice(4)}`,
    ({ spoken }: { spoken: string }) => `let the new speaker in, the code is ${spoken}`,
    ({ code }: { code: string }) => `pair the phone with code ${code.match(/../g)!.join(' ')}`,
  ]) {
    const waiting = await wait('pantry speaker');
    const { speech } = await asOwner(write(waiting));
    expect(speech.text).toMatch(/pantry speaker is let in/);
    expect((await me(waiting.token)).json()).toMatchObject({
      device: { name: 'pantry speaker', scope: 'speak' },
    });
  }
});

it('lets it in once, also when the turn is sent again', async () => {
  const { code } = await wait('pantry speaker');
  const turn = { id: 'sent-twice', conversation: 'pairing' };
  const first = await asOwner(`let in the device with code ${code}`, turn);
  const again = await asOwner(`let in the device with code ${code}`, turn);
  expect(again).toEqual(first);
  expect((await devices()).filter(({ name }) => name === 'pantry speaker')).toHaveLength(1);
  const used = await asOwner(`let in the device with code ${code}`);
  expect(used.speech.text).toMatch(/no device waits/i);
});

it('asks for a code, and again when too few digits were heard', async () => {
  const { code, token } = await wait('hall speaker');
  const talk = { conversation: 'asked' };
  expect((await asOwner('let in the new speaker', talk)).speech.text).toMatch(/which code/i);
  expect((await asOwner(code.slice(0, 5), talk)).speech.text).toMatch(/five digits/);
  expect((await asOwner(code, talk)).speech.text).toMatch(/hall speaker is let in/);
  expect((await me(token)).statusCode).toBe(200);
});

it('limits wrong codes by voice and by page together', async () => {
  const { code, token } = await wait('hall speaker');
  const wrong = code.startsWith('0') ? '1' : '0';
  for (let n = 0; n < 3; n += 1)
    expect((await asOwner(`let in the device with code ${wrong}${code.slice(1)}`)).speech.text).toMatch(
      /no device waits/i,
    );
  for (let n = 0; n < 2; n += 1)
    await service.app.inject({
      method: 'POST',
      url: '/v1/pairings/confirm',
      headers: bearer(service.tokens.own),
      payload: { code: `${wrong}${code.slice(1)}` },
    });
  expect((await asOwner(`let in the device with code ${code}`)).speech.text).toMatch(/too many wrong codes/i);
  expect((await me(token)).statusCode).toBe(401);
});

it('calls a device something else', async () => {
  const { id } = service.devices.own;
  const { speech } = await asOwner('call the kitchen speaker the window speaker');
  expect(speech.text).toBe('The kitchen speaker is now the window speaker.');
  expect(await nameOf(id)).toBe('window speaker');
  expect((await asOwner('rename Dele’s phone to window speaker')).speech.text).toMatch(/already/);
});

it('removes a device only after a yes, and cuts it off', async () => {
  const { id } = service.devices.help;
  const talk = { conversation: 'removing' };
  const asked = await asOwner('remove Dele’s phone', talk);
  expect(asked.speech.text).toMatch(/^Remove the Dele’s phone\?|^Remove Dele’s phone\?/);
  expect(await isRevoked(id)).toBe(false);
  await asOwner('no', talk);
  expect(await isRevoked(id)).toBe(false);
  await asOwner('remove Dele’s phone', talk);
  const turn = { ...talk, id: 'sure' };
  const done = await asOwner('yes', turn);
  expect(done.speech.text).toMatch(/removed/);
  expect(await isRevoked(id)).toBe(true);
  expect((await me(service.tokens.help)).statusCode).toBe(401);
  expect(await asOwner('yes', turn)).toEqual(done);
});

it('says so when the device was removed elsewhere before the yes', async () => {
  const talk = { conversation: 'late' };
  await asOwner('remove Dele’s phone', talk);
  await service.app.inject({
    method: 'DELETE',
    url: `/v1/devices/${service.devices.help.id}`,
    headers: bearer(service.tokens.own),
  });
  expect((await asOwner('yes', talk)).speech.text).toMatch(/no device is called/i);
});

it('asks which of two it is', async () => {
  const { device } = await letIn(service.store, household(), 'speak');
  await call(device.id, 'Ruth’s phone');
  const talk = { conversation: 'which' };
  expect((await asOwner('remove the phone', talk)).speech.text).toMatch(/which one/i);
  expect((await asOwner('Ruth’s phone', talk)).speech.text).toMatch(/^Remove Ruth’s phone\?/);
  await asOwner('yes', talk);
  expect(await isRevoked(device.id)).toBe(true);
  expect(await isRevoked(service.devices.help.id)).toBe(false);
});

it('keeps the last owner', async () => {
  const { speech, expects } = await asOwner('remove the kitchen speaker');
  expect(speech.text).toMatch(/only owner/);
  expect(expects.kind).toBe('open');
  expect(await isRevoked(service.devices.own.id)).toBe(false);
});

it('does none of it for a device that is not an owner’s, nor in practice', async () => {
  const { code, token } = await wait('stranger');
  for (const words of [
    `let in the device with code ${code}`,
    'call the kitchen speaker mine',
    'remove the kitchen speaker',
  ]) {
    for (const asker of [service.tokens.speak, service.tokens.help])
      expect((await asOwner(words, {}, asker)).speech.text).toMatch(/only an owner/i);
  }
  await asOwner('let me practise', { conversation: 'practice' });
  const practised = await asOwner(`let in the device with code ${code}`, { conversation: 'practice' });
  expect(practised.speech.text).toMatch(/while we practise/);
  expect((await me(token)).statusCode).toBe(401);
  expect(await nameOf(service.devices.own.id)).toBe('kitchen speaker');
});
