/** `tellshelf backup`: a copy of the whole store while it is in use. */
import type { Command } from 'commander';
import { whereabouts, withStore, type Where } from './with-store.js';

export const addBackupCommand = (program: Command): void => {
  whereabouts(program.command('backup <target>'), false)
    .description(
      'Copy everything while it is in use: to one file, or (PostgreSQL) one archive a household in a folder.',
    )
    .action(async (target: string, flags: Where) => {
      const { access } = await import('node:fs/promises');
      const there = await access(target).then(
        () => true,
        () => false,
      );
      if (there) throw new Error(`"${target}" is there already. A backup never overwrites.`);
      await withStore(flags, (store) => store.backup(target));
      process.stdout.write(`Backed up to ${target}\n`);
    });
};
