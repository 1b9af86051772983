/** The best parse is the best: against an exhaustive search over small grammars without cycles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openGrammar } from '../../src/grammar/grammar.js';
import { readAbnf } from '../../src/grammar/reader.js';

type Tree =
  | { kind: 'word'; text: string }
  | { kind: 'rule'; name: string }
  | { kind: 'sequence'; items: Tree[] }
  | { kind: 'choice'; options: { weight: number; body: Tree }[] }
  | { kind: 'optional'; body: Tree; probability: number }
  | { kind: 'loop'; text: string };

const WORDS = ['x', 'y'] as const;

/** Trees that refer only to the rules named, so that no rule leads back to itself. */
const treeOf = (rules: readonly string[]): fc.Arbitrary<Tree> =>
  fc.letrec<{ tree: Tree }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom(...WORDS).map((text): Tree => ({ kind: 'word', text })),
      ...(rules.length > 0 ? [fc.constantFrom(...rules).map((name): Tree => ({ kind: 'rule', name }))] : []),
      fc.constantFrom(...WORDS).map((text): Tree => ({ kind: 'loop', text })),
      fc
        .array(tie('tree'), { minLength: 1, maxLength: 3 })
        .map((items): Tree => ({ kind: 'sequence', items })),
      fc
        .array(fc.record({ weight: fc.constantFrom(0.25, 0.5, 1, 3), body: tie('tree') }), {
          minLength: 2,
          maxLength: 3,
        })
        .map((options): Tree => ({ kind: 'choice', options })),
      fc
        .tuple(tie('tree'), fc.constantFrom(0.25, 0.5, 0.75))
        .map(([body, probability]): Tree => ({ kind: 'optional', body, probability })),
    ),
  })).tree;

const grammars = fc.record({ a: treeOf(['b', 'c']), b: treeOf(['c']), c: treeOf([]) });
type Rules = Record<'a' | 'b' | 'c', Tree>;

const write = (tree: Tree): string => {
  switch (tree.kind) {
    case 'word':
      return tree.text;
    case 'rule':
      return `$${tree.name}`;
    case 'sequence':
      return `(${tree.items.map(write).join(' ')})`;
    case 'choice':
      return `(${tree.options.map(({ weight, body }) => `/${weight}/ ${write(body)}`).join(' | ')})`;
    case 'optional':
      return `(${write(tree.body)})<0-1 /${tree.probability}/>`;
    case 'loop':
      return `${tree.text}<0->`;
  }
};

/** Every weight of every derivation, by where it ends: all of them, one by one. */
const derivations = (rules: Rules, tree: Tree, input: readonly string[], at: number): [number, number][] => {
  switch (tree.kind) {
    case 'word':
      return input[at] === tree.text ? [[at + 1, 1]] : [];
    case 'rule':
      return derivations(rules, rules[tree.name as 'a'], input, at);
    case 'sequence':
      return tree.items.reduce<[number, number][]>(
        (ways, item) =>
          ways.flatMap(([end, w]) =>
            derivations(rules, item, input, end).map(([e, v]): [number, number] => [e, w * v]),
          ),
        [[at, 1]],
      );
    case 'choice':
      return tree.options.flatMap(({ weight, body }) =>
        derivations(rules, body, input, at).map(([e, w]): [number, number] => [e, w * weight]),
      );
    case 'optional':
      return [
        [at, 1 - tree.probability],
        ...derivations(rules, tree.body, input, at).map(([e, w]): [number, number] => [
          e,
          w * tree.probability,
        ]),
      ];
    case 'loop': {
      const ways: [number, number][] = [[at, 1]];
      for (let end = at; input[end] === tree.text; end++) ways.push([end + 1, 1]);
      return ways;
    }
  }
};

describe('weights', () => {
  it('order all parses exactly as an exhaustive search does', () => {
    fc.assert(
      fc.property(grammars, fc.array(fc.constantFrom(...WORDS), { maxLength: 4 }), (rules, input) => {
        const text = `#ABNF 1.0;\nlanguage en;\n${(['a', 'b', 'c'] as const).map((name) => `public $${name} = ${write(rules[name])};`).join('\n')}`;
        const wanted = derivations(rules, rules.a, input, 0)
          .filter(([end]) => end === input.length)
          .map(([, weight]) => weight)
          .sort((a, b) => b - a);
        fc.pre(wanted.length < 200);
        const found: number[] = [];
        const grammar = openGrammar(readAbnf(text, 'w.gram'), { roots: [] });
        for (const parse of grammar.derivations(input, { rules: ['a'] })) {
          found.push(Math.exp(parse.score));
          if (found.length > 300) break;
        }
        expect(found.length, text).toBe(wanted.length);
        found.forEach((weight, i) =>
          expect(weight, `${text} ${input.join(' ')} ${i}`).toBeCloseTo(wanted[i]!, 9),
        );
      }),
      { numRuns: 500 },
    );
  });
});
