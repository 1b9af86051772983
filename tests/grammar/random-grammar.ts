/** Random small grammars, written out as ABNF text, and a recogniser too simple to be wrong. */
import fc from 'fast-check';
import { createTokenIndex } from '../../src/grammar/index.js';

export type Tree =
  | { kind: 'token'; word: string }
  | { kind: 'rule'; name: string }
  | { kind: 'special'; name: 'NULL' | 'VOID' | 'GARBAGE' }
  | { kind: 'host' }
  | { kind: 'tag' }
  | { kind: 'sequence'; items: Tree[] }
  | { kind: 'choice'; options: Tree[]; weights: (number | null)[] }
  | { kind: 'repeat'; body: Tree; min: number; max: number };

const RULES = ['a', 'b', 'c'] as const;
const WORDS = ['x', 'y', 'z'] as const;

/** What the host rule `$<host:phrases>` of the random grammars matches. */
const PHRASES = [['z'], ['x', 'y'], ['y', 'y', 'z'], ['w', 'x']];
export const hosts = new Map([['host:phrases', createTokenIndex()]]);
PHRASES.forEach((phrase) => hosts.get('host:phrases')!.add(phrase, phrase.join(' '), phrase.join(' ')));

const tree: fc.Arbitrary<Tree> = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constantFrom(...WORDS).map((word): Tree => ({ kind: 'token', word })),
    fc.constantFrom(...RULES).map((name): Tree => ({ kind: 'rule', name })),
    fc
      .constantFrom('NULL', 'VOID', 'GARBAGE')
      .map((name): Tree => ({ kind: 'special', name: name as 'NULL' })),
    fc.constant<Tree>({ kind: 'tag' }),
    fc.constant<Tree>({ kind: 'host' }),
    fc.array(tie('tree'), { minLength: 2, maxLength: 3 }).map((items): Tree => ({ kind: 'sequence', items })),
    fc
      .array(fc.tuple(tie('tree'), fc.option(fc.constantFrom(0.5, 2, 10))), { minLength: 2, maxLength: 3 })
      .map((pairs): Tree => ({
        kind: 'choice',
        options: pairs.map(([option]) => option),
        weights: pairs.map(([, weight]) => weight),
      })),
    fc
      .tuple(tie('tree'), fc.constantFrom([0, 1], [0, Infinity], [1, Infinity], [2, 3], [0, 0], [1, 5]))
      .map(([body, [min, max]]): Tree => ({ kind: 'repeat', body, min: min!, max: max! })),
  ),
})).tree;

export const randomGrammar = fc.record({ a: tree, b: tree, c: tree });
export type RandomGrammar = { a: Tree; b: Tree; c: Tree };
export const randomInput = fc.array(fc.constantFrom(...WORDS, 'w'), { maxLength: 5 });

const write = (one: Tree): string => {
  switch (one.kind) {
    case 'token':
      return one.word;
    case 'rule':
      return `$${one.name}`;
    case 'special':
      return `$${one.name}`;
    case 'host':
      return '$<host:phrases>';
    case 'tag':
      return '{t}';
    case 'sequence':
      return `(${one.items.map(write).join(' ')})`;
    case 'choice':
      return `(${one.options.map((option, i) => (one.weights[i] === null ? '' : `/${one.weights[i]}/ `) + write(option)).join(' | ')})`;
    case 'repeat':
      if (one.min === 0 && one.max === 1) return `[${write(one.body)}]`;
      return `(${write(one.body)})<${one.min}-${one.max === Infinity ? '' : one.max}>`;
  }
};

export const asAbnf = (grammar: RandomGrammar): string =>
  `#ABNF 1.0;\nlanguage en;\nroot $a;\n${RULES.map((name) => `public $${name} = ${write(grammar[name])};`).join('\n')}\n`;

/** Where each rule can end when begun at each position: grown from nothing until it grows no more. */
export const naivelyAccepts = (grammar: RandomGrammar, input: readonly string[]): boolean => {
  const n = input.length;
  const known = new Map<string, Set<number>>();
  const endsOfRule = (name: string, at: number): Set<number> => known.get(`${name} ${at}`) ?? new Set();
  const ends = (one: Tree, at: number): Set<number> => {
    switch (one.kind) {
      case 'token':
        return new Set(input[at] === one.word ? [at + 1] : []);
      case 'rule':
        return endsOfRule(one.name, at);
      case 'special':
        if (one.name === 'NULL') return new Set([at]);
        if (one.name === 'VOID') return new Set();
        return new Set(Array.from({ length: n - at + 1 }, (_, i) => at + i));
      case 'host':
        return new Set(
          PHRASES.filter((phrase) => phrase.every((word, i) => input[at + i] === word)).map(
            (phrase) => at + phrase.length,
          ),
        );
      case 'tag':
        return new Set([at]);
      case 'sequence':
        return one.items.reduce((from, item) => union([...from].map((p) => ends(item, p))), new Set([at]));
      case 'choice':
        return union(one.options.map((option) => ends(option, at)));
      case 'repeat': {
        let front = new Set([at]);
        for (let i = 0; i < one.min; i++) front = union([...front].map((p) => ends(one.body, p)));
        const all = new Set(front);
        for (let i = one.min; i < one.max && front.size > 0; i++) {
          const next = union([...front].map((p) => ends(one.body, p)));
          front = new Set([...next].filter((p) => !all.has(p)));
          for (const p of front) all.add(p);
        }
        return all;
      }
    }
  };
  for (let grown = true; grown;) {
    grown = false;
    for (const name of RULES) {
      for (let at = 0; at <= n; at++) {
        const before = endsOfRule(name, at).size;
        const now = union([endsOfRule(name, at), ends(grammar[name], at)]);
        if (now.size > before) {
          known.set(`${name} ${at}`, now);
          grown = true;
        }
      }
    }
  }
  return endsOfRule('a', 0).has(n);
};

const union = (sets: readonly Set<number>[]): Set<number> => new Set(sets.flatMap((set) => [...set]));
