/**
 * Whole turns over HTTP beside a bare fastify JSON echo and beside a classifier that finds the same names, all running
 * at once and measured in turn, so that whatever else the machine does falls on each alike.
 */
import { randomUUID } from 'node:crypto';
import autocannon from 'autocannon';
import { startPostgres } from '../store/postgres-server.js';
import { bigKitchen, sentences } from './big-kitchen.js';
import { startServed, type Running } from './start-served.js';

const SECONDS = Number(process.env['BENCH_SECONDS'] ?? 3);
const ROUNDS = Number(process.env['BENCH_ROUNDS'] ?? 5);
const CONNECTIONS = 8;
const ITEMS = 60;

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

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

interface Measured {
  /** Milliseconds of the server's processor for one answer. */
  readonly processor: number;
  readonly rate: number;
  readonly p99: number;
  readonly refused: number;
}

const measured = async (running: Running, said: readonly string[], seconds: number): Promise<Measured> => {
  const spent = await running.processor();
  const result = await fire(running, said, seconds);
  return {
    processor: ((await running.processor()) - spent) / result['2xx'],
    rate: rate(result),
    p99: result.latency.p99,
    refused: result.non2xx + result.errors,
  };
};

export const benchHttp = async (): Promise<void> => {
  const clock = { now: new Date().toISOString(), timeZone: 'America/Chicago' };
  const said = sentences(bigKitchen('bench', ITEMS, clock));
  const postgres = await startPostgres('bench');
  const items = String(ITEMS);
  const measures: { name: string; args: string[]; environment?: Record<string, string> }[] = [
    { name: 'bare fastify JSON echo', args: ['echo'] },
    { name: `@nlpjs/basic, intent and ${ITEMS} names`, args: ['classifier', items] },
    { name: 'whole turn, embedded store', args: ['kitchen', items] },
  ];
  if (postgres)
    measures.push({
      name: 'whole turn, PostgreSQL',
      args: ['kitchen', items],
      environment: { DATABASE_URL: postgres.url },
    });
  const running: Running[] = [];
  try {
    for (const { args, environment } of measures) running.push(await startServed(args, environment));
    for (const one of running) await fire(one, said, 3);
    const rounds: Measured[][] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const row: Measured[] = [];
      for (const one of running) row.push(await measured(one, said, SECONDS));
      rounds.push(row);
    }
    process.stdout.write(
      `Over HTTP, ${CONNECTIONS} connections, ${ITEMS} items, medians of ${ROUNDS} rounds; times the echo is of processor time\n`,
    );
    measures.forEach(({ name }, which) => {
      const mine = (of: (one: Measured) => number): number => median(rounds.map((row) => of(row[which]!)));
      const times = median(rounds.map((row) => row[which]!.processor / row[0]!.processor));
      const refused = rounds.reduce((sum, row) => sum + row[which]!.refused, 0);
      process.stdout.write(
        `  ${name.padEnd(36)} ${mine((one) => one.processor).toFixed(3)} ms of processor each, ${times.toFixed(1)} times the echo;  ${mine((one) => one.rate).toFixed(0)} a second, p99 ${mine((one) => one.p99)} ms, refused ${refused}\n`,
      );
    });
  } finally {
    for (const one of running) await one.stop();
    await postgres?.close();
  }
};
