/** `prepare`: makes all that each start would read (`src/prepared.ts`), for a package that carries it. */
import type { Command } from 'commander';

export const addPrepareCommand = (program: Command): void => {
  program
    .command('prepare')
    .description('Make what the program reads at its start, in the folder that TELLSHELF_PREPARED names.')
    .action(async () => {
      const { createTongues } = await import('../turn/index.js');
      const tongues = createTongues((error) => {
        throw error;
      });
      tongues.warm(new Date().toISOString());
    });
};
