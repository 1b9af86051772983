/** The W3C's own cases for SRGS 1.0: logical parses compared to the letter. */
import { readFileSync, rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { readSuite, runCase } from '../../src/grammar/tools.js';
import { hasOutside } from '../support/outside.js';
import { suiteFolder } from './w3c-suite.js';

const dir = hasOutside('w3c-srgs') ? suiteFolder() : null;
const cases = dir === null ? [] : readSuite(readFileSync(`${dir}/cases.tsv`, 'utf8'));

describe.skipIf(dir === null)('W3C SRGS 1.0 implementation report', () => {
  afterAll(() => rmSync(dir!, { recursive: true, force: true }));
  it('holds all cases of the table', () => expect(cases).toHaveLength(72));
  it.each(cases.map((one) => [`${one.file} ${one.n} "${one.input}" ${one.verdict}`, one] as const))(
    '%s',
    (_, one) => {
      const { passed, detail } = runCase(one, dir!);
      expect(passed, detail).toBe(true);
    },
  );
});
