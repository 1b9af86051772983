/** Properties that must hold of every grammar, not of chosen ones. */
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { GrammarError, parseGrammarText } from '../../src/grammar/index.js';
import type { DynamicRule, SemanticValue } from '../../src/grammar/index.js';
import { openGrammar } from '../../src/grammar/grammar.js';
import { readDocument } from '../../src/grammar/library.js';
import { readAbnf } from '../../src/grammar/reader.js';
import { createSampler, openGrammarFile } from '../../src/grammar/tools.js';
import { projectFile } from '../../src/project-files.js';
import { hasOutside, outsideFile } from '../support/outside.js';
import { asAbnf, hosts, naivelyAccepts, randomGrammar, randomInput } from './random-grammar.js';

/** A small repeatable source of numbers from 0 up to 1 (Mulberry32). */
const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
};

describe('random grammars', () => {
  it('accept exactly what a naive recogniser accepts', () => {
    fc.assert(
      fc.property(randomGrammar, fc.array(randomInput, { minLength: 4, maxLength: 8 }), (rules, inputs) => {
        const grammar = parseGrammarText(asAbnf(rules));
        for (const input of inputs) {
          expect(
            grammar.parse(input, { dynamic: hosts }).length > 0,
            `${asAbnf(rules)} ${input.join(' ')}`,
          ).toBe(naivelyAccepts(rules, input));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('give their parses best first, without an endless list', () => {
    fc.assert(
      fc.property(randomGrammar, randomInput, (rules, input) => {
        const grammar = openGrammar(readAbnf(asAbnf(rules), 'r.gram'), { roots: [] });
        const scores: number[] = [];
        for (const parse of grammar.derivations(input, { dynamic: hosts })) {
          if (scores.push(parse.score) >= 20) break;
          expect(parse.derivation.from).toBe(0);
          expect(parse.derivation.to).toBe(input.length);
        }
        expect(scores.length > 0).toBe(naivelyAccepts(rules, input));
        expect(Number.isFinite(scores.reduce((sum, score) => sum + score, 0))).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('accept every beginning of what they accept, and no beginning that nothing can finish', () => {
    fc.assert(
      fc.property(randomGrammar, randomInput, (rules, input) => {
        const grammar = openGrammar(readAbnf(asAbnf(rules), 'r.gram'), { roots: [] });
        if (naivelyAccepts(rules, input)) {
          for (let n = 0; n <= input.length; n++)
            expect(grammar.acceptsPrefix(input.slice(0, n), { dynamic: hosts })).toBe(true);
        }
        if (grammar.acceptsPrefix(input, { dynamic: hosts })) {
          const next = grammar.following(input, { dynamic: hosts });
          const more = next.words.some((word) => grammar.acceptsPrefix([...input, word], { dynamic: hosts }));
          // $GARBAGE and the host rule may go on with words of no grammar.
          expect(next.complete || more || /GARBAGE|host/u.test(asAbnf(rules))).toBe(true);
          for (const word of next.words)
            expect(grammar.acceptsPrefix([...input, word], { dynamic: hosts }), word).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('sample sentences that they accept', () => {
    fc.assert(
      fc.property(randomGrammar, fc.nat(), (rules, seed) => {
        const grammar = openGrammar(readAbnf(asAbnf(rules), 'r.gram'), { roots: [] });
        if (grammar.network.alive[grammar.network.ruleStart[0]!] === 0) return;
        const { tokens } = createSampler(grammar)('a', {
          random: seeded(seed),
          host: () => ({ tokens: ['x', 'y'], value: 'x y' }),
        });
        if (tokens.length < 12) expect(naivelyAccepts(rules, tokens), asAbnf(rules)).toBe(true);
        expect(grammar.parse(tokens, { dynamic: hosts })).toHaveLength(1);
      }),
      { numRuns: 300 },
    );
  });
});

const shipped = readdirSync(projectFile('grammars'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.gram'))
  .map((name) => projectFile('grammars', name));

describe('the shipped grammars', () => {
  it.each(shipped.map((file) => [relative(projectFile('grammars'), file), file]))(
    '%s: sampled sentences parse back to the meaning they were made with',
    (_, file) => {
      const grammar = openGrammarFile(file, { roots: [projectFile('grammars')] });
      const sample = createSampler(grammar);
      const random = seeded(7);
      // Host rules say a word of their own, which no other rule knows.
      const spoken = (uri: string): { tokens: string[]; value: SemanticValue } => ({
        tokens: [`host-${uri.replace(/[^a-z]/giu, '')}`],
        value: { from: uri },
      });
      const dynamic = new Map<string, DynamicRule>(
        grammar.network.hostUris.map((uri) => {
          const { tokens, value } = spoken(uri);
          return [uri, { matchesAt: (heard, at) => (heard[at] === tokens[0] ? [{ length: 1, value }] : []) }];
        }),
      );
      for (const rule of grammar.publicRules) {
        for (let i = 0; i < 12; i++) {
          const made = sample(rule, { random, host: spoken });
          if (made.tokens.length === 0 || made.tokens.length > 30) continue;
          const wanted = JSON.stringify(made.value);
          let found = false;
          let looked = 0;
          const seen: string[] = [];
          for (const parse of grammar.derivations(made.tokens, { rules: [rule], dynamic })) {
            seen.push(JSON.stringify(parse.value));
            found = seen[seen.length - 1] === wanted;
            if (found || ++looked >= 3000) break;
          }
          expect(
            found,
            `${rule}: "${made.tokens.join(' ')}" meant ${wanted}, heard ${seen.slice(0, 3).join(' or ')}`,
          ).toBe(true);
        }
      }
    },
  );
});

describe('broken files', () => {
  const folder = hasOutside('w3c-srgs') ? outsideFile('w3c-srgs') : null;
  const files = (folder === null ? [] : readdirSync(folder))
    .filter((name) => name.endsWith('.gram'))
    .map((name) => join(folder!, name));
  const bytes = [...files, ...shipped].map((file) => readFileSync(file));

  it('are refused with a place in the file, and never crash or hang', () => {
    fc.assert(
      fc.property(
        fc.nat(bytes.length - 1),
        fc.array(fc.tuple(fc.nat(), fc.constantFrom('cut', 'byte', 'swap', 'double'), fc.nat(255)), {
          minLength: 1,
          maxLength: 4,
        }),
        (which, changes) => {
          let mutated = Uint8Array.from(bytes[which]!);
          for (const [where, how, value] of changes) {
            const at = where % Math.max(1, mutated.length);
            if (how === 'cut') mutated = mutated.slice(0, at);
            else if (how === 'byte') mutated[at] = value;
            else if (how === 'swap') mutated.copyWithin(at, Math.max(0, at - value), at);
            else
              mutated = Uint8Array.from([...mutated.slice(0, at), ...mutated.slice(Math.max(0, at - value))]);
          }
          try {
            const document = readDocument(mutated, 'mutated.gram');
            if (document.text.length < 8000) openGrammar(document, { roots: [] }).parse(['x', 'y']);
          } catch (error) {
            if (!(error instanceof GrammarError)) throw error;
            for (const problem of error.problems) {
              expect(problem.line).toBeGreaterThan(0);
              expect(problem.column).toBeGreaterThan(0);
              expect(problem.message).not.toBe('');
            }
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('that are no grammar at all are refused', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() =>
          readAbnf(`#ABNF 1.0;\nlanguage en;\n$a = ${text.replace(/;/gu, '')} (;`, 'x.gram'),
        ).toThrow(GrammarError);
      }),
    );
  });
});
