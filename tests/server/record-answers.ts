/**
 * `npm run answers`: does every operation of the API once, with its example as the body, and keeps what it answered in
 * `shared/wire/answers.json`, for the OpenAPI document. Keys, ids and what is drawn anew each time are put for others;
 * lists are cut to one and long texts short.
 */
import { writeFileSync } from 'node:fs';
import prettier from 'prettier';
import { Webhook } from 'standardwebhooks';
import { projectFile } from '../../src/project-files.js';
import { EXAMPLES, type Answers } from '../../src/server/api-examples.js';
import { bearer, say, startService, THURSDAY, type Service } from '../support/service.js';

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
interface Call {
  readonly at: string;
  readonly url?: string;
  readonly body?: object;
  readonly headers?: Record<string, string>;
  readonly scope?: keyof Service['tokens'];
}

const LONGEST = 1_200;
const LISTED = 4;

/** Every list of records to its first, every other to a few; texts that no reader reads to the end, to their start. */
const cut = (value: unknown): unknown => {
  if (typeof value === 'string') return value.length > LONGEST ? `${value.slice(0, 60)}…` : value;
  if (Array.isArray(value)) {
    const few = value.slice(0, typeof value[0] === 'object' ? 1 : LISTED);
    return few.map(cut);
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, cut(part)]));
};

const drawn = new Map<string, string>();
const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;
/** The same for the same, and the same at each recording. */
const settled = (text: string): string =>
  text
    .replace(/tsf_[\w-]{43}/g, `tsf_${'x'.repeat(43)}`)
    .replace(/whsec_[\w+/=]{40,}/g, `whsec_${Buffer.alloc(32).toString('base64')}`)
    .replace(/(\/v1\/feeds\/[^/"]+\/[^/"]+\/)[\w-]{43}/g, `$1${'x'.repeat(43)}`)
    .replace(/"csrfToken":"[^"]+"/g, '"csrfToken":"9kq…"')
    .replace(/"invitation":"[^"]+"/g, '"invitation":"eyJ….c2VjcmV0"')
    .replace(/#join=[^"]+/g, '#join=eyJ….c2VjcmV0')
    .replace(/"code":"\d{8}","spoken":"[^"]+"/g, '"code":"12345678","spoken":"1 2 3 4, 5 6 7 8"')
    .replace(UUID, (id) => {
      if (!drawn.has(id))
        drawn.set(id, `00000000-0000-4000-8000-${String(drawn.size + 1).padStart(12, '0')}`);
      return drawn.get(id) ?? id;
    });

const service = await startService({
  PUBLIC_URL: 'https://kitchen.example',
  NOTICE_PUBLIC_KEY: 'B'.repeat(87),
  NOTICE_PRIVATE_KEY: 'a'.repeat(43),
  NOTICE_CONTACT: 'mailto:somebody@kitchen.example',
});
const answers: Record<string, Record<string, unknown>> = {};
const failed: string[] = [];

const ask = async ({ at, url, body, headers = {}, scope = 'own' }: Call): Promise<unknown> => {
  const [method, path = ''] = at.split(' ') as [Method, string];
  const payload = body ?? (EXAMPLES[at] as object | undefined);
  const answer = await service.app.inject({
    method,
    url: url ?? path,
    headers: { 'idempotency-key': at.replace(/\W+/g, '.'), ...bearer(service.tokens[scope]), ...headers },
    ...(payload === undefined ? {} : { payload }),
  });
  const type = String(answer.headers['content-type'] ?? '').split(';')[0] ?? '';
  if (answer.statusCode >= 300) failed.push(`${at}: ${answer.statusCode} ${answer.body}`);
  const text = settled(answer.body);
  if (type.startsWith('application/json')) (answers[at] ??= {})[type] = cut(JSON.parse(text) as unknown);
  else if (/^text\/(calendar|plain|tab)|ssml|srgs/.test(type))
    (answers[at] ??= {})[type] = text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
  return type.startsWith('application/json') ? answer.json<unknown>() : null;
};

const { items, people, purchases, markers } = service.kitchen;
const [item] = [...items.values()].filter(({ gone, amount }) => gone === null && amount !== null);
const [person] = people.values();
const [line] = purchases.values();
const [marker] = markers.values();
const within = (path: string, id: string | undefined): string =>
  path.replace('{id}', encodeURIComponent(id ?? ''));

await ask({ at: 'PATCH /v1/household', body: { name: "Marta's kitchen", microwaveWatts: 900 } });
for (const at of [
  'GET /health/live',
  'GET /health/ready',
  'GET /v1/me',
  'POST /v1/turns',
  'GET /v1/household',
])
  await ask({ at, scope: 'speak' });
const asked = (await ask({ at: 'POST /v1/pairings' })) as { code: string };
const letIn = (await ask({
  at: 'POST /v1/pairings/confirm',
  body: { code: asked.code, scope: 'speak' },
})) as {
  id: string;
};
const invited = (await ask({ at: 'POST /v1/invitations' })) as { invitation: string };
await ask({ at: 'POST /v1/invitations/accept', body: { invitation: invited.invitation } });
for (const at of ['GET /v1/notices', 'GET /v1/devices', 'GET /v1/devices/journal']) await ask({ at });
await ask({ at: 'PATCH /v1/devices/{id}', url: within('/v1/devices/{id}', letIn.id) });
await ask({ at: 'DELETE /v1/devices/{id}', url: within('/v1/devices/{id}', letIn.id) });
const begun = await service.app.inject({
  method: 'POST',
  url: '/v1/session',
  payload: { token: service.tokens.speak },
});
await ask({ at: 'POST /v1/session', body: { token: service.tokens.speak } });
const cookie = begun.cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
await ask({ at: 'GET /v1/session', headers: { cookie } });
await say(service, 'set a rice timer for ten minutes');
await say(service, `put two bags of lentils from the corner shop on the list for ${person?.name}`);
for (const path of ['places', 'items', 'markers', 'list', 'use-first', 'board', 'reminders', 'people'])
  await ask({ at: `GET /v1/kitchen/${path}` });
for (const as of ['words', 'jsgf', 'srgs'])
  await ask({ at: 'GET /v1/kitchen/biasing', url: `/v1/kitchen/biasing?as=${as}` });
await ask({ at: 'GET /v1/kitchen/items/{id}', url: within('/v1/kitchen/items/{id}', item?.id) });
const [timer] = (await service.households.look('marta')).kitchen.reminders.values();
await ask({ at: 'DELETE /v1/kitchen/reminders/{id}', url: within('/v1/kitchen/reminders/{id}', timer?.id) });
await ask({ at: 'POST /v1/kitchen/places' });
await ask({ at: 'POST /v1/kitchen/items' });
await ask({ at: 'PATCH /v1/kitchen/items/{id}', url: within('/v1/kitchen/items/{id}', item?.id) });
await ask({ at: 'POST /v1/kitchen/items/{id}/take', url: within('/v1/kitchen/items/{id}/take', item?.id) });
const [place] = service.kitchen.places.values();
await ask({
  at: 'POST /v1/kitchen/items/{id}/move',
  url: within('/v1/kitchen/items/{id}/move', item?.id),
  body: { placeId: place?.id },
});
await ask({
  at: 'POST /v1/kitchen/items/{id}/finish',
  url: within('/v1/kitchen/items/{id}/finish', item?.id),
});
await ask({ at: 'POST /v1/kitchen/undo', body: {} });
await ask({ at: 'POST /v1/kitchen/markers' });
await ask({ at: 'PATCH /v1/kitchen/markers/{id}', url: within('/v1/kitchen/markers/{id}', marker?.id) });
await ask({ at: 'POST /v1/kitchen/list' });
await ask({ at: 'DELETE /v1/kitchen/list/{id}', url: within('/v1/kitchen/list/{id}', line?.id) });
await ask({ at: 'POST /v1/kitchen/people', body: { name: 'Noor', allergens: ['sesame'] } });
await ask({ at: 'PATCH /v1/kitchen/people/{id}', url: within('/v1/kitchen/people/{id}', person?.id) });
await ask({ at: 'GET /v1/kitchen/journal' });
await ask({ at: 'GET /v1/household/export' });
await ask({ at: 'POST /v1/household/import' });
await ask({ at: 'GET /v1/labels/stocks' });
await ask({ at: 'GET /v1/labels/guide', url: '/v1/labels/guide?kind=pdf' });
await ask({ at: 'POST /v1/labels', body: { kind: 'pdf', items: [], markers: [marker?.id] } });
await ask({ at: 'GET /v1/charts' });
await ask({ at: 'GET /v1/lessons' });
await say(service, 'my teacher may see how my lessons go');
await say(service, 'yes');
await ask({ at: 'GET /v1/lessons/report' });
const doors = (await ask({ at: 'GET /v1/feeds' })) as Record<'calendar' | 'listText' | 'listJson', string> & {
  turns: { url: string; secret: string };
};
const feed = (name: string): string => `GET /v1/feeds/{household}/{device}/{key}/${name}`;
await ask({ at: feed('calendar.ics'), url: new URL(doors.calendar).pathname });
await ask({ at: feed('list.txt'), url: new URL(doors.listText).pathname });
await ask({ at: feed('list.json'), url: new URL(doors.listJson).pathname });
const hook = 'POST /v1/hooks/{household}/{device}/turns';
for (const accept of ['application/json', 'application/ssml+xml', 'text/plain']) {
  const body = JSON.stringify(EXAMPLES[hook]);
  const signed = new Webhook(doors.turns.secret).sign(accept, new Date(THURSDAY), body);
  await ask({
    at: hook,
    url: new URL(doors.turns.url).pathname,
    headers: {
      accept,
      'webhook-id': accept,
      'webhook-timestamp': String(Date.parse(THURSDAY) / 1000),
      'webhook-signature': signed,
    },
  });
}
await service.close();

if (failed.length > 0) {
  console.error(failed.join('\n'));
  process.exitCode = 1;
} else {
  const file = projectFile('shared', 'wire', 'answers.json');
  const options = { ...(await prettier.resolveConfig(file)), parser: 'json' };
  writeFileSync(file, await prettier.format(JSON.stringify(answers satisfies Answers), options));
}
