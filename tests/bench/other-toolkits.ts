/**
 * The same grammar given to general toolkits, turned into their form from the syntax tree by machine, so that
 * nobody's hand favours one. Host names are spelled out as alternatives, since the toolkits have no such index.
 */
import nearley from 'nearley';
import * as ohm from 'ohm-js';
import type { GrammarDocument, Expansion } from '../../src/grammar/syntax.js';

type Names = readonly (readonly string[])[];

/** One recogniser-and-tree-builder: true when the sentence is accepted. */
export type Toolkit = (tokens: readonly string[]) => boolean;

export const nearleyFrom = (document: GrammarDocument, names: Names): Toolkit => {
  const rules: { name: string; symbols: unknown[]; postprocess?: (data: unknown[]) => unknown }[] = [];
  let made = 0;
  const word = (text: string) => ({ literal: text });
  const fresh = (options: unknown[][]): string => {
    const name = `_${made++}`;
    for (const symbols of options) rules.push({ name, symbols });
    return name;
  };
  const symbolsOf = (one: Expansion): unknown[] => {
    switch (one.kind) {
      case 'token':
        return one.text.split(' ').map(word);
      case 'reference':
        return [one.reference.kind === 'local' ? one.reference.name : 'NAME'];
      case 'sequence':
        return one.items.flatMap(symbolsOf);
      case 'choice':
        return [fresh(one.options.map((option) => symbolsOf(option.body)))];
      case 'repeat': {
        const body = symbolsOf(one.body);
        if (one.max === 1) return [fresh([body, []])];
        const list = fresh([[]]);
        rules.push({ name: list, symbols: [list, ...body] });
        return [list];
      }
      default:
        return [];
    }
  };
  for (const rule of document.rules.values()) {
    const { body } = rule;
    const options = body.kind === 'choice' ? body.options.map((option) => option.body) : [body];
    for (const option of options) rules.push({ name: rule.name, symbols: symbolsOf(option) });
  }
  for (const name of names) rules.push({ name: 'NAME', symbols: name.map(word) });
  const lexer = {
    tokens: [] as readonly string[],
    at: 0,
    reset(data: string) {
      this.tokens = data.split(' ');
      this.at = 0;
    },
    next() {
      const text = this.tokens[this.at++];
      return text === undefined ? undefined : { value: text, text };
    },
    save: () => ({}),
    formatError: () => 'not expected',
    has: () => true,
  };
  const compiled = nearley.Grammar.fromCompiled({
    Lexer: lexer,
    ParserRules: rules,
    ParserStart: document.root!.name,
  } as unknown as nearley.CompiledRules);
  return (tokens) => {
    const parser = new nearley.Parser(compiled);
    try {
      parser.feed(tokens.join(' '));
    } catch {
      return false;
    }
    return parser.results.length > 0;
  };
};

export const ohmFrom = (document: GrammarDocument, names: Names): Toolkit => {
  // A PEG takes the first alternative that fits, so longer names must come first.
  const longestFirst = [...names].sort((a, b) => b.length - a.length);
  const word = (text: string): string => `w<${JSON.stringify(text)}>`;
  const rules: string[] = [];
  let made = 0;
  // All alternatives must have one child each, so each is a rule.
  const asRule = (body: string): string => {
    const name = `o_${made++}`;
    rules.push(`${name} = ${body}`);
    return name;
  };
  const write = (one: Expansion): string => {
    switch (one.kind) {
      case 'token':
        return one.text.split(' ').map(word).join(' ');
      case 'reference':
        return one.reference.kind === 'local' ? `r_${one.reference.name}` : 'names';
      case 'sequence':
        return one.items.map(write).filter((text) => text !== '').join(' '); // prettier-ignore
      case 'choice':
        return `(${one.options.map((option) => asRule(write(option.body))).join(' | ')})`;
      case 'repeat':
        return `(${write(one.body)})${one.max === 1 ? '?' : '*'}`;
      default:
        return '';
    }
  };
  for (const rule of document.rules.values()) rules.push(`r_${rule.name} = ${write(rule.body)}`);
  const nameRules = longestFirst.map((name) => asRule(name.map(word).join(' ')));
  const grammar = ohm.grammar(`Kitchen {
    start = r_${document.root!.name} end
    w<text> = text ~letter " "*
    ${rules.join('\n    ')}
    names = ${nameRules.join(' | ')}
  }`);
  return (tokens) => grammar.match(tokens.join(' ')).succeeded();
};
