/** Ties reader, network, chart and semantics together behind the `Grammar` of `api.ts`. */
import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type {
  DynamicMatch,
  Following,
  Grammar,
  LoadOptions,
  Parse,
  ParseOptions,
  SemanticValue,
} from './api.js';
import { createRanker } from './best.js';
import type { Derivation } from './best.js';
import { createRecogniser } from './chart.js';
import type { Chart } from './chart.js';
import type { Library } from './library.js';
import { loadLibrary, readDocument } from './library.js';
import type { Network } from './network.js';
import { compileNetwork, TooLargeError } from './compile.js';
import { HOST, TOKEN } from './network.js';
import { GrammarError, lineAndColumn } from './problems.js';
import { readAbnf } from './reader.js';
import { checkTags, createInterpreter } from './semantics.js';
import type { TagDocument } from './semantics.js';
import type { GrammarDocument, RuleDefinition } from './syntax.js';

/** A grammar with its insides, for tools: `tellshelf grammar …` and tests. */
export interface OpenGrammar extends Grammar {
  readonly library: Library;
  readonly network: Network;
  /** Every parse as a derivation tree, best first. To be read before the grammar parses anything else. */
  derivations(tokens: readonly string[], options?: ParseOptions): Iterable<OpenParse>;
  /** As `parse`, by one rule of the main document, be it private. */
  parseRule(rule: string, tokens: readonly string[], options?: ParseOptions): Parse[];
  /** The meaning of a derivation made elsewhere, such as a sample. */
  interpret(
    derivation: Derivation,
    tokens: readonly string[],
    matches: readonly DynamicMatch[],
  ): SemanticValue;
}

/** What a parse is made of, for tools. */
export interface OpenParse extends Parse {
  readonly derivation: Derivation;
}

/** How many more derivations than parses wanted are looked at when many have one meaning. */
const EXTRA_DERIVATIONS = 32;

const refuse = (
  document: GrammarDocument,
  at: number,
  message: string,
  expected: string,
  hint: string,
): never => {
  throw new GrammarError([
    { file: document.file, ...lineAndColumn(document.text, at), message, expected, hint },
  ]);
};

/** A grammar compiled: plain data that can be kept in a file, read back and run (`grammarOf`). */
export interface CompiledGrammar {
  readonly network: Network;
  readonly documents: readonly TagDocument[];
  /** By their number in the network. */
  readonly rules: readonly {
    readonly name: string;
    readonly scope: RuleDefinition['scope'];
    /** Of `documents`, by number. */
    readonly document: number;
  }[];
  /** Rules of the main document by name. */
  readonly byName: ReadonlyMap<string, number>;
  readonly root: string | null;
}

const compileLibrary = (library: Library, options: LoadOptions): CompiledGrammar => {
  const { main } = library;
  let network: Network;
  try {
    network = compileNetwork(library);
  } catch (error) {
    if (!(error instanceof TooLargeError)) throw error;
    return refuse(
      error.document,
      error.at,
      error.message,
      'at most 2000 repetitions',
      'Write <n-> for no upper limit.',
    );
  }
  return {
    network,
    documents: checkTags(library, options.interpretTags),
    rules: library.rules.map(({ document, definition: { name, scope } }) => ({
      name,
      scope,
      document: library.documents.indexOf(document),
    })),
    byName: new Map([...main.rules.keys()].map((name) => [name, library.ruleOf(main, name)!.index])),
    root: main.root?.name ?? null,
  };
};

/** What runs of a grammar: all of `OpenGrammar` but what it was made from. */
type RunningGrammar = Omit<OpenGrammar, 'library'>;

const run = ({ network, documents, rules: allRules, byName, root }: CompiledGrammar): RunningGrammar => {
  const interpreter = createInterpreter(
    network,
    documents,
    allRules.map((rule) => rule.document),
  );
  const recogniser = createRecogniser(network);
  const ranker = createRanker(network);
  const publicRules = [...byName]
    .filter(([, index]) => allRules[index]!.scope === 'public')
    .map(([name]) => name);

  let lastNames: readonly string[] | undefined;
  let lastIndexes: readonly number[] = [];
  const activeRules = (given: readonly string[] | undefined): readonly number[] => {
    const names = given ?? (root === null ? publicRules : [root]);
    if (names === lastNames) return lastIndexes;
    const indexes = names.map((name) => {
      const index = byName.get(name);
      if (index === undefined || (name !== root && allRules[index]!.scope !== 'public')) {
        throw new RangeError(`The grammar has no public rule "${name}".`);
      }
      return index;
    });
    lastNames = names;
    lastIndexes = indexes;
    return indexes;
  };

  /** Counts the charts made: the ranker reads only the newest. */
  let charts = 0;
  const begin = (
    tokens: readonly string[],
    rules: readonly number[],
    given: ParseOptions | undefined,
  ): Chart => {
    charts++;
    const chart = recogniser.recognise(tokens, rules, given?.dynamic);
    ranker.begin(chart);
    return chart;
  };

  const parse = (
    tokens: readonly string[],
    rules: readonly number[],
    given: ParseOptions | undefined,
  ): Parse[] => {
    const chart = begin(tokens, rules, given);
    const limit = given?.limit ?? 1;
    const parses: Parse[] = [];
    const seen = limit > 1 ? new Set<string>() : null;
    for (let looked = 0; looked < limit + EXTRA_DERIVATIONS && parses.length < limit; looked++) {
      const ranked = ranker.next();
      if (ranked === null) break;
      const rule = allRules[rules[ranked.goal]!]!.name;
      const value = interpreter.evaluate(ranked.derivation, tokens, chart.hostMatches);
      // Derivations that differ only in how nothing was matched mean the same: told once.
      if (seen !== null) {
        const key = `${rule} ${JSON.stringify(value)}`;
        if (seen.has(key)) continue;
        seen.add(key);
      }
      parses.push({ rule, value, score: ranked.score });
    }
    return parses;
  };

  function* derivations(tokens: readonly string[], given?: ParseOptions): Generator<OpenParse> {
    const rules = activeRules(given?.rules);
    const chart = begin(tokens, rules, given);
    const current = charts;
    for (;;) {
      if (charts !== current) throw new Error('The grammar has parsed something else since.');
      const ranked = ranker.next();
      if (ranked === null) return;
      yield {
        rule: allRules[rules[ranked.goal]!]!.name,
        score: ranked.score,
        derivation: ranked.derivation,
        value: interpreter.evaluate(ranked.derivation, tokens, chart.hostMatches),
      };
    }
  }

  const prefixChart = (tokens: readonly string[], given: ParseOptions | undefined): Chart => {
    charts++;
    return recogniser.recognise(tokens, activeRules(given?.rules), given?.dynamic, { prefix: true });
  };

  return {
    network,
    publicRules,
    root,
    derivations,
    parse: (tokens, given) => parse(tokens, activeRules(given?.rules), given),
    parseRule(rule, tokens, given) {
      const index = byName.get(rule);
      if (index === undefined) throw new RangeError(`The grammar has no rule "${rule}".`);
      return parse(tokens, [index], given);
    },
    acceptsPrefix: (tokens, given) => prefixChart(tokens, given).liveAtEnd > 0,
    following: (tokens, given) => followingOf(prefixChart(tokens, given)),
    interpret: interpreter.evaluate,
  };
};

export const openGrammar = (main: GrammarDocument, options: LoadOptions): OpenGrammar => {
  const library = loadLibrary(main, options);
  return { library, ...run(compileLibrary(library, options)) };
};

/** Reads what the live items at the end of the chart wait for. */
const followingOf = (chart: Chart): Following => {
  const { items, network, tokens } = chart;
  const words = new Set<string>();
  const hosts = new Set<string>();
  for (let item = 0; item < items.count; item++) {
    if (items.position[item] !== tokens.length) continue;
    const state = items.state[item]!;
    for (let e = network.edgeStart[state]!; e < network.edgeStart[state + 1]!; e++) {
      if (network.alive[network.edgeTarget[e]!] === 0) continue;
      if (network.edgeKind[e] === TOKEN) words.add(network.tokenTexts[network.edgeArg[e]!]!);
      else if (network.edgeKind[e] === HOST) hosts.add(network.hostUris[network.edgeArg[e]!]!);
    }
  }
  return {
    words: [...words].sort(),
    hosts: [...hosts].sort(),
    complete: chart.goals.some((goal) => goal >= 0),
  };
};

const readMain = (file: string): GrammarDocument => {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch {
    throw new GrammarError([
      {
        file,
        line: 1,
        column: 1,
        message: 'The file cannot be read.',
        hint: 'Is the path right, and may it be read?',
      },
    ]);
  }
  return readDocument(bytes, file);
};

/** Reads and links the grammar in `file`; see `compileGrammar`. */
export const openGrammarFile = (file: string, options: LoadOptions): OpenGrammar =>
  openGrammar(readMain(file), options);

/**
 * Reads a grammar file and all it refers to, and compiles them.
 * Throws `GrammarError` with every mistake found. Nothing outside `options.roots` is opened.
 */
export const compileGrammar = (file: string, options: LoadOptions): CompiledGrammar =>
  compileLibrary(loadLibrary(readMain(file), options), options);

/** The grammar that was compiled, ready to parse. */
export const grammarOf = (compiled: CompiledGrammar): Grammar => run(compiled);

/** `compileGrammar` and `grammarOf` in one. */
export const loadGrammar = (file: string, options: LoadOptions): Grammar =>
  grammarOf(compileGrammar(file, options));

/** Reads a grammar given as text. References are relative to `file`, which need not exist. */
export const parseGrammarText = (text: string, file = 'grammar.gram', options?: LoadOptions): Grammar =>
  openGrammar(readAbnf(text, file), options ?? { roots: [dirname(file)] });
