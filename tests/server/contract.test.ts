/** What other programs are made from: the descriptions are valid, and a client made from them works. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import Ajv from 'ajv';
import Ajv2020 from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { bearer, startService, type Service } from '../support/service.js';

// Each tool is a process of its own, the compiler among them.
vi.setConfig({ testTimeout: 240_000 });

const run = promisify(execFile);
const tool = (name: string, args: readonly string[]) =>
  run(projectFile('node_modules', '.bin', name), args, {
    env: { ...process.env, REDOCLY_TELEMETRY: 'off', REDOCLY_SUPPRESS_UPDATE_NOTICE: 'true' },
    maxBuffer: 16 * 1024 * 1024,
  });

interface Operation {
  readonly operationId: string;
  readonly summary: string;
  readonly description: string;
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly example?: unknown }>> };
  readonly responses: Readonly<Record<string, { readonly content?: Readonly<Record<string, unknown>> }>>;
}
interface Document {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

let service: Service;
let document: Document;
let folder: string;
beforeAll(async () => {
  service = await startService();
  document = (await service.app.inject('/v1/openapi.json')).json<Document>();
  // Below node_modules, so that what is made there finds the libraries.
  folder = mkdtempSync(projectFile('node_modules', '.contract-'));
  writeFileSync(join(folder, 'openapi.json'), JSON.stringify(document));
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await service.close();
});

/** Every `$ref` of a document that leads nowhere in it. */
const lost = (whole: unknown): string[] => {
  const missing: string[] = [];
  const look = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    for (const [key, value] of Object.entries(part)) {
      if (key === '$ref' && typeof value === 'string') {
        const found = value
          .replace(/^#\//, '')
          .split('/')
          .reduce<unknown>((at, name) => (at as Record<string, unknown> | undefined)?.[name], whole);
        if (found === undefined) missing.push(value);
      } else look(value);
    }
  };
  look(whole);
  return missing;
};

describe('the OpenAPI document', () => {
  it('is valid to two validators', async () => {
    const name = '@seriousme/openapi-schema-validator';
    const { Validator } = (await import(name)) as {
      Validator: new () => { validate(given: object): Promise<{ valid: boolean; errors?: unknown }> };
    };
    const checked = await new Validator().validate(structuredClone(document));
    expect(checked.errors).toBeUndefined();
    expect(checked.valid).toBe(true);
    const args = ['lint', join(folder, 'openapi.json'), '--format=json'];
    // A socket answers 101, a health probe has no errors of the caller's making.
    const skipped = ['operation-2xx-response', 'operation-4xx-response'].flatMap((rule) => [
      '--skip-rule',
      rule,
    ]);
    const { stdout } = await tool('redocly', [...args, ...skipped]);
    expect(JSON.parse(stdout)).toMatchObject({ totals: { errors: 0, warnings: 0 } });
  });

  it('says of every operation its name, right and errors, with an example of each error', () => {
    const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, operation]) => ({ at: `${method} ${path}`, path, ...operation })),
    );
    expect(operations.length).toBeGreaterThan(30);
    expect(new Set(operations.map(({ operationId }) => operationId)).size).toBe(operations.length);
    // Names of functions in most languages.
    for (const { operationId } of operations) expect(operationId).toMatch(/^[a-z][A-Za-z\d]*$/);
    for (const { at, path, summary, description, responses } of operations) {
      expect(summary, at).toBeTruthy();
      expect(description, at).toMatch(/Right: /);
      if (path.startsWith('/health')) continue;
      const errors = Object.entries(responses).filter(([status]) => /^[45]/.test(status));
      expect(errors.length, at).toBeGreaterThan(1);
      for (const [status, { content }] of errors) {
        const { examples } = content?.['application/problem+json'] as { examples: Record<string, object> };
        for (const example of Object.values(examples))
          expect(example, at).toMatchObject({ value: { status: Number(status) } });
      }
    }
  });

  it('gives of every answer an example that keeps to its schema', () => {
    const ajv = new Ajv2020.default({ strict: false, logger: false, validateFormats: false });
    ajv.addSchema({ ...document, $id: 'api' });
    const shown = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).flatMap(([method, { responses }]) =>
        Object.entries(responses).flatMap(([status, { content = {} }]) =>
          // A page and a sound are no examples to read.
          /^2/.test(status)
            ? Object.entries(content).map(([type, of]) => ({ path, method, status, type, of }))
            : [],
        ),
      ),
    );
    expect(shown.length).toBeGreaterThan(50);
    for (const { path, method, status, type, of } of shown) {
      if (type === 'text/html' || type === 'audio/wav') continue;
      const at = `${method} ${path} ${type}`;
      const { example } = of as { example?: unknown };
      expect(example, at).toBeDefined();
      const steps = ['paths', path, method, 'responses', status, 'content', type, 'schema'];
      const pointer = steps.map((step) =>
        encodeURIComponent(step.replaceAll('~', '~0').replaceAll('/', '~1')),
      );
      const check = ajv.compile({ $ref: `api#/${pointer.join('/')}` });
      check(example);
      expect(check.errors ?? [], at).toEqual([]);
      if (type === 'application/json')
        expect(check(typeof example === 'string' ? {} : 'else'), at).toBe(false);
    }
  });

  it('shuts nothing out of an answer that may gain parts, and everything out of a body that it does not know', async () => {
    const found: string[] = [];
    const look = (part: unknown, at: string): void => {
      if (typeof part !== 'object' || part === null) return;
      const { $ref, additionalProperties } = part as { $ref?: string; additionalProperties?: unknown };
      if (additionalProperties === false) found.push(at);
      if ($ref !== undefined)
        look(
          $ref
            .split('/')
            .slice(1)
            .reduce<unknown>((of, name) => (of as Record<string, unknown>)[name], document),
          $ref,
        );
      for (const [key, value] of Object.entries(part))
        if (key !== 'example' && key !== 'examples') look(value, `${at}/${key}`);
    };
    for (const [path, methods] of Object.entries(document.paths))
      for (const [method, { responses }] of Object.entries(methods))
        if (path !== '/v1/conversation') look(responses, `${method} ${path}`);
    expect(found).toEqual([]);
    const more = await service.app.inject({
      method: 'POST',
      url: '/v1/kitchen/list',
      headers: bearer(service.tokens.own),
      payload: { name: 'oats', colour: 'red' },
    });
    expect(more.statusCode).toBe(400);
  });

  it('gives of every operation with a body one that it takes', async () => {
    const [item] = service.kitchen.items.values();
    for (const [path, methods] of Object.entries(document.paths))
      for (const [method, { requestBody }] of Object.entries(methods)) {
        if (requestBody === undefined) continue;
        const at = `${method} ${path}`;
        const { example } = requestBody.content['application/json']!;
        expect(example, at).toBeTypeOf('object');
        // Ids of nobody; what is wrong with a body is told before that.
        const url = path.replace('items/{id}', `items/${item!.id}`).replace(/\{\w+\}/g, 'none');
        const answer = await service.app.inject({
          method: method.toUpperCase() as 'POST',
          url,
          headers: bearer(service.tokens.own),
          payload: example as object,
        });
        const code = answer.statusCode < 400 ? 'done' : answer.json<{ code: string }>().code;
        expect(answer.statusCode, at).toBeLessThan(500);
        expect(['invalid-request', 'malformed-json', 'wrong-media-type', 'too-large'], at).not.toContain(
          code,
        );
      }
  });

  it('says of what type every answer is', () => {
    for (const [path, methods] of Object.entries(document.paths))
      for (const [method, { responses }] of Object.entries(methods)) {
        const done = responses['200'];
        if (done === undefined) continue;
        expect(Object.keys(done.content ?? {}).length, `${method} ${path}`).toBeGreaterThan(0);
      }
    const feed = document.paths['/v1/feeds/{household}/{device}/{key}/calendar.ics']?.['get'];
    expect(Object.keys(feed?.responses['200']?.content ?? {})).toEqual(['text/calendar']);
    expect(JSON.stringify(document)).not.toContain('x-produces');
  });

  it('names the errors that a route really answers with', async () => {
    const refused = await service.app.inject({ method: 'POST', url: '/v1/turns', payload: {} });
    const { code, status } = refused.json<{ code: string; status: number }>();
    const { content } = document.paths['/v1/turns']!['post']!.responses[String(status)]!;
    expect(content?.['application/problem+json']).toHaveProperty(['examples', code]);
    expect(refused.headers['content-type']).toMatch('application/problem+json');
  });
});

describe('the AsyncAPI document', () => {
  it('is version 3, refers to nothing it lacks, and has every message of the socket', async () => {
    const made = (await service.app.inject('/v1/asyncapi.json')).json<{
      asyncapi: string;
      channels: { conversation: { messages: object } };
    }>();
    expect(made.asyncapi).toBe('3.0.0');
    expect(lost(made)).toEqual([]);
    expect(Object.keys(made.channels.conversation.messages).sort()).toEqual(
      [
        ...['turn', 'partial', 'ping', 'ack'].map((type) => `client-${type}`),
        ...['welcome', 'reply', 'partial', 'pong', 'unasked', 'changed', 'error'].map(
          (type) => `server-${type}`,
        ),
      ].sort(),
    );
  });

  it('says what each message is for, with an example that keeps to its schema', async () => {
    const made = (await service.app.inject('/v1/asyncapi.json')).json<{
      components: { messages: Record<string, { summary?: string; examples: { payload: object }[] }> };
    }>();
    const ajv = new Ajv2020.default({ strict: false, logger: false, validateFormats: false });
    ajv.addSchema({ ...made, $id: 'socket' });
    for (const [name, { summary, examples }] of Object.entries(made.components.messages)) {
      expect(summary, name).toBeTruthy();
      const check = ajv.compile({ $ref: `socket#/components/messages/${name}/payload` });
      check(examples[0]?.payload);
      expect(check.errors ?? [], name).toEqual([]);
      expect(check({ ...examples[0]?.payload, type: 'else' }), name).toBe(false);
      // What comes from the service may gain parts; what goes to it is known whole.
      expect(check({ ...examples[0]?.payload, more: 1 }), name).toBe(name.startsWith('server-'));
    }
  });

  it('would be found lacking if it were', () => {
    expect(lost({ a: { $ref: '#/b/c' }, b: {} })).toEqual(['#/b/c']);
  });

  it('is valid by the specification’s own schema, and would not be with a slip in it', async () => {
    const ajv = new Ajv.default({ strict: false, logger: false });
    ajv.addFormat('uri-reference', true).addFormat('uri', true).addFormat('regex', true);
    const schema = readFileSync(
      projectFile('node_modules', '@asyncapi', 'specs', 'schemas', '3.0.0-without-$id.json'),
      'utf8',
    );
    const check = ajv.compile(JSON.parse(schema) as object);
    const made = (await service.app.inject('/v1/asyncapi.json')).json<Record<string, object>>();
    check(made);
    expect(check.errors ?? []).toEqual([]);
    expect(check({ ...made, operations: { hear: { action: 'listen', channel: {} } } })).toBe(false);
    expect(check({ ...made, chanels: {} })).toBe(false);
  });
});

/** As a stranger would write it, from the description alone. */
const client = `
import createClient from 'openapi-fetch';
import type { paths } from './api.js';

const [base = '', token = ''] = process.argv.slice(2);
const api = createClient<paths>({ baseUrl: base, headers: { authorization: \`Bearer \${token}\` } });
const failed = (error: { code: string } | undefined): never => {
  throw new Error(error?.code ?? 'no answer');
};
const say = async (text: string) => {
  const { data, error } = await api.POST('/v1/turns', {
    body: { id: crypto.randomUUID(), conversation: 'a-stranger', hypotheses: [{ text }] },
  });
  return data?.speech.text ?? failed(error);
};

console.log(await say('where is the milk'));
const waits = await api.POST('/v1/pairings', { body: { name: 'speaker by the door' } });
const asked = waits.data ?? failed(waits.error);
const letIn = await api.POST('/v1/pairings/confirm', { body: { code: asked.code } });
console.log((letIn.data ?? failed(letIn.error)).name);
const [item = failed(undefined)] = (await api.GET('/v1/kitchen/items')).data ?? [];
const changed = await api.PATCH('/v1/kitchen/items/{id}', {
  params: { path: { id: item.id } },
  body: { name: 'renamed by a stranger' },
});
console.log((changed.data ?? failed(changed.error)).version > 0);
const undone = await api.POST('/v1/kitchen/undo', { body: {} });
console.log((undone.data ?? failed(undone.error)).version > 0);
const after = await api.GET('/v1/kitchen/items/{id}', { params: { path: { id: item.id } } });
console.log(after.data?.name === item.name);
const none = await api.GET('/v1/kitchen/items/{id}', { params: { path: { id: 'nothing' } } });
console.log(none.error?.code);
`;

describe('a client made from the description', () => {
  it('is typed, talks, pairs, changes and undoes', async () => {
    await tool('openapi-typescript', [join(folder, 'openapi.json'), '-o', join(folder, 'api.d.ts')]);
    writeFileSync(join(folder, 'client.ts'), client);
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
    const options = ['--strict', '--module', 'nodenext', '--target', 'es2022', '--skipLibCheck'];
    const typed = await tool('tsc', [...options, '--types', 'node', join(folder, 'client.ts')]).catch(
      (error: { stdout: string }) => error,
    );
    expect(typed.stdout).toBe('');
    expect(readFileSync(join(folder, 'client.js'), 'utf8')).toContain('openapi-fetch');
    if (!service.app.server.listening) await service.app.listen({ port: 0, host: '127.0.0.1' });
    const { port } = service.app.server.address() as AddressInfo;
    const { stdout } = await run(process.execPath, [
      join(folder, 'client.js'),
      `http://127.0.0.1:${port}`,
      service.tokens.own,
    ]);
    expect(stdout.trim().split('\n')).toEqual([
      expect.stringMatching(/milk/),
      'speaker by the door',
      'true',
      'true',
      'true',
      'not-found',
    ]);
  });
});

/** The socket's messages by their names in the AsyncAPI document, and nothing else known of them. */
const socketClient = `
import WebSocket from 'ws';
import type { components } from './socket.js';

type Messages = components['schemas'];
type FromServer = Messages['server-welcome' | 'server-reply' | 'server-partial' | 'server-pong' | 'server-unasked' | 'server-changed' | 'server-error'];
const [base = '', token = ''] = process.argv.slice(2);
const socket = new WebSocket(\`\${base.replace('http', 'ws')}/v1/conversation\`, ['tellshelf.v1'], {
  headers: { authorization: \`Bearer \${token}\` },
});
const heard: FromServer[] = [];
let wake = (): void => undefined;
socket.on('message', (frame) => {
  heard.push(JSON.parse(String(frame)) as FromServer);
  wake();
});
const send = (message: Messages['client-turn'] | Messages['client-ping'] | Messages['client-ack']): void =>
  socket.send(JSON.stringify(message));
const next = async <T extends FromServer['type']>(type: T): Promise<Extract<FromServer, { type: T }>> => {
  for (;;) {
    const at = heard.findIndex((message) => message.type === type);
    if (at >= 0) return heard.splice(at, 1)[0] as Extract<FromServer, { type: T }>;
    await new Promise<void>((resolve) => (wake = resolve));
  }
};
const say = async (text: string) => {
  send({ type: 'turn', turn: { id: crypto.randomUUID(), conversation: 'socket', hypotheses: [{ text }] } });
  return (await next('reply')).reply;
};

await next('welcome');
send({ type: 'ping' });
console.log((await next('pong')).type);
const put = await say('put two tubs of quince jelly on the second shelf of the fridge');
console.log(put.speech.text, put.changes.length > 0, put.expects.kind);
console.log((await say('undo')).speech.text);
socket.send('{"type":"turn"}');
console.log((await next('error')).problem.code);
// @ts-expect-error nothing is sent without a type
send({ id: 'one' });
socket.close();
`;

describe('a socket client made from the AsyncAPI document', () => {
  it('is typed, talks, changes, undoes and is told what is wrong', async () => {
    const made = (await service.app.inject('/v1/asyncapi.json')).json<{
      components: { schemas: object; messages: Record<string, { payload: object }> };
    }>();
    const { schemas, messages } = made.components;
    const payloads = Object.entries(messages).map(([name, { payload }]) => [name, payload] as const);
    writeFileSync(
      join(folder, 'socket.json'),
      JSON.stringify({
        openapi: '3.1.0',
        info: { title: 'messages', version: '1' },
        paths: {},
        components: { schemas: { ...schemas, ...Object.fromEntries(payloads) } },
      }),
    );
    await tool('openapi-typescript', [join(folder, 'socket.json'), '-o', join(folder, 'socket.d.ts')]);
    writeFileSync(join(folder, 'socket-client.ts'), socketClient);
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
    const options = ['--strict', '--module', 'nodenext', '--target', 'es2022', '--skipLibCheck'];
    const typed = await tool('tsc', [...options, '--types', 'node', join(folder, 'socket-client.ts')]).catch(
      (error: { stdout: string }) => error,
    );
    expect(typed.stdout).toBe('');
    if (!service.app.server.listening) await service.app.listen({ port: 0, host: '127.0.0.1' });
    const { port } = service.app.server.address() as AddressInfo;
    const { stdout } = await run(process.execPath, [
      join(folder, 'socket-client.js'),
      `http://127.0.0.1:${port}`,
      service.tokens.speak,
    ]);
    expect(stdout.trim().split('\n')).toEqual([
      'pong',
      expect.stringMatching(/quince jelly.* true open$/),
      expect.stringMatching(/^Undone: .*quince jelly/),
      'invalid-request',
    ]);
  });
});
