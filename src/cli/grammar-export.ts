/** `tellshelf grammar export`: what a recogniser should listen for, in its own format. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Option, type Command } from 'commander';
import type { BiasingForm } from '../biasing/index.js';

const FORMS = ['jsgf', 'srgs', 'words'] as const satisfies readonly BiasingForm[];

export const addGrammarExport = (program: Command): void => {
  program.commands
    .find((command) => command.name() === 'grammar')
    ?.command('export')
    .description(
      'write a grammar with the household’s names in a recogniser’s own format, to standard output',
    )
    .addOption(
      new Option('--as <form>', 'JSpeech Grammar Format, SRGS as XML, or the names alone with weights')
        .choices(FORMS)
        .default('jsgf'),
    )
    .option('--grammar <file>', 'the grammar to write out (the listening grammar when left out)')
    .option('--rule <name>', 'the rule to make public (the root when left out)')
    .option('--kitchen <file>', 'an exported kitchen as JSON (the demo kitchen when left out)')
    .action(async (options: { as: BiasingForm; grammar?: string; rule?: string; kitchen?: string }) => {
      const { demoKitchen, kitchenFromFile } = await import('../kitchen/index.js');
      const { biasingFor } = await import('../biasing/index.js');
      const clock = { now: new Date().toISOString(), timeZone: 'UTC' };
      const kitchen =
        options.kitchen === undefined
          ? demoKitchen(clock)
          : kitchenFromFile(readFileSync(options.kitchen, 'utf8'), clock);
      const file = options.grammar === undefined ? undefined : resolve(options.grammar);
      process.stdout.write(biasingFor(kitchen, options.as, { file, rule: options.rule }));
    });
};
