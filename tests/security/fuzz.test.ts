/**
 * Random and mutated turns: whatever comes, the answer is a reply or a problem, never a 5xx, and
 * the service goes on. `FUZZ_TURNS=100000` for the long run.
 * OWASP ASVS 5.0 V2.2 (input validation), V16.5 (error handling).
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { problem } from '../../shared/wire/problem.js';
import { turnReply } from '../../shared/wire/turn.js';
import { projectFile } from '../../src/project-files.js';
import { bearer, startService, type Service } from '../support/service.js';

const RUNS = Number(process.env['FUZZ_TURNS'] ?? 1_500);

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

/** Words the grammar knows, so that mutated sentences get far into it. */
const vocabulary = [
  ...new Set(
    readFileSync(projectFile('grammars', 'en', 'words', 'foods.txt'), 'utf8')
      .split(/\s+/)
      .filter((word) => /^[a-z]{2,}$/.test(word))
      .slice(0, 200),
  ),
  ...'put the on in of second shelf fridge freezer door how old is where what finish half two tubs yesterday use first reheat move to by Dele glass bead small jar and no yes undo next list take off timer for ten minutes'.split(
    ' ',
  ),
];

const sentence = fc
  .array(
    fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...vocabulary) }, { weight: 1, arbitrary: fc.string() }),
    {
      maxLength: 25,
    },
  )
  .map((words) => words.join(' '));

const id = fc.stringMatching(/^[\w.:-]{1,40}$/);
const hypotheses = fc.array(
  fc.record(
    {
      text: fc.oneof(sentence, fc.string({ unit: 'binary', maxLength: 300 })),
      confidence: fc.double({ min: 0, max: 1, noNaN: true }),
    },
    { requiredKeys: ['text'] },
  ),
  { maxLength: 10 },
);
const good = fc.record(
  {
    id,
    hypotheses,
    conversation: id,
    touched: fc.string({ unit: 'binary', maxLength: 200 }),
    cutAt: fc.string({ maxLength: 32 }),
    locale: fc.string({ maxLength: 35 }),
  },
  { requiredKeys: ['id', 'hypotheses'] },
);
/** A good turn with one part replaced by anything. */
const mutated = fc
  .tuple(
    good,
    fc.constantFrom('id', 'hypotheses', 'conversation', 'touched', 'cutAt', 'locale', 'other'),
    fc.anything(),
  )
  .map(([turn, part, value]) => ({ ...turn, [part]: value }));

const asJson = (value: unknown): string => {
  try {
    return (
      JSON.stringify(value, (_key, part: unknown) => (typeof part === 'bigint' ? Number(part) : part)) ?? ''
    );
  } catch {
    return '{';
  }
};
const body = fc.oneof(
  { weight: 6, arbitrary: good.map(asJson) },
  { weight: 3, arbitrary: mutated.map(asJson) },
  { weight: 1, arbitrary: fc.json() },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 500 }) },
);

it(`${RUNS} random turns are answered or refused`, { timeout: 60_000 + RUNS * 100 }, async () => {
  const tally = new Map<number, number>();
  await fc.assert(
    fc.asyncProperty(body, async (payload) => {
      const response = await service.app.inject({
        method: 'POST',
        url: '/v1/turns',
        headers: { 'content-type': 'application/json', ...bearer(service.tokens.speak) },
        payload,
      });
      tally.set(response.statusCode, (tally.get(response.statusCode) ?? 0) + 1);
      if (response.statusCode === 200) turnReply.parse(response.json());
      else {
        expect(response.statusCode).toBeLessThan(500);
        problem.parse(response.json());
      }
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
  // The generator reaches both sides of the door.
  expect(tally.get(200) ?? 0).toBeGreaterThan(RUNS / 4);
  expect(tally.get(400) ?? 0).toBeGreaterThan(RUNS / 20);
});
