/** Every phrase that dialogue can ask for is there, and says something at each length. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  CAUTION_CODES,
  POWER_REASON_CODES,
  REASON_CODES,
  REFUSAL_CODES,
  STEP_CODES,
  THAW_ADVICE_CODES,
} from '../../src/safety/index.js';
import { createVoice } from '../../src/speech/index.js';

const voice = createVoice('en-US');
const folder = join(import.meta.dirname, '../../src/dialogue');
const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(folder, name), 'utf8'));

const named = new Set(
  sources.flatMap((text) => [...text.matchAll(/\b(?:say|tell)\(\s*'([\w-]+)'/g)].map((match) => match[1]!)),
);

describe('phrases', () => {
  test('named in the dialogue are all in the phrase files', () => {
    expect(named.size).toBeGreaterThan(200);
    expect([...named].filter((phrase) => !voice.phrases.has(phrase))).toEqual([]);
  });

  test.each([
    ['safety', REASON_CODES],
    ['caution', CAUTION_CODES],
    ['step', STEP_CODES],
    ['refusal', REFUSAL_CODES],
    ['thaw', THAW_ADVICE_CODES],
    ['power', POWER_REASON_CODES],
  ] as const)('%s codes each have one', (kind, codes) => {
    expect(codes.filter((code) => !voice.phrases.has(`${kind}-${code}`))).toEqual([]);
  });

  test('for every reason a change can be refused', () => {
    const doing = readFileSync(join(folder, '../kitchen/doing.ts'), 'utf8');
    const union = /export type Reason =([\s\S]*?);\n/.exec(doing)?.[1] ?? '';
    const reasons = [...union.matchAll(/'([\w-]+)'/g)].map((match) => match[1]!);
    expect(reasons.length).toBeGreaterThan(30);
    expect(reasons.filter((reason) => !voice.phrases.has(`refused-${reason}`))).toEqual([]);
  });

  test('never promise that food is safe', () => {
    const files = readdirSync(join(folder, '../../grammars/en/phrases')).filter((name) =>
      name.endsWith('.ftl'),
    );
    const lines = files.flatMap((name) =>
      readFileSync(join(folder, '../../grammars/en/phrases', name), 'utf8')
        .split('\n')
        .filter((line) => !line.startsWith('#')),
    );
    const promises = lines.filter((line) =>
      /\b(?:is|are|it's|perfectly|still) safe\b|\bsafe to eat\b/i.test(line),
    );
    expect(promises).toEqual([]);
  });
});
