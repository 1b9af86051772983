/** `tellshelf grammar check|say|sample|suite`: tools for those who write grammars. */
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Command } from 'commander';
import { projectFile } from '../project-files.js';
import type { Finding, OpenGrammar } from '../grammar/tools.js';
import { hearingFor } from './grammar-hearing.js';

const out = (line: string): void => void process.stdout.write(`${line}\n`);

/** Every grammar file of every language. */
const ownGrammars = (): string[] =>
  readdirSync(projectFile('grammars'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.gram'))
    .sort()
    .map((name) => projectFile('grammars', name));

const rootsOf = (file: string): string[] => [dirname(resolve(file)), projectFile('grammars')];

const check = async (files: readonly string[], options: { words?: boolean }): Promise<void> => {
  const { describeProblem, GrammarError, lintGrammar, openGrammarFile, unusedPublicRules } =
    await import('../grammar/tools.js');
  let mistakes = 0;
  let warnings = 0;
  const checked = files.length > 0 ? files : ownGrammars();
  const opened: OpenGrammar[] = [];
  const tell = (findings: readonly Finding[]): void => {
    for (const finding of findings) {
      if (finding.severity === 'error') mistakes++;
      else if (finding.severity === 'warning') warnings++;
      else if (options.words !== true) continue;
      out(`${finding.severity}: ${describeProblem(finding)}`);
    }
  };
  for (const file of checked) {
    try {
      const grammar = openGrammarFile(resolve(file), { roots: rootsOf(file) });
      opened.push(grammar);
      tell(lintGrammar(grammar, await hearingFor(resolve(file), grammar)));
    } catch (error) {
      if (!(error instanceof GrammarError)) throw error;
      mistakes += error.problems.length;
      for (const problem of error.problems) out(`error: ${describeProblem(problem)}`);
    }
  }
  tell(unusedPublicRules(opened));
  out(`${checked.length} files, ${mistakes} errors, ${warnings} warnings`);
  if (mistakes > 0) process.exitCode = 1;
};

const say = async (
  words: readonly string[],
  options: { grammar?: string[]; all?: boolean },
): Promise<void> => {
  const { openGrammarFile, outlineOf } = await import('../grammar/tools.js');
  let told = 0;
  for (const file of options.grammar ?? [projectFile('grammars', 'en', 'main.gram')]) {
    const grammar = openGrammarFile(file, { roots: rootsOf(file) });
    const rules = grammar.publicRules.length > 0 ? grammar.publicRules : undefined;
    const { hosts: dynamic, tokensOf } = await hearingFor(resolve(file), grammar);
    const tokens = tokensOf(words.join(' ').replace(/[.,!?;:]+(?=\s|$)/gu, ''));
    for (const parse of grammar.derivations(tokens, { dynamic, ...(rules === undefined ? {} : { rules }) })) {
      out(`Parse ${++told}, by ${file}`);
      for (const line of outlineOf(parse.derivation, grammar.library, tokens)) out(line);
      out(`Meaning: ${JSON.stringify(parse.value)}`);
      out(`Weight: ${Math.exp(parse.score).toPrecision(3)}`);
      if (options.all !== true || told >= 20) break;
    }
  }
  if (told === 0) {
    out('No rule accepts this.');
    process.exitCode = 1;
  }
};

const sample = async (rule: string, options: { grammar?: string[]; number: string }): Promise<void> => {
  const { createSampler, openGrammarFile } = await import('../grammar/tools.js');
  for (const file of options.grammar ?? ownGrammars()) {
    const grammar = openGrammarFile(file, { roots: rootsOf(file) });
    if (grammar.library.ruleOf(grammar.library.main, rule) === undefined) continue;
    const draw = createSampler(grammar);
    for (let i = 0; i < Math.max(1, Number(options.number) || 1); i++) {
      out(draw(rule, { random: Math.random }).tokens.join(' '));
    }
    return;
  }
  throw new Error(`No grammar file has a rule "${rule}".`);
};

const suite = async (table: string, options: { dir?: string }): Promise<void> => {
  const { readSuite, runCase } = await import('../grammar/tools.js');
  let passed = 0;
  let failed = 0;
  for (const one of readSuite(readFileSync(table, 'utf8'))) {
    const result = runCase(one, options.dir ?? dirname(table));
    if (result.passed) {
      passed++;
      continue;
    }
    failed++;
    const wanted = one.verdict === 'REJECT' ? 'REJECT' : one.expected;
    out(`FAILED ${one.file}, input ${one.n} "${one.input}": expected ${wanted}; ${result.detail}`);
    if (one.note !== '') out(`  note of the suite: ${one.note}`);
  }
  out(`${passed} passed, ${failed} failed`);
  if (failed > 0) process.exitCode = 1;
};

/** Registers the `grammar` commands. */
export const addGrammarCommand = (program: Command): void => {
  const grammar = program.command('grammar').description('tools for writing and checking grammars');
  grammar
    .command('check [files...]')
    .description(
      'read grammars and tell mistakes, unused rules and examples that fail; all shipped ones if none is named',
    )
    .option('--words', 'tell words that are in one rule only, too')
    .action(check);
  grammar
    .command('say <words...>')
    .description('tell how a sentence is understood, as a numbered outline')
    .option('-g, --grammar <files...>', 'grammar files; the shipped ones if left out')
    .option('-a, --all', 'tell other readings, too')
    .action(say);
  grammar
    .command('sample <rule>')
    .description('make up sentences by a rule')
    .option('-n, --number <count>', 'how many', '10')
    .option('-g, --grammar <files...>', 'grammar files; the shipped ones if left out')
    .action(sample);
  grammar
    .command('suite <table>')
    .description('run a table of cases in the form of the W3C suite')
    .option('--dir <folder>', 'where the grammar files are; beside the table if left out')
    .action(suite);
};
