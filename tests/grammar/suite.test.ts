/** The runner of test tables itself: what it lets pass and what not. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readSuite, runCase } from '../../src/grammar/tools.js';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'suite-'));
});
afterEach(() => rmSync(dir, { recursive: true }));

const put = (name: string, text: string): void => writeFileSync(join(dir, name), text);
const run = (file: string, input: string, expected: string): boolean =>
  runCase(
    { file, n: '1', input, expected, verdict: expected === 'REJECT' ? 'REJECT' : 'ACCEPT', note: '' },
    dir,
  ).passed;

describe('a suite', () => {
  it('is read from tabs, whatever quotes the fields hold', () => {
    const table =
      'file\tspec_section\tdescription\tn\tinput\tverdict\tlevel\texpected_parse\tnote\n' +
      'a.gram\tS2\tsay "x"\t2\t"New York" x\tACCEPT\t\t$a["New York","x"]\tn\n' +
      'b.gram\t\t\t1\t\tREJECT\tinput\t\t\n';
    expect(readSuite(table)).toEqual([
      {
        file: 'a.gram',
        n: '2',
        input: '"New York" x',
        verdict: 'ACCEPT',
        expected: '$a["New York","x"]',
        note: 'n',
      },
      { file: 'b.gram', n: '1', input: '', verdict: 'REJECT', expected: '', note: '' },
    ]);
  });

  it('compares to the letter, but for the extent of $GARBAGE', () => {
    put('a.gram', '#ABNF 1.0;\nlanguage en;\nroot $a;\n$a = $GARBAGE Help [$b] {t}; $b = me;');
    expect(run('a.gram', 'oh dear help me', '$a["Help",$b["me"],{!{t}!}]')).toBe(true);
    expect(run('a.gram', 'oh dear help me', '$a[$GARBAGE,"Help", $b["me"],{!{t}!}]')).toBe(true);
    expect(run('a.gram', 'oh dear help me', '$a[$GARBAGE["oh","dear"],"Help",$b["me"],{!{t}!}]')).toBe(true);
    expect(run('a.gram', 'oh dear help me', '$a["help",$b["me"],{!{t}!}]')).toBe(false);
    expect(run('a.gram', 'oh dear help me', '$a["Help",$b["me"]]')).toBe(false);
    expect(run('a.gram', 'oh dear help me', 'REJECT')).toBe(false);
    expect(run('a.gram', 'oh dear', 'REJECT')).toBe(true);
    expect(run('missing.gram', 'oh dear', '$a["oh"]')).toBe(false);
  });

  it('takes any parse of an ambiguous input, and any rule that may be activated', () => {
    put(
      'b.gram',
      '#ABNF 1.0;\nlanguage en;\nroot $a;\n$a = $x | $y; $x = w; public $y = w; public $z = zed;',
    );
    expect(run('b.gram', 'w', '$a[$x["w"]]')).toBe(true);
    expect(run('b.gram', 'w', '$a[$y["w"]]')).toBe(true);
    expect(run('b.gram', 'w', '$a[$z["w"]]')).toBe(false);
    expect(run('b.gram', 'zed', '$z["zed"]')).toBe(true);
    expect(run('b.gram', 'zed', 'REJECT')).toBe(true);
  });

  it('activates grammars that are referred to, when a case expects them', () => {
    put('o.gram', '#ABNF 1.0;\nlanguage en;\nroot $start;\n$start = please; public $end = thanks;');
    put('r.gram', '#ABNF 1.0;\nlanguage en;\nroot $a;\n$a = $<o.gram> go;');
    expect(run('r.gram', 'please', '$<o.gram>["please"]')).toBe(true);
    expect(run('r.gram', 'thanks', '$<o.gram#end>["thanks"]')).toBe(true);
    expect(run('r.gram', 'thanks', '$end["thanks"]')).toBe(true);
    expect(run('r.gram', 'thanks', '$<o.gram>["please"]')).toBe(false);
    expect(run('r.gram', 'thanks', 'REJECT')).toBe(true);
  });

  it('shows keys of the telephone as they are written, and references with their base', () => {
    put('k.gram', '#ABNF 1.0;\nmode dtmf;\nroot $a;\n$a = A star "pound";');
    expect(run('k.gram', 'A * #', '$a["A","*","#"]')).toBe(true);
    put('n.gram', '#ABNF 1.0;\nlanguage en;\nroot $b;\n$b = bond;');
    put('m.gram', '#ABNF 1.0;\nlanguage en;\nbase <./sub/x>;\nroot $a;\n$a = $<n.gram>;');
    put('h.gram', '#ABNF 1.0;\nlanguage en;\nroot $a;\n$a = $<http://www.example.com/g/n.gram>;');
    expect(run('m.gram', 'bond', '$a[$<./sub/n.gram>["bond"]]')).toBe(true);
    expect(run('h.gram', 'bond', '$a[$<http://www.example.com/g/n.gram>["bond"]]')).toBe(true);
  });
});
