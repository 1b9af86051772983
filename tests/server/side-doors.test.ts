/** A household's own feeds and the signed door for other speech fronts, asked as their programs ask: over HTTP. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import ICAL from 'ical.js';
import { Webhook } from 'standardwebhooks';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { z } from 'zod';
import type { sideDoors } from '../../shared/wire/side-doors.js';
import { addDeviceCommands } from '../../src/cli/devices.js';
import { rankUseFirst } from '../../src/safety/index.js';
import { wallPage } from '../../src/server/side-doors/wall.js';
import { listInPrint } from '../../src/server/side-doors/list-in-print.js';
import { openSqliteStore } from '../../src/store/index.js';
import { bearer, kitchenOf, letIn, say, startService, THURSDAY, type Service } from '../support/service.js';

type Doors = z.infer<typeof sideDoors>;

let service: Service;
beforeAll(async () => {
  service = await startService({ PUBLIC_URL: 'http://kitchen.example' });
});
afterAll(() => service.close());

const http = () => request(service.app.server);
const doorsOf = async (token: string): Promise<Doors> =>
  (await http().get('/v1/feeds').set(bearer(token)).expect(200)).body as Doors;
const path = (url: string): string => url.replace('http://kitchen.example', '');

const calendarAt = async (url: string): Promise<ICAL.Component> => {
  const { text } = await http()
    .get(path(url))
    .expect(200)
    .expect('content-type', 'text/calendar; charset=utf-8');
  return new ICAL.Component(ICAL.parse(text) as unknown[]);
};
const events = (calendar: ICAL.Component): ICAL.Event[] =>
  calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));

describe('the calendar', () => {
  it('is iCalendar that another library reads, with what RFC 5545 asks of each part', async () => {
    const { calendar } = await doorsOf(service.tokens.speak);
    const { text } = await http().get(path(calendar));
    // Section 3.1: lines end in CR LF and have at most 75 octets.
    expect(text.endsWith('\r\n')).toBe(true);
    for (const line of text.split('\r\n')) {
      expect(line).not.toMatch(/[\r\n]/);
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    }
    const read = await calendarAt(calendar);
    expect(read.getFirstPropertyValue('version')).toBe('2.0');
    expect(read.getFirstPropertyValue('prodid')).toBeTruthy();
    const all = read.getAllSubcomponents('vevent');
    expect(all.length).toBeGreaterThan(5);
    for (const event of all)
      for (const needed of ['uid', 'dtstamp', 'dtstart', 'summary'])
        expect(event.getFirstPropertyValue(needed), needed).toBeTruthy();
    expect(new Set(events(read).map(({ uid }) => uid)).size).toBe(all.length);
  });

  it('has each last day by guidance on its day, whatever the zone, with its source and never "safe"', async () => {
    const { kitchen, clock } = await service.households.look('marta');
    const wanted = rankUseFirst(kitchen, clock).flatMap(({ item, assessment }) =>
      assessment.lastDay === null ? [] : [`${item.id}.last-day@marta.tellshelf ${assessment.lastDay}`],
    );
    const made = events(await calendarAt((await doorsOf(service.tokens.speak)).calendar));
    expect(made.map(({ uid, startDate }) => `${uid} ${startDate.toString()}`).sort()).toEqual(wanted.sort());
    expect(made.every(({ startDate }) => startDate.isDate)).toBe(true);
    const chicken = made.find(({ summary }) => summary === 'Roast chicken: last day by guidance');
    expect(chicken?.description).toMatch(/^.*fridge.*\. From .*\. When in doubt, throw it out\.$/);
    for (const { summary, description } of made) expect(`${summary} ${description}`).not.toMatch(/\bsafe\b/i);
  });

  it('has reminders at their instant, with an alarm, and only for whom they are', async () => {
    await say(service, 'remind me to defrost the stew tomorrow at ten in the morning');
    const reminder = events(await calendarAt((await doorsOf(service.tokens.speak)).calendar)).find(
      ({ startDate }) => !startDate.isDate,
    );
    expect(reminder?.summary).toMatch(/defrost the stew/);
    expect(reminder?.startDate.toJSDate().toISOString()).toBe('2026-05-15T15:00:00.000Z');
    const alarm = reminder?.component.getFirstSubcomponent('valarm');
    expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect((alarm?.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds()).toBe(0);
  });

  it('says that nothing changed to who has it already', async () => {
    const { calendar } = await doorsOf(service.tokens.speak);
    const first = await http().get(path(calendar));
    const etag = String(first.headers['etag']);
    await http().get(path(calendar)).set('if-none-match', etag).expect(304);
    await say(service, 'put oats on the list');
    await http().get(path(calendar)).set('if-none-match', etag).expect(200);
  });

  it('refuses a wrong key by name, logs it without the key, and ends with its device', async () => {
    const { token, device } = await letIn(service.store, 'marta', 'speak');
    const { calendar } = await doorsOf(token);
    for (const wrong of [
      path(calendar).replace(/[^/]+(?=\/calendar)/, 'x'.repeat(43)),
      path(calendar).replace('/marta/', '/nobody/'),
      path((await doorsOf(service.tokens.own)).calendar).replace(/[^/]+(?=\/[^/]+\/calendar)/, device.id),
    ]) {
      const refused = await http().get(wrong).expect(401);
      expect(refused.body).toMatchObject({ code: 'not-identified' });
    }
    const lines = service.logged.filter((line) => line['problem'] === 'not-identified');
    expect(lines.at(-1)).toMatchObject({
      msg: 'request refused',
      route: 'GET /v1/feeds/:household/:device/:key/calendar.ics',
    });
    expect(JSON.stringify(service.logged)).not.toContain('xxxxxxxx');
    await http().get(path(calendar)).expect(200);
    await http().delete(`/v1/devices/${device.id}`).set(bearer(service.tokens.own)).expect(200);
    await http().get(path(calendar)).expect(401);
  });

  it('opens nothing else: a feed’s key is no device’s', async () => {
    const { calendar } = await doorsOf(service.tokens.own);
    const key = path(calendar).split('/').at(-2) ?? '';
    await http().get('/v1/me').set(bearer(key)).expect(401);
    await http()
      .get('/v1/me')
      .set(bearer(`tsf_${key}`))
      .expect(401);
  });
});

describe('whoever runs the machine', () => {
  it('is told the same addresses', async () => {
    const program = new Command().exitOverride();
    addDeviceCommands(program);
    const said: string[] = [];
    const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text) => said.push(String(text)) > 0);
    const folder = mkdtempSync(join(tmpdir(), 'tellshelf-doors-'));
    const store = openSqliteStore(join(folder, 'kitchen.sqlite'));
    await store.migrate();
    await store.createHousehold(kitchenOf('marta'), THURSDAY);
    await store.addDevice(service.devices.speak);
    await store.close();
    const ask = ['devices', 'feeds', service.devices.speak.id, '--data', folder];
    await program.parseAsync([...ask, '--address', 'http://kitchen.example/'], { from: 'user' });
    spy.mockRestore();
    rmSync(folder, { recursive: true, force: true });
    const { calendar, listText, listJson, wall, turns } = await doorsOf(service.tokens.speak);
    expect(said.join('')).toBe(
      `calendar\t${calendar}\nlist\t${listText}\njson\t${listJson}\nwall\t${wall}\nturns\t${turns.url}\nsecret\t${turns.secret}\n`,
    );
  });
});

describe('the list to buy', () => {
  it('is plain text and JSON', async () => {
    await say(service, 'put two pounds of butter on the list');
    const doors = await doorsOf(service.tokens.speak);
    const text = await http()
      .get(path(doors.listText))
      .expect(200)
      .expect('content-type', 'text/plain; charset=utf-8');
    expect(text.text.split('\n')).toContain('Butter, two pounds');
    const json = await http().get(path(doors.listJson)).expect(200);
    expect(json.body).toContainEqual(
      expect.objectContaining({ name: 'butter', amount: { value: 2, unit: 'pound' } }),
    );
    const whole = await http().get('/v1/kitchen/list').set(bearer(service.tokens.speak));
    expect(json.body).toEqual(whole.body);
  });

  it('says which kind, which shop and for whom, in the household’s language', async () => {
    const line = { note: 'unsalted', shop: 'dairy' };
    for (const [locale, text] of [
      ['en-US', 'Butter, two pounds, unsalted, from the dairy, for Dele'],
      ['es-MX', 'Butter, dos libras, unsalted, de dairy, para Dele'],
    ] as const) {
      const own = await startService({}, { householdId: locale });
      const { kitchen } = await own.households.look(locale);
      const dele = [...kitchen.people.values()].find(({ name }) => name === 'Dele');
      const send = (method: 'PATCH' | 'POST', url: string, payload: object) =>
        own.app.inject({ method, url, headers: bearer(own.tokens.own), payload });
      await send('PATCH', '/v1/household', { locale });
      const put = { ...line, name: 'butter', amount: { value: 2, unit: 'pound' }, forPersonId: dele?.id };
      expect((await send('POST', '/v1/kitchen/list', put)).statusCode).toBe(200);
      const asked = await own.app.inject({ url: '/v1/feeds', headers: bearer(own.tokens.speak) });
      const doors = asked.json<Doors>();
      const at = async (url: string) => (await own.app.inject(new URL(url).pathname)).body;
      expect((await at(doors.listText)).split('\n')).toContain(text);
      expect(await at(doors.wall)).toContain(`<li>${text}.</li>`);
      expect(JSON.parse(await at(doors.listJson))).toContainEqual(
        expect.objectContaining({ ...line, forPerson: 'Dele' }),
      );
      await own.close();
    }
  });

  it('stands under its sections, what has none last, and is empty where nothing is to be bought', () => {
    const line = (words: string, section: string | null) => ({ words, section });
    expect(
      listInPrint([
        line('rye', 'bakery'),
        line('rolls', 'bakery'),
        line('milk', 'dairy'),
        line('oats', null),
      ]),
    ).toBe('bakery:\nrye\nrolls\n\ndairy:\nmilk\n\noats\n');
    expect(listInPrint([line('oats', null)])).toBe('oats\n');
    expect(listInPrint([])).toBe('');
  });
});

describe('the page for a wall', () => {
  it('shows what ends soon, what to buy and what will ring, as it is now', async () => {
    await say(service, 'set a rice timer for ten minutes');
    await say(service, 'put oats and honey on the list');
    const { wall } = await doorsOf(service.tokens.speak);
    const { text } = await http()
      .get(path(wall))
      .expect(200)
      .expect('content-type', 'text/html; charset=utf-8')
      .expect('cache-control', 'private, no-store');
    expect(text).toContain('<html lang="en-US">');
    expect(text).not.toMatch(/<script/i);
    const lines = [...text.matchAll(/<li>(.*?)<\/li>/g)].map(([, line]) => line);
    expect(lines).toEqual(
      expect.arrayContaining([
        'Roast chicken: tomorrow.',
        expect.stringMatching(/^Sliced ham: .*, past guidance\.$/),
        'Honey.',
        'Rice, at six ten in the evening.',
        'Defrost the stew, tomorrow at ten in the morning.',
      ]),
    );
    expect(text).toMatch(/When in doubt, throw it out/);
    const { kitchen, clock } = await service.households.look('marta');
    const ranked = rankUseFirst(kitchen, clock);
    for (const { item, assessment } of ranked)
      if (assessment.daysLeft !== null && assessment.lastDay !== null) {
        const shown = lines.some((line) => line?.toLowerCase().startsWith(`${item.name.toLowerCase()}: `));
        expect(shown, item.name).toBe(assessment.daysLeft <= 3);
      }
  });

  it('says so where there is nothing, and escapes what a household wrote', () => {
    const page = wallPage(
      'Ruth & <Dele>',
      'en-GB',
      [{ heading: 'To buy', lines: [], none: 'Nothing.' }],
      ['x'],
      null,
    );
    expect(page).toContain('<h1>Ruth &amp; &lt;Dele&gt;</h1>');
    expect(page).toContain('<p>Nothing.</p>');
  });

  it('is read anew where somebody asked for that, from fifteen seconds to an hour', async () => {
    const { wall } = await doorsOf(service.tokens.speak);
    expect((await http().get(path(wall))).text).not.toMatch(/http-equiv="refresh"/);
    for (const every of [15, 3_600])
      expect(
        (
          await http()
            .get(`${path(wall)}?every=${every}`)
            .expect(200)
        ).text,
      ).toContain(`<meta http-equiv="refresh" content="${every}" />`);
    for (const every of ['14', '3601', '0', 'x', '60;url=http://else']) {
      const refused = await http().get(path(wall)).query({ every }).expect(400);
      expect(refused.body).toMatchObject({ code: 'invalid-request' });
    }
  });

  it('opens with its own key only', async () => {
    const { wall } = await doorsOf(service.tokens.speak);
    await http()
      .get(path(wall).replace(/[^/]+(?=\/wall)/, 'y'.repeat(43)))
      .expect(401);
  });
});

describe('the door for another speech front', () => {
  let count = 0;
  const post = async (
    words: string,
    more: { id?: string; seconds?: number; secret?: string; accept?: string; body?: object } = {},
  ) => {
    const { turns } = await doorsOf(service.tokens.speak);
    const id = more.id ?? `msg_${(count += 1)}/é`;
    const at = new Date(Date.parse(THURSDAY) + (more.seconds ?? 0) * 1000);
    const body = JSON.stringify(more.body ?? { text: words, conversation: 'call-7' });
    return http()
      .post(path(turns.url))
      .set({
        'content-type': 'application/json',
        'webhook-id': encodeURIComponent(id),
        'webhook-timestamp': String(Math.floor(at.getTime() / 1000)),
        'webhook-signature': new Webhook(more.secret ?? turns.secret).sign(encodeURIComponent(id), at, body),
        ...(more.accept === undefined ? {} : { accept: more.accept }),
      })
      .send(body);
  };

  it('takes words and gives SSML, and goes on with the same conversation', async () => {
    const found = await post('where is the lentil stew').then((answer) => answer);
    expect(found.status).toBe(200);
    expect(found.headers['content-type']).toBe('application/ssml+xml; charset=utf-8');
    expect(found.text ?? String(found.body)).toMatch(/^<speak .*lentil stew is on the first shelf/);
    const taken = await post('how old is it', { accept: 'text/plain' });
    expect(taken.text).toMatch(/^Lentil stew: made last Tuesday/);
  });

  it('says in JSON whether an answer is waited for, and when the talk is over', async () => {
    const asked = await post('I finished the sour cream', { accept: 'application/json' });
    expect(asked.body).toMatchObject({ expects: true, goodbye: false });
    const no = await post('no', { accept: 'application/json' });
    expect(no.body).toMatchObject({ expects: false });
    expect((await post('goodbye', { accept: 'application/json' })).body).toMatchObject({ goodbye: true });
  });

  it('does one sent twice once, and refuses its id for anything else', async () => {
    const before = (await service.households.look('marta')).kitchen.version;
    const [one, other] = [
      await post('put rye bread on the list', { id: 'twice', accept: 'text/plain' }),
      await post('put rye bread on the list', { id: 'twice', accept: 'text/plain' }),
    ];
    expect(other.text).toBe(one.text);
    expect((await service.households.look('marta')).kitchen.version).toBe(before + 1);
    expect((await post('put salt on the list', { id: 'twice' })).body).toMatchObject({ code: 'id-reused' });
  });

  it('takes nothing that is not signed, not signed with its secret, or five minutes off', async () => {
    const other = (await doorsOf(service.tokens.own)).turns.secret;
    const before = (await service.households.look('marta')).kitchen.version;
    for (const more of [{ secret: other }, { seconds: 301 }, { seconds: -301 }]) {
      const refused = await post('undo', more);
      expect(refused.status).toBe(401);
      expect(refused.body).toMatchObject({ code: 'not-signed' });
    }
    const { turns } = await doorsOf(service.tokens.speak);
    await http().post(path(turns.url)).send({ text: 'undo' }).expect(401);
    expect((await service.households.look('marta')).kitchen.version).toBe(before);
    for (const seconds of [300, -300]) expect((await post('hello', { seconds })).status).toBe(200);
  });

  it('counts as its device does', async () => {
    const own = await startService({ PUBLIC_URL: 'http://kitchen.example', DEVICE_RATE: '3' });
    const asked = await request(own.app.server).get('/v1/feeds').set(bearer(own.tokens.speak));
    const { turns } = asked.body as Doors;
    const statuses: number[] = [];
    for (const id of ['a', 'b', 'c']) {
      const body = JSON.stringify({ text: 'hello' });
      const answer = await request(own.app.server)
        .post(path(turns.url))
        .set({
          'content-type': 'application/json',
          'webhook-id': id,
          'webhook-timestamp': String(Date.parse(THURSDAY) / 1000),
          'webhook-signature': new Webhook(turns.secret).sign(id, new Date(THURSDAY), body),
        })
        .send(body);
      statuses.push(answer.status);
    }
    await own.close();
    // The addresses were asked for with the first of three.
    expect(statuses).toEqual([200, 200, 429]);
  });

  it('names what is wrong with a body, once it is signed', async () => {
    expect((await post('', { body: { words: 'hello' } })).body).toMatchObject({ code: 'invalid-request' });
    expect((await post('', { body: { text: 'a'.repeat(2_001) } })).body).toMatchObject({
      code: 'invalid-request',
    });
  });
});
