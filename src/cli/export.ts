/** `tellshelf export`: what is in a kitchen, as a file. */
import { writeFile } from 'node:fs/promises';
import { Option, type Command } from 'commander';
import { whereabouts, withStore, type Where } from './with-store.js';

type Form = 'csv' | 'json' | 'archive';

export const addExportCommand = (program: Command): void => {
  whereabouts(program.command('export'), true)
    .description('Write a kitchen to a file: its items as a table or JSON, or all of it as an archive.')
    .addOption(
      new Option('--as <form>', 'csv and json hold the items; archive holds everything, with the journal')
        .choices(['csv', 'json', 'archive'])
        .default('csv'),
    )
    .option('--out <file>', 'where to; else it is printed')
    .action(async (flags: Where & { as: Form; out?: string }) => {
      const { chooseHousehold } = await import('./which-household.js');
      const { exportItems } = await import('../kitchen/index.js');
      const text = await withStore(flags, async (store) => {
        const id = await chooseHousehold(store, flags.household);
        if (flags.as === 'archive') return `${JSON.stringify(await store.archiveHousehold(id), null, 1)}\n`;
        const kitchen = await store.loadKitchen(id);
        if (!kitchen) throw new Error(`There is no household "${id}" here.`);
        return exportItems(kitchen, flags.as);
      });
      // An archive holds who ate what, and device token hashes: nobody else on the machine reads it.
      if (flags.out === undefined) process.stdout.write(text);
      else await writeFile(flags.out, text, { mode: 0o600 });
    });
};
