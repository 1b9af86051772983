/** The chart: every parse is in it, in order, and it stays small. */
import { describe, expect, it } from 'vitest';
import { createRecogniser, MAX_TOKENS } from '../../src/grammar/chart.js';
import { createTokenIndex, parseGrammarText } from '../../src/grammar/index.js';
import { openGrammar } from '../../src/grammar/grammar.js';
import { readAbnf } from '../../src/grammar/reader.js';
import { logicalParse } from '../../src/grammar/tools.js';

const open = (rules: string) =>
  openGrammar(readAbnf(`#ABNF 1.0;\nlanguage en;\ntag-format <semantics/1.0>;\n${rules}`, 'c.gram'), {
    roots: [],
  });
const repeat = (word: string, n: number): string[] => Array.from({ length: n }, () => word);
const allParses = (rules: string, tokens: string[]): string[] => {
  const grammar = open(rules);
  return [...grammar.derivations(tokens)].map((parse) =>
    logicalParse(parse.derivation, grammar.library, tokens),
  );
};
const itemsAndLinks = (rules: string, tokens: string[]): { items: number; links: number } => {
  const { network } = open(rules);
  const { items, links } = createRecogniser(network).recognise(tokens, [0], undefined);
  return { items: items.count, links: links.count };
};

describe('the shared forest', () => {
  it('holds every parse of an ambiguous input once: the Catalan numbers', () => {
    const counts = [1, 2, 3, 4, 5, 6, 7].map(
      (n) => new Set(allParses('public $a = $a $a | x;', repeat('x', n))).size,
    );
    expect(counts).toEqual([1, 1, 2, 5, 14, 42, 132]);
    const listed = allParses('public $a = $a $a | x;', repeat('x', 7));
    expect(listed).toHaveLength(132);
  });

  it('gives parses best first', () => {
    const grammar = open(
      'public $a = ($b | /3/ $c)<2>; $b = x {out = 1} | /0.5/ x {out = 2}; $c = x {out = 3};',
    );
    const scores = [...grammar.derivations(['x', 'x'])].map((parse) => Math.exp(parse.score));
    expect(scores.map((score) => Number(score.toFixed(6)))).toEqual([9, 3, 3, 1.5, 1.5, 1, 0.5, 0.5, 0.25]);
  });

  it('breaks ties by the order of the grammar, always alike', () => {
    const rules = 'public $a = $b | $c | $d; $b = x; $c = x; $d = x;';
    expect(allParses(rules, ['x'])).toEqual(['$a[$b["x"]]', '$a[$c["x"]]', '$a[$d["x"]]']);
    expect(allParses(rules, ['x'])).toEqual(allParses(rules, ['x']));
    expect(allParses('public $a = [$b] [$c]; $b = x; $c = x;', ['x'])[0]).toBe('$a[$b["x"]]');
  });

  it('has no derivation that contains itself', () => {
    const parses = allParses('public $a = $a | $b | x; $b = $a;', ['x']);
    expect(parses).toContain('$a["x"]');
    expect(parses.length).toBeLessThan(50);
  });

  it('weighs probabilities of repeats, without changing what is accepted', () => {
    const grammar = open('public $a = x<0-2 /0.25/>; public $never = x<0-1 /0/> y;');
    const score = (n: number): number => Math.exp(grammar.parse(repeat('x', n), { rules: ['a'] })[0]!.score);
    expect([score(0), score(1), score(2)].map((s) => Number(s.toFixed(6)))).toEqual([0.75, 0.1875, 0.0625]);
    expect(grammar.parse(['x', 'y'], { rules: ['never'] })).toHaveLength(1);
    expect(open('public $a = /0/ x;').parse(['x'])).toHaveLength(1);
  });
});

describe('the size of the chart', () => {
  it('grows with the length for recursion on either side, and for loops', () => {
    for (const rules of ['public $a = x $a | x;', 'public $a = $a x | x;', 'public $a = (x | x x)<1->;']) {
      const short = itemsAndLinks(rules, repeat('x', 100));
      const long = itemsAndLinks(rules, repeat('x', 200));
      expect(long.links / short.links, rules).toBeLessThan(2.1);
    }
  });

  it('grows with the square of the length in items and the cube in links at worst', () => {
    const short = itemsAndLinks('public $a = $a $a | x;', repeat('x', 20));
    const long = itemsAndLinks('public $a = $a $a | x;', repeat('x', 40));
    expect(long.items / short.items).toBeLessThan(4.2);
    expect(long.links / short.links).toBeLessThan(8.5);
  });

  it('does not grow with the number of names', () => {
    const grammar = open('public $a = find $<kitchen:item> and $<kitchen:item>;');
    const count = (names: number): number => {
      const index = createTokenIndex();
      for (let i = 0; i < names; i++) index.add([`soup${i}`, 'pot'], `${i}`, i);
      const tokens = ['find', 'soup1', 'pot', 'and', 'soup2', 'pot'];
      const chart = createRecogniser(grammar.network).recognise(
        tokens,
        [0],
        new Map([['kitchen:item', index]]),
      );
      expect(chart.goals[0]).toBeGreaterThanOrEqual(0);
      return chart.items.count;
    };
    expect(count(10_000)).toBe(count(10));
  });

  it('is not begun for an input longer than anyone speaks, and given up where ambiguity has no end', () => {
    const grammar = parseGrammarText(
      '#ABNF 1.0;\nlanguage en;\npublic $a = x<0->; public $b = $b $b $b | x | ();',
    );
    expect(grammar.parse(repeat('x', MAX_TOKENS), { rules: ['a'] })).toHaveLength(1);
    expect(grammar.parse(repeat('x', MAX_TOKENS + 1), { rules: ['a'] })).toHaveLength(0);
    expect(grammar.parse(repeat('x', 600), { rules: ['b'] })).toHaveLength(0);
    expect(grammar.parse(['x'], { rules: ['b'] })).toHaveLength(1);
  });

  it('refuses a host rule that calls the grammar asking it, and works again after', () => {
    const grammar = parseGrammarText('#ABNF 1.0;\nlanguage en;\npublic $a = $<host:rule>;');
    const bad = { matchesAt: () => [...grammar.parse(['x']), { length: 1, value: 1 }] as never };
    expect(() => grammar.parse(['x'], { dynamic: new Map([['host:rule', bad]]) })).toThrow(/host rule/u);
    const good = { matchesAt: () => [{ length: 1, value: 1 }] };
    expect(grammar.parse(['x'], { dynamic: new Map([['host:rule', good]]) })[0]?.value).toBe(1);
  });

  it('takes more host rules than a word has bits', () => {
    const uris = Array.from({ length: 70 }, (_, i) => `host:r${i}`);
    const grammar = parseGrammarText(
      `#ABNF 1.0;\nlanguage en;\npublic $a = ${uris.map((uri) => `$<${uri}>`).join(' | ')};`,
    );
    const dynamic = new Map(
      uris.map((uri) => [
        uri,
        {
          matchesAt: (tokens: readonly string[], at: number) =>
            tokens[at] === uri ? [{ length: 1, value: uri }] : [],
        },
      ]),
    );
    for (const uri of uris) expect(grammar.parse([uri], { dynamic })[0]?.value).toBe(uri);
    expect(grammar.parse(['other'], { dynamic })).toHaveLength(0);
  });
});
