import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { createServer as createHttpServer } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { openTracing } from '../../src/cli/serve/tracing.js';
import { openSqliteStore } from '../../src/store/index.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import { kitchenOf, THURSDAY } from '../support/service.js';

interface SentSpan {
  readonly name: string;
  readonly spanId: string;
  readonly traceId: string;
  readonly parentSpanId?: string;
  readonly status?: { readonly code?: number };
}
interface Sent {
  readonly resourceSpans: readonly {
    readonly resource: { readonly attributes: readonly { key: string; value: { stringValue?: string } }[] };
    readonly scopeSpans: readonly { readonly spans: readonly SentSpan[] }[];
  }[];
}

const collector = async () => {
  const got: { path: string; body: string }[] = [];
  const server = createHttpServer((request, response) => {
    let body = '';
    request.setEncoding('utf8').on('data', (text: string) => (body += text));
    request.on('end', () => {
      got.push({ path: request.url ?? '', body });
      response.setHeader('content-type', 'application/json').end('{}');
    });
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  return { got, address: `http://127.0.0.1:${port}`, close: () => server.close() };
};

const VARIABLE = 'OTEL_EXPORTER_OTLP_ENDPOINT';
const PATIENCE = 'OTEL_EXPORTER_OTLP_TIMEOUT';
afterEach(() => {
  delete process.env[PATIENCE];
  delete process.env[VARIABLE];
});

describe('traces', () => {
  it('are not even loaded when no collector is named', async () => {
    expect(await openTracing({})).toBeNull();
    expect(await openTracing({ [VARIABLE]: 'http://127.0.0.1:1', OTEL_SDK_DISABLED: 'true' })).toBeNull();
  });

  it('tell a collector where the time of a turn went, and nothing of what was said', async () => {
    const { got, address, close } = await collector();
    process.env[VARIABLE] = address;
    const traces = (await openTracing(process.env))!;
    const store = openSqliteStore(':memory:');
    await store.migrate();
    await store.createHousehold(kitchenOf('marta'), THURSDAY);
    const households = createHouseholds({
      store,
      tongues: createTongues((error) => {
        throw error;
      }),
      now: () => THURSDAY,
      tracing: traces.tracing,
    });
    const speaker = { householdId: 'marta', deviceId: 'd', personId: null };
    const turn = (id: string, text: string) => ({ id, conversation: 'c', hypotheses: [{ text }] });
    await households.takeTurn(speaker, turn('t1', 'put oats on the list'));
    await expect(households.takeTurn(speaker, turn('t1', 'something else'))).rejects.toThrow();
    await traces.close();
    await store.close();
    close();

    expect(got.map(({ path }) => path)).toEqual(['/v1/traces']);
    const sent = got.map(({ body }) => JSON.parse(body) as Sent).flatMap((one) => one.resourceSpans);
    expect(sent[0]?.resource.attributes).toContainEqual({
      key: 'service.name',
      value: { stringValue: 'tellshelf' },
    });
    const spans = sent.flatMap((one) => one.scopeSpans).flatMap((scope) => scope.spans);
    const [first, second] = spans.filter(({ name }) => name === 'turn');
    const parts = spans.filter(({ parentSpanId }) => parentSpanId === first?.spanId);
    expect(parts.map(({ name }) => name)).toEqual(['understand', 'decide', 'speak', 'commit']);
    expect(new Set(parts.map(({ traceId }) => traceId))).toEqual(new Set([first?.traceId]));
    // An id used twice is a failed turn (status 2 is ERROR).
    expect(second?.status?.code).toBe(2);
    expect(JSON.stringify(got)).not.toMatch(/oats|something else|marta/i);
  });

  it('that cannot be sent hold up nothing', async () => {
    const closed = createServer().listen(0, '127.0.0.1');
    await once(closed, 'listening');
    const { port } = closed.address() as AddressInfo;
    closed.close();
    process.env[VARIABLE] = `http://127.0.0.1:${port}`;
    process.env[PATIENCE] = '300';
    const traces = (await openTracing(process.env))!;
    expect(traces.tracing.span('turn', () => 7)).toBe(7);
    expect(await traces.tracing.span('turn', async () => 8)).toBe(8);
    await traces.close();
  });
});
