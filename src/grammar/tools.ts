/** The insides that tools need: checking, outlines, samples, test suites. Programs use `index.ts`. */
export { openGrammarFile } from './grammar.js';
export type { OpenGrammar } from './grammar.js';
export type { Finding } from './lint.js';
export { anyWords, exampleTokens, lintGrammar, unusedPublicRules } from './lint.js';
export { toJsgf } from './jsgf.js';
export { toSrgsXml } from './srgs-xml.js';
export { logicalParse } from './logical.js';
export { outlineOf } from './outline.js';
export { describeProblem, GrammarError } from './problems.js';
export { createSampler } from './sample.js';
export { readSuite, runCase } from './suite.js';
