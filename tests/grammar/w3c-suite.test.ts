/** The W3C's own cases for SRGS 1.0: logical parses compared to the letter (source: tests/data/w3c-srgs). */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSuite, runCase } from '../../src/grammar/tools.js';
import { projectFile } from '../../src/project-files.js';

const dir = projectFile('tests', 'data', 'w3c-srgs');
const cases = readSuite(readFileSync(`${dir}/cases.tsv`, 'utf8'));

describe('W3C SRGS 1.0 implementation report', () => {
  it('holds all cases of the table', () => expect(cases).toHaveLength(72));
  it.each(cases.map((one) => [`${one.file} ${one.n} "${one.input}" ${one.verdict}`, one] as const))(
    '%s',
    (_, one) => {
      const { passed, detail } = runCase(one, dir);
      expect(passed, detail).toBe(true);
    },
  );
});
