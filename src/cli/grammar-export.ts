/** `tellshelf grammar export --jsgf`: the listening grammar with a household's names, for a closed recogniser. */
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Command } from 'commander';
import { projectFile } from '../project-files.js';

/** The JSGF text for a kitchen. */
export const exportJsgf = async (
  phrases: (uri: string) => readonly string[],
  file: string = projectFile('grammars', 'en', 'listen.gram'),
  rule?: string,
): Promise<string> => {
  const { openGrammarFile, toJsgf } = await import('../grammar/tools.js');
  const grammar = openGrammarFile(file, { roots: [dirname(resolve(file))] });
  return toJsgf(grammar.library, { name: 'tellshelf', phrases, ...(rule === undefined ? {} : { rule }) });
};

export const addGrammarExport = (program: Command): void => {
  program.commands
    .find((command) => command.name() === 'grammar')
    ?.command('export')
    .description(
      'write a grammar with the household’s names in a recogniser’s own format, to standard output',
    )
    .requiredOption('--jsgf', 'JSpeech Grammar Format')
    .option('--grammar <file>', 'the grammar to write out (the listening grammar when left out)')
    .option('--rule <name>', 'the rule to make public (the root when left out)')
    .option('--kitchen <file>', 'an exported kitchen as JSON (the demo kitchen when left out)')
    .action(async (options: { grammar?: string; rule?: string; kitchen?: string }) => {
      const { demoKitchen, kitchenFromFile } = await import('../kitchen/index.js');
      const { phrasesOf } = await import('./listen/phrases.js');
      const clock = { now: new Date().toISOString(), timeZone: 'UTC' };
      const kitchen =
        options.kitchen === undefined
          ? demoKitchen(clock)
          : kitchenFromFile(readFileSync(options.kitchen, 'utf8'), clock);
      process.stdout.write(await exportJsgf(phrasesOf(kitchen), options.grammar, options.rule));
    });
};
