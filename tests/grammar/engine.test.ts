/** The engine through its public door: reading, parsing, meaning, and what a host supplies. */
import { describe, expect, it } from 'vitest';
import { createTokenIndex, parseGrammarText } from '../../src/grammar/index.js';
import type { ParseOptions, SemanticValue } from '../../src/grammar/index.js';

const HEADER = '#ABNF 1.0 UTF-8;\nlanguage en-US;\nmode voice;\ntag-format <semantics/1.0>;\n';
const grammarOf = (rules: string, more = '') => parseGrammarText(`${HEADER}${more}\n${rules}`);
const words = (text: string): string[] => (text === '' ? [] : text.split(' '));
const plain = (value: unknown): unknown =>
  value === undefined ? undefined : JSON.parse(JSON.stringify(value));
const meaning = (rules: string, text: string, options?: ParseOptions): unknown =>
  plain(grammarOf(rules).parse(words(text), options)[0]?.value);

describe('parsing', () => {
  it('accepts sequences, alternatives, optional parts and repeats, and nothing else', () => {
    const grammar = grammarOf('public $a = [please] (find | look for) (the)<0-1> (soup | stew)<1-2>;');
    for (const good of ['find soup', 'please look for the stew soup', 'find the soup soup']) {
      expect(grammar.parse(words(good)), good).toHaveLength(1);
    }
    for (const bad of ['', 'find', 'look soup', 'find soup soup soup', 'please please find soup']) {
      expect(grammar.parse(words(bad)), bad).toHaveLength(0);
    }
  });

  it('tries several public rules in parallel and says which matched', () => {
    const grammar = grammarOf('public $greet = hello | hi there; public $part = good bye | hi there;');
    expect(grammar.publicRules).toEqual(['greet', 'part']);
    expect(grammar.parse(words('good bye'))[0]?.rule).toBe('part');
    const both = grammar.parse(words('hi there'), { rules: ['part', 'greet'], limit: 5 });
    expect(both.map((parse) => parse.rule)).toEqual(['part', 'greet']);
    expect(() => grammar.parse(words('hello'), { rules: ['none'] })).toThrow(RangeError);
  });

  it('puts the heavier alternative first, whatever the order', () => {
    const grammar = grammarOf(
      'public $a = $light | /5/ $heavy; $light = soup {out="light"}; $heavy = soup {out="heavy"};',
    );
    const parses = grammar.parse(['soup'], { limit: 3 });
    expect(parses.map((parse) => parse.value)).toEqual(['heavy', 'light']);
    expect(parses[0]!.score).toBeCloseTo(Math.log(5), 9);
    expect(parses[1]!.score).toBeCloseTo(0, 9);
  });

  it('handles left, right, middle and hidden left recursion, and empty loops', () => {
    expect(grammarOf('public $a = $a x | x;').parse(words('x x x x'))).toHaveLength(1);
    expect(grammarOf('public $a = x $a | x;').parse(words('x x x x'))).toHaveLength(1);
    expect(grammarOf('public $a = x $a y | ();').parse(words('x x y y'))).toHaveLength(1);
    expect(grammarOf('public $a = $b $a x | x; $b = ();').parse(words('x x x'))).toHaveLength(1);
    expect(grammarOf('public $a = $a | x;').parse(words('x'))).toHaveLength(1);
    expect(grammarOf('public $a = ($NULL<0->)<0-> x;').parse(words('x'))).toHaveLength(1);
    expect(grammarOf('public $a = $a $a | x | ();').parse(words('x x x'))).toHaveLength(1);
  });

  it('lets $GARBAGE take anything, but only when nothing better does', () => {
    const rules = 'public $a = $GARBAGE find (soup {out="soup"} | $GARBAGE {out="something"}) $GARBAGE;';
    expect(meaning(rules, 'well now find soup quickly')).toBe('soup');
    expect(meaning(rules, 'find the thing')).toBe('something');
    expect(grammarOf(rules).parse(words('well now'))).toHaveLength(0);
  });

  it('says whether tokens begin a sentence', () => {
    const grammar = grammarOf(
      'public $a = where is the (chicken soup | stew) [please]; public $b = $VOID never;',
    );
    expect(grammar.acceptsPrefix(words('where is'))).toBe(true);
    expect(grammar.acceptsPrefix([])).toBe(true);
    expect(grammar.acceptsPrefix(words('where is the chicken'))).toBe(true);
    expect(grammar.acceptsPrefix(words('where the'))).toBe(false);
    expect(grammar.acceptsPrefix(words('where is the stew please please'))).toBe(false);
  });
});

describe('what could come next', () => {
  it('is told of a partial transcript: words, host rules, and whether it is whole already', () => {
    const grammar = grammarOf(
      'public $a = where is (the | my) ($<kitchen:item> | soup) [please]; public $b = what $VOID;',
    );
    const next = (text: string) => grammar.following(words(text));
    expect(next('')).toEqual({ words: ['where'], hosts: [], complete: false });
    expect(next('where is')).toEqual({ words: ['my', 'the'], hosts: [], complete: false });
    expect(next('where is my')).toEqual({ words: ['soup'], hosts: ['kitchen:item'], complete: false });
    expect(next('where is my soup')).toEqual({ words: ['please'], hosts: [], complete: true });
    expect(next('where soup')).toEqual({ words: [], hosts: [], complete: false });
  });
});

describe('meaning', () => {
  it('gives the last reference, else the text, to a rule without tags', () => {
    expect(meaning('public $a = the $b; $b = red lentil;', 'the red lentil')).toBe('red lentil');
    expect(meaning('public $a = the $b; $b = red {out = 1};', 'the red')).toBe(1);
  });

  it('assigns properties, and leaves out what was not spoken', () => {
    const rules = `public $a = take [$n] $food [from $place]
      {out.intent = "take"; out.amount = rules.n; out.food = rules.food; out.place = rules.place;
       out.where = rules.place ? "said" : "unsaid"; out.heard = meta.food.text};
      $n = two {out = 2}; $food = jar of soup {out = "soup"}; $place = pantry;`;
    expect(meaning(rules, 'take two jar of soup from pantry')).toEqual({
      intent: 'take',
      amount: 2,
      food: 'soup',
      place: 'pantry',
      where: 'said',
      heard: 'jar of soup',
    });
    expect(meaning(rules, 'take jar of soup')).toEqual({
      intent: 'take',
      food: 'soup',
      where: 'unsaid',
      heard: 'jar of soup',
    });
  });

  it('collects lists and never changes a host value in place', () => {
    const names = createTokenIndex();
    const payload: SemanticValue = { id: 7, touch: { dots: 1 } };
    names.add(['soup'], 'soup', payload);
    const rules = `public $a = {out.items = []} $<kitchen:item> {out.items.push(rules.item)}
      (and $<kitchen:item> {out.items.push(rules.item); out.items[0].touch.dots = 9})<0->;`;
    const dynamic = new Map([['kitchen:item', names]]);
    expect(meaning(rules, 'soup and soup', { dynamic })).toEqual({
      items: [
        { id: 7, touch: { dots: 9 } },
        { id: 7, touch: { dots: 1 } },
      ],
    });
    expect(payload).toEqual({ id: 7, touch: { dots: 1 } });
  });
});

describe('rules a host supplies', () => {
  it('changes in place: no name is known before it is added or after it is removed', () => {
    const grammar = grammarOf(
      'public $where = where is $<kitchen:item> {out.item = rules.item; out.text = meta.item.text};',
    );
    const names = createTokenIndex();
    const dynamic = new Map([['kitchen:item', names]]);
    const ask = (text: string) => plain(grammar.parse(words(text), { dynamic })[0]?.value);
    expect(ask('where is lentil soup')).toBeUndefined();
    names.add(['lentil', 'soup'], 'a', 'first');
    expect(ask('where is lentil soup')).toEqual({ item: 'first', text: 'lentil soup' });
    expect(grammar.acceptsPrefix(words('where is lentil'), { dynamic })).toBe(true);
    expect(grammar.acceptsPrefix(words('where is bean'), { dynamic })).toBe(false);
    expect(names.remove(['lentil', 'soup'], 'a')).toBe(true);
    expect(names.size).toBe(0);
    expect(ask('where is lentil soup')).toBeUndefined();
    expect(grammar.parse(words('where is soup'))).toHaveLength(0);
  });

  it('keeps every reading of an ambiguous name', () => {
    const grammar = grammarOf('public $where = where is $<kitchen:item>;');
    const names = createTokenIndex();
    names.add(['stew'], 'x', 'beef stew', 1);
    names.add(['stew'], 'y', 'bean stew', 2);
    const parses = grammar.parse(words('where is stew'), {
      dynamic: new Map([['kitchen:item', names]]),
      limit: 5,
    });
    expect(parses.map((parse) => parse.value)).toEqual(['bean stew', 'beef stew']);
  });
});
