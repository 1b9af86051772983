/**
 * Semantic Interpretation for Speech Recognition 1.0 (W3C Recommendation, 5 April 2007): its worked examples,
 * by section. Their wording and section numbers are from memory of the Recommendation.
 */
import { describe, expect, it } from 'vitest';
import { GrammarError, parseGrammarText } from '../../src/grammar/index.js';

const SCRIPT = '#ABNF 1.0 UTF-8;\nlanguage en;\ntag-format <semantics/1.0>;\n';
const LITERALS = '#ABNF 1.0 UTF-8;\nlanguage en;\ntag-format <semantics/1.0-literals>;\n';
const words = (text: string): string[] => (text === '' ? [] : text.split(' '));
const meaningBy = (grammar: string, text: string): unknown => {
  const value = parseGrammarText(grammar).parse(words(text))[0]?.value;
  return value === undefined ? undefined : JSON.parse(JSON.stringify(value));
};
const meaning = (rules: string, text: string): unknown => meaningBy(SCRIPT + rules, text);

describe('SISR 1.0', () => {
  it('introduction: the order of a drink and pizzas', () => {
    const order = `
      root $order;
      $order = i would like a $drink {out.drink = new Object(); out.drink.liquid = rules.drink.type;
                 out.drink.drinksize = rules.drink.drinksize;}
               and $pizza {out.pizza = rules.pizza;};
      $kindofdrink = (coke | pepsi | "coca cola" {out = "coke";});
      $foodsize = {out = "medium";} [small {out = "small";} | medium | large {out = "large";} | regular {out = "medium";}];
      // Constructs a list of toppings.
      $tops = {out = new Array;} $top {out.push(rules.top);} (and $top {out.push(rules.top);})<0->;
      $top = anchovies | pepperoni | mushroom {out = "mushrooms";} | mushrooms;
      $drink = $foodsize $kindofdrink {out.drinksize = rules.foodsize; out.type = rules.kindofdrink;};
      $pizza = $number $foodsize {out.pizzasize = rules.foodsize; out.number = rules.number;} (pizza | pizzas) with $tops
               {out.topping = rules.tops;};
      $number = a {out = "1";} | one {out = "1";} | two {out = "2";} | three {out = "3";};`;
    expect(
      meaning(order, 'i would like a coca cola and three large pizzas with pepperoni and mushrooms'),
    ).toEqual({
      drink: { liquid: 'coke', drinksize: 'medium' },
      pizza: { number: '3', pizzasize: 'large', topping: ['pepperoni', 'mushrooms'] },
    });
  });

  it('string literals: the tag is the result, and the last tag wins', () => {
    const grammar = `${LITERALS} public $answer = yes | yeah {yes} | (no | nope) {maybe} {no};`;
    expect(meaningBy(grammar, 'yeah')).toBe('yes');
    expect(meaningBy(grammar, 'yes')).toBe('yes');
    expect(meaningBy(grammar, 'nope')).toBe('no');
  });

  it('default assignment: no tag, so the last reference, else the text', () => {
    expect(meaning('public $a = the $size $drink; $size = big {out = 2}; $drink = tea;', 'the big tea')).toBe(
      'tea',
    );
    expect(meaning('public $a = the big tea;', 'the big tea')).toBe('the big tea');
  });

  it('rule variables: rules.name holds the latest of that name', () => {
    const rules = `public $a = $d $d {out.last = rules.d} $d {out.all = rules.d}; $d = one {out = 1} | two {out = 2};`;
    expect(meaning(rules, 'one two one')).toEqual({ last: 2, all: 1 });
  });

  it('rules.latest(): from one city to another', () => {
    const rules = `public $trip = from $city {out.from = rules.latest()} to $city {out.to = rules.latest()};
      $city = london | (new york | big apple) {out = "new york"};`;
    expect(meaning(rules, 'from big apple to london')).toEqual({ from: 'new york', to: 'london' });
  });

  it('meta: the text a rule matched, and the text of this rule so far', () => {
    const rules = `public $a = the $n {out.so_far = meta.current().text; out.name = meta.n.text} please
      {out.whole = meta.current().text; out.latest = meta.latest().text};
      $n = red lentil soup {out = 7};`;
    expect(meaning(rules, 'the red lentil soup please')).toEqual({
      so_far: 'the red lentil soup',
      name: 'red lentil soup',
      whole: 'the red lentil soup please',
      latest: 'red lentil soup',
    });
  });

  it('variables are those of one rule, fresh each time it is used', () => {
    const rules = `public $a = $b $b {out = rules.b}; $b = x {out.n = out.n === undefined ? 1 : 2};`;
    expect(meaning(rules, 'x x')).toEqual({ n: 1 });
  });

  it('tags run from left to right, only on the way taken', () => {
    const rules = `public $a = {out = "0"} (x {out += "x"} | y {out += "y"})<1-> {out += "."};`;
    expect(meaning(rules, 'x y x')).toBe('0xyx.');
  });

  it('numbers are added, digits are joined', () => {
    const rules = `public $n = $tens {out = rules.tens} [$ones {out += rules.ones}];
      $tens = twenty {out = 20} | thirty {out = 30}; $ones = two {out = 2};
      public $digits = {out = ""} ($ones {out = out + rules.ones})<1->;`;
    const grammar = parseGrammarText(SCRIPT + rules);
    expect(grammar.parse(words('thirty two'))[0]?.value).toBe(32);
    expect(grammar.parse(words('two two'))[0]?.value).toBe('22');
  });

  it('header tags set what all rules can read and none can change', () => {
    const rules = `{var unit = "portion"};
      public $a = $b $c {out.b = rules.b; out.c = rules.c}; $b = x {unit = "tub"; out = unit}; $c = y {out = unit};`;
    expect(meaning(rules, 'x y')).toEqual({ b: 'tub', c: 'portion' });
  });

  it('properties of what was not spoken are undefined, and an undefined value leaves no property', () => {
    const rules = `public $a = go [$b] {!{out.deep = rules.b.c.d; out.kind = typeof rules.b; out.set = rules.b ? 1 : 0;
      out.both = rules.b && rules.b.c; if (rules.b) { out.spoken = true } else { out.spoken = false }}!}; $b = up {!{out.c = {d: 4}}!};`;
    expect(meaning(rules, 'go')).toEqual({ kind: 'undefined', set: 0, spoken: false });
    expect(meaning(rules, 'go up')).toEqual({
      deep: 4,
      kind: 'object',
      set: 1,
      both: { d: 4 },
      spoken: true,
    });
  });

  it('understands the whole safe subset', () => {
    const value = (script: string): unknown => meaning(`public $a = x {!{${script}}!};`, 'x');
    expect(value('out = [1, "a", true, null, [2]]')).toEqual([1, 'a', true, null, [2]]);
    expect(value('out = "a\\u00e9\\n" + \'b\'')).toBe('aé\nb');
    expect(value('out = 2 + 3 * 4 - 6 / 2 % 2')).toBe(13);
    expect(value('out = (1 < 2 && 2 <= 2) || false')).toBe(true);
    expect(value('out = 1 == "1" && 1 !== "1" && null == undefined && !(1 != 1)')).toBe(true);
    expect(value('out = [1,2].concat([3], 4).slice(1).join("-")')).toBe('2-3-4');
    expect(value('out = "Soup".toLowerCase().length')).toBe(4);
    expect(value('out.a.b.c = 1; out.a.d = -1; out["e f"] = parseInt("12 tubs")')).toEqual({
      a: { b: { c: 1 }, d: -1 },
      'e f': 12,
    });
    expect(value('out.list[1] = "b"; out.list[0] = "a"')).toEqual({ list: { 0: 'a', 1: 'b' } });
    expect(value('out.l = []; out.l[1] = "b"; out.n = out.l.length')).toEqual({ l: [null, 'b'], n: 2 });
    expect(value('var x = 1; x += 2; out = x; /* end */')).toBe(3);
    expect(value('out.a = out.b = 5')).toEqual({ a: 5, b: 5 });
    expect(value('out = 0 / 0')).toBe(null);
    expect(value('out = {a: undefined, b: 1}')).toEqual({ b: 1 });
  });
});

describe('tags are never a way in', () => {
  const refused = (script: string): void =>
    expect(() => parseGrammarText(`${SCRIPT} public $a = x {!{${script}}!};`), script).toThrow(GrammarError);

  it('refuses everything outside the subset when the grammar is read', () => {
    for (const script of [
      'eval("1")',
      'out.constructor.constructor("return process")()',
      'out.__proto__.bad = 1',
      'out = {__proto__: {bad: 1}}',
      'out = {"constructor": 1}',
      'while (true) {}',
      'for (;;) {}',
      'out = function () {}',
      'out = () => 1',
      'out = new Function("1")',
      'out = new Date()',
      'out = `x`',
      'import("fs")',
      'out = process.exit(1)',
      'delete out.x',
      'this.x = 1',
      'out = "unclosed',
      'out = (1',
      'out = 1 out = 2',
      `out = ${'('.repeat(5000)}1${')'.repeat(5000)}`,
      `out = ${'!'.repeat(5000)}1`,
    ]) {
      refused(script);
    }
  });

  it('tells where in the tag the mistake is', () => {
    try {
      parseGrammarText(`${SCRIPT}public $a = x\n  {out.a = 1; out.b = for};`, 'tags.gram');
      expect.unreachable();
    } catch (error) {
      const [problem] = (error as GrammarError).problems;
      expect(problem).toMatchObject({ file: 'tags.gram', line: 5, column: 23 });
    }
  });

  it('cannot change the prototype of anything through computed names', () => {
    const rules =
      'public $a = $k {out[rules.k] = "bad"; out[rules.k].polluted = "bad"}; $k = proto {out = "__proto__"} | make {out = "constructor"};';
    for (const text of ['proto', 'make']) {
      const value = parseGrammarText(SCRIPT + rules).parse([text])[0]!.value;
      expect(JSON.stringify(value)).toBe('{}');
      expect(Object.getPrototypeOf(value)).toBe(null);
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(meaning('public $a = x {out = "abc".constructor_};', 'x')).toBe(null);
  });

  it('reads own properties only', () => {
    const host = new Map([['kitchen:item', { matchesAt: () => [{ length: 1, value: { id: 1 } }] }]]);
    const grammar = parseGrammarText(
      `${SCRIPT} public $a = $<kitchen:item> {out.id = rules.item.id; out.s = rules.item.toString};`,
    );
    expect(JSON.stringify(grammar.parse(['x'], { dynamic: host })[0]!.value)).toBe('{"id":1}');
  });

  it('keeps values finite, however often they double', () => {
    const long = Array.from({ length: 200 }, () => 'x');
    const text = parseGrammarText(`${SCRIPT} public $a = {out = "a"} (x {out = out + out})<1->;`).parse(
      long,
    )[0]!.value;
    expect((text as string).length).toBeLessThanOrEqual(100_000);
    const nested = parseGrammarText(`${SCRIPT} public $a = (x {!{out = {l: out, r: out}}!})<1->;`);
    expect(nested.parse(long, { limit: 2 })[0]!.value).toBe(null);
    const list = parseGrammarText(`${SCRIPT} public $a = {out = [1]} (x {out = out.concat(out)})<1->;`).parse(
      long,
    )[0]!.value;
    expect((list as unknown[]).length).toBeLessThanOrEqual(10_000);
  });
});
