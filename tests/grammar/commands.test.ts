/** `tellshelf grammar …` as typed. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { addGrammarCommand } from '../../src/cli/grammar.js';
import { hasOutside } from '../support/outside.js';
import { suiteFolder } from './w3c-suite.js';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'commands-'));
});
afterEach(() => {
  rmSync(dir, { recursive: true });
  process.exitCode = undefined;
});

/** What the command prints, and the exit code it leaves. */
const typed = async (...words: string[]): Promise<{ lines: string[]; code: number }> => {
  const written: string[] = [];
  const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
  process.exitCode = undefined;
  try {
    const program = new Command().exitOverride();
    addGrammarCommand(program);
    await program.parseAsync(['grammar', ...words], { from: 'user' });
  } finally {
    spy.mockRestore();
  }
  return { lines: written.join('').split('\n').slice(0, -1), code: Number(process.exitCode ?? 0) };
};
const put = (name: string, rules: string): string => {
  const path = join(dir, name);
  writeFileSync(path, `#ABNF 1.0;\nlanguage en;\ntag-format <semantics/1.0>;\n${rules}`);
  return path;
};

describe('grammar check', () => {
  it('tells mistakes, unused rules, rules that cannot match, and examples that fail or are ambiguous', async () => {
    const file = put(
      'a.gram',
      `/** @example find soup\n * @example find stew\n * @example soup */\npublic $a = find $b;
$b = soup {out = 1} | soup {out = 2} | stew;\n$unused = rice;\npublic $never = $never x;\n`,
    );
    const { lines, code } = await typed('check', file);
    expect(code).toBe(1);
    expect(lines.map((line) => line.replace(dir, ''))).toEqual([
      'warning: /a.gram:4:5: The example "find soup" has two equal meanings: 1 and 2. Give one alternative a weight.',
      'error: /a.gram:6:4: The example "soup" is not accepted by $a. Mend either.',
      'warning: /a.gram:9:1: No public rule leads to $unused. Use it, make it public, or remove it.',
      'warning: /a.gram:10:8: The rule $never can never match. It needs a way without $VOID or itself.',
      '1 files, 1 errors, 3 warnings',
    ]);
    const words = await typed('check', '--words', file);
    expect(words.lines.some((line) => line.startsWith('note: ') && line.includes('"rice"'))).toBe(true);
  });

  it('tells public rules that no grammar uses, in files that others refer to', async () => {
    const part = put('part.gram', 'public $used = x;\npublic $spare = y;\n');
    const main = put('main.gram', 'public $a = $<part.gram#used>;\n');
    const { lines, code } = await typed('check', main, part);
    expect(lines.map((line) => line.replace(dir, ''))).toEqual([
      'warning: /part.gram:5:8: No grammar refers to the public rule $spare. Refer to it, or remove it.',
      '2 files, 0 errors, 1 warnings',
    ]);
    expect(code).toBe(0);
  });

  it('tells every mistake of a file that cannot be read, and passes a clean one', async () => {
    const broken = await typed('check', put('b.gram', 'public $a = x*;\n$b = (y;\n'));
    expect(broken.lines).toHaveLength(3);
    expect(broken.code).toBe(1);
    const clean = await typed('check', put('c.gram', 'public $a = x;\n'));
    expect(clean).toEqual({ lines: ['1 files, 0 errors, 0 warnings'], code: 0 });
  });
});

describe('grammar say', () => {
  it('tells a parse as a numbered outline', async () => {
    const file = put(
      'a.gram',
      'public $a = find [$d] $b {out.food = rules.b}; $d = the; $b = red soup | $<x:y>;\n',
    );
    expect((await typed('say', 'find', 'the', 'red soup!', '-g', file)).lines).toEqual([
      `Parse 1, by ${file}`,
      '1 a: find the red soup',
      '  1.1 d: the',
      '  1.2 b: red soup',
      'Meaning: {"food":"red soup"}',
      'Weight: 1.00',
    ]);
    const all = await typed('say', '-a', 'find the red soup', '-g', file);
    expect(all.lines.filter((line) => line.startsWith('Parse'))).toHaveLength(3);
    expect(await typed('say', 'lose', 'it', '-g', file)).toEqual({
      lines: ['No rule accepts this.'],
      code: 1,
    });
  });

  it('hears our own grammars with the names of the demo kitchen', async () => {
    const { lines } = await typed('say', "where's", 'the', 'lentil', 'soup');
    expect(lines[1]).toBe('1 act: where is the lentil soup');
  });
});

describe('grammar sample', () => {
  it('makes as many sentences as asked, by weight', async () => {
    const file = put('a.gram', 'public $a = /1000000/ often | /0.000001/ never;\n');
    expect((await typed('sample', 'a', '-n', '5', '-g', file)).lines).toEqual(Array(5).fill('often'));
    await expect(typed('sample', 'none', '-g', file)).rejects.toThrow('No grammar file has a rule "none".');
  });
});

describe('grammar suite', () => {
  it.skipIf(!hasOutside('w3c-srgs'))('passes all of the published part', async () => {
    const folder = suiteFolder();
    const ran = await typed('suite', join(folder, 'cases.tsv'), '--dir', folder);
    rmSync(folder, { recursive: true });
    expect(ran.lines).toEqual(['72 passed, 0 failed']);
  });

  it('prints each failure and the numbers', async () => {
    writeFileSync(
      join(dir, 't.tsv'),
      'file\tn\tinput\tverdict\texpected_parse\tnote\na.gram\t1\tx\tACCEPT\t$a["y"]\twhy\n',
    );
    put('a.gram', 'public $a = x;\n');
    expect(await typed('suite', join(dir, 't.tsv'))).toEqual({
      lines: [
        'FAILED a.gram, input 1 "x": expected $a["y"]; parsed as $a["x"]',
        '  note of the suite: why',
        '0 passed, 1 failed',
      ],
      code: 1,
    });
  });
});
