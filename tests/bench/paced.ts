/**
 * Turns that come as people's do: each when it comes, not when the last was answered. The gaps are
 * exponential (a Poisson process), so that some come close together. Latency counts from the moment
 * a turn was due, so a server that stands still is not excused from what came meanwhile.
 */
import { randomUUID } from 'node:crypto';
import { Agent, request } from 'node:http';
import type { Running } from './start-served.js';

export interface Latencies {
  readonly answered: number;
  readonly refused: number;
  /** Milliseconds. */
  readonly p50: number;
  readonly p99: number;
}

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

const post = (agent: Agent, { address, token }: Running, body: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const sent = request(
      `${address}/v1/turns`,
      {
        method: 'POST',
        agent,
        headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      },
      (response) => {
        response.resume();
        response.on('end', () => resolve(response.statusCode ?? 0));
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });

/** Sends `perSecond` turns a second for so many seconds, from fifty conversations. */
export const pace = async (
  running: Running,
  said: readonly string[],
  seconds: number,
  perSecond: number,
): Promise<Latencies> => {
  const agent = new Agent({ keepAlive: true });
  const run = randomUUID();
  const took: number[] = [];
  const underWay: Promise<void>[] = [];
  let refused = 0;
  const from = performance.now();
  let due = from;
  for (let n = 0; due - from < seconds * 1000; n += 1) {
    due += (-Math.log(1 - Math.random()) * 1000) / perSecond;
    const ahead = due - performance.now();
    if (ahead > 1) await wait(ahead);
    const dueAt = due;
    const turn = {
      id: `${run}.${n}`,
      conversation: `c${n % 50}`,
      hypotheses: [{ text: said[n % said.length] }],
    };
    underWay.push(
      post(agent, running, JSON.stringify(turn)).then((status) => {
        if (status === 200) took.push(performance.now() - dueAt);
        else refused += 1;
      }),
    );
  }
  await Promise.all(underWay);
  agent.destroy();
  took.sort((a, b) => a - b);
  const at = (share: number): number => took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? 0;
  return { answered: took.length, refused, p50: at(0.5), p99: at(0.99) };
};
