/** The grammar engine's public door: W3C SRGS 1.0 (ABNF) with SISR 1.0. See README.md beside this file. */
export type {
  DynamicMatch,
  DynamicRule,
  DynamicRules,
  Following,
  Grammar,
  GrammarProblem,
  LoadOptions,
  Parse,
  ParseOptions,
  SemanticValue,
} from './api.js';
export { compileGrammar, grammarOf, loadGrammar, parseGrammarText } from './grammar.js';
export type { CompiledGrammar } from './grammar.js';
export { describeProblem, GrammarError } from './problems.js';
export { createTokenIndex } from './token-index.js';
export type { TokenIndex } from './token-index.js';
