import { describe, expect, it } from 'vitest';
import { createRing } from '../../src/store/postgres-ring.js';

/** A server that answers when told to. */
const server = () => {
  const rung: string[][] = [];
  const answers: ((fails?: boolean) => void)[] = [];
  const query = (_text: string, [ids]: [string[]]): Promise<unknown> => {
    rung.push(ids);
    return new Promise((resolve, reject) =>
      answers.push((fails = false) => (fails ? reject(new Error('away')) : resolve({}))),
    );
  };
  return { rung, answers, pool: { query } as unknown as Parameters<typeof createRing>[0] };
};
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('ringing after a change', () => {
  it('rings at once, and together what came in meanwhile, each household once', async () => {
    const { rung, answers, pool } = server();
    const ring = createRing(pool);
    for (const id of ['a', 'b', 'c', 'b']) ring.changed(id, 'kitchen');
    expect(rung).toEqual([['a kitchen']]);
    answers[0]?.();
    await settled();
    expect(rung).toEqual([['a kitchen'], ['b kitchen', 'c kitchen']]);
    answers[1]?.();
    await settled();
    ring.changed('d', 'kitchen');
    expect(rung).toHaveLength(3);
    answers[2]?.();
    await ring.close();
  });

  it('rings again what the server was not there for', async () => {
    const { rung, answers, pool } = server();
    const ring = createRing(pool);
    ring.changed('a', 'kitchen');
    answers[0]?.(true);
    while (rung.length < 2) await new Promise((resolve) => setTimeout(resolve, 20));
    expect(rung[1]).toEqual(['a kitchen']);
    answers[1]?.();
    await ring.close();
  });

  it('waits at its end for what is being rung, and takes no more', async () => {
    const { rung, answers, pool } = server();
    const ring = createRing(pool);
    ring.changed('a', 'kitchen');
    ring.changed('b', 'kitchen');
    const closed = ring.close();
    ring.changed('c', 'kitchen');
    answers[0]?.();
    await settled();
    answers[1]?.();
    await closed;
    expect(rung).toEqual([['a kitchen'], ['b kitchen']]);
  });
});
