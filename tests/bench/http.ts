/** Whole turns over HTTP beside a bare fastify JSON echo, in one run on one machine. */
import { randomUUID } from 'node:crypto';
import autocannon from 'autocannon';
import { bigKitchen, sentences } from './big-kitchen.js';
import { startServed, type Running } from './start-served.js';

const SECONDS = 8;
const CONNECTIONS = 10;
const ITEMS = 500;

/** Turns from ten connections for so many seconds, each when the last was answered. */
export const fire = async (
  { address, token }: Running,
  said: readonly string[],
  seconds: number,
): Promise<autocannon.Result> => {
  const run = randomUUID();
  let n = 0;
  return autocannon({
    url: `${address}/v1/turns`,
    method: 'POST',
    connections: CONNECTIONS,
    duration: seconds,
    headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
    requests: [
      {
        setupRequest: (request) => {
          n += 1;
          const turn = {
            id: `${run}.${n}`,
            conversation: `c${n % 50}`,
            hypotheses: [{ text: said[n % said.length] }],
          };
          return { ...request, body: JSON.stringify(turn) };
        },
      },
    ],
  });
};

/** Answers a second that were answers. */
export const rate = ({ duration, ...result }: autocannon.Result): number => result['2xx'] / duration;

const line = (name: string, { requests, latency, non2xx, errors }: autocannon.Result): string =>
  `  ${name.padEnd(28)} ${requests.average.toFixed(0).padStart(7)} a second   p50 ${latency.p50} ms   p99 ${latency.p99} ms   refused ${non2xx}   lost ${errors}\n`;

export const benchHttp = async (): Promise<void> => {
  const clock = { now: new Date().toISOString(), timeZone: 'America/Chicago' };
  const said = sentences(bigKitchen('bench', ITEMS, clock));
  process.stdout.write(
    `Turns over HTTP, ${CONNECTIONS} connections, ${ITEMS} items, embedded store on disk\n`,
  );
  const results: autocannon.Result[] = [];
  for (const [name, args] of [
    ['bare fastify JSON echo', ['echo']],
    ['whole turn', ['kitchen', String(ITEMS)]],
  ] as const) {
    const running = await startServed(args);
    try {
      await fire(running, said, 2);
      const spent = await running.processor();
      const result = await fire(running, said, SECONDS);
      const each = ((await running.processor()) - spent) / result['2xx'];
      results.push(result);
      process.stdout.write(line(name, result));
      process.stdout.write(`  ${''.padEnd(28)} ${each.toFixed(3)} ms of processor time each in the server\n`);
    } finally {
      await running.stop();
    }
  }
  const [echo, turn] = results;
  if (echo && turn) {
    process.stdout.write(
      `  ratio: ${((turn.requests.average / echo.requests.average) * 100).toFixed(1)}% of the echo\n`,
    );
  }
};
