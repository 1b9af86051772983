/** `tellshelf import`: items from a file, all of them or none. */
import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Command } from 'commander';
import { textOfFile } from '../../shared/exchange/file-text.js';
import type { FileForm, ImportPlan, Kitchen, ReadList } from '../kitchen/index.js';
import type { Store } from '../store/port.js';
import { whereabouts, withStore, type Where } from './with-store.js';

interface Flags extends Where {
  readonly dryRun?: boolean;
  readonly makePlaces?: boolean;
}

type Guessed = NonNullable<ReadList['guessed']>;

/** What each heading of somebody's own list is taken for, and what is left out. */
const headingsTold = ({ headings }: Guessed): string =>
  headings
    .map(({ heading, column }) => `${heading.trim()}: ${column === null ? 'left out' : column}\n`)
    .join('');

/** What each row of it is taken for, days and amounts as they would be noted. */
const rowsTold = ({ rows }: Guessed): string =>
  rows
    .map(
      ({ row, cells }) => `row ${row}: ${cells.map(([column, value]) => `${column} ${value}`).join(', ')}\n`,
    )
    .join('');

const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const told = (plan: ImportPlan, done: boolean): string => {
  const parts = [
    plural(plan.items, 'item'),
    ...(plan.markers > 0 ? [plural(plan.markers, 'new marker')] : []),
    ...(plan.places.length > 0
      ? [`${plural(plan.places.length, 'new place')} (${plan.places.join(', ')})`]
      : []),
  ];
  const already = plan.already > 0 ? ` Left out, because they are there already: ${plan.already}.` : '';
  return `${done ? 'Imported' : 'Would import'} ${parts.join(', ')}.${already}\n`;
};

/** Others may change the kitchen while this one reads: then it is planned again. */
const TRIES = 5;

const commit = async (
  store: Store,
  plan: (kitchen: Kitchen) => ImportPlan,
  id: string,
): Promise<ImportPlan> => {
  const turnId = `import.${randomUUID()}`;
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const kitchen = await store.loadKitchen(id);
    if (!kitchen) throw new Error(`There is no household "${id}" here.`);
    const planned = plan(kitchen);
    if (!planned.change) return planned;
    const result = await store.commitTurn(id, {
      turnId,
      conversationId: 'import',
      deviceId: null,
      personId: null,
      at: new Date().toISOString(),
      decidedOn: kitchen.version,
      changes: [planned.change],
      conversation: null,
      reply: null,
    });
    if (result.outcome !== 'stale') return planned;
  }
  throw new Error('The kitchen is being changed too often just now. Nothing was imported; try again.');
};

export const addImportCommand = (program: Command): void => {
  whereabouts(program.command('import <file>'), true)
    .description(
      'Read items from a file made by "export", or from your own list as .csv: all of them, or none and why.',
    )
    .option('--dry-run', 'only say what would happen')
    .option('--make-places', 'build places that are not there yet')
    .action(async (file: string, flags: Flags) => {
      const form: FileForm | null = /\.(csv|tsv|txt)$/i.test(file)
        ? 'csv'
        : /\.json$/i.test(file)
          ? 'json'
          : null;
      if (!form)
        throw new Error(
          'The file must end in .csv, .tsv, .txt or .json. A spreadsheet program saves its sheets as CSV.',
        );
      const { chooseHousehold } = await import('./which-household.js');
      const { mendOf, readList } = await import('../kitchen/index.js');
      const text = textOfFile(await readFile(file));
      let guessed: Guessed | null = null;
      const planned = await withStore(flags, async (store) => {
        const id = await chooseHousehold(store, flags.household);
        const plan = (kitchen: Kitchen): ImportPlan => {
          const doing = {
            kitchen,
            clock: { now: new Date().toISOString(), timeZone: kitchen.household.timeZone },
            speaker: { personId: null },
            newId: randomUUID,
          };
          const read = readList(doing, text, form, { makePlaces: flags.makePlaces ?? false });
          guessed = read.guessed;
          return read.plan;
        };
        if (!flags.dryRun) return commit(store, plan, id);
        const kitchen = await store.loadKitchen(id);
        if (!kitchen) throw new Error(`There is no household "${id}" here.`);
        return plan(kitchen);
      });
      if (guessed) process.stdout.write(headingsTold(guessed) + (flags.dryRun ? rowsTold(guessed) : ''));
      for (const { row, column, problem } of planned.faults) {
        const told = mendOf(column, problem);
        process.stderr.write(`row ${row}${column === null ? '' : `, ${column}`}: ${told}\n`);
      }
      if (planned.faults.some(({ column }) => column === 'place') && !flags.makePlaces)
        process.stderr.write('--make-places makes places that are not there yet.\n');
      if (planned.faults.length > 0) throw new Error('Nothing was imported.');
      process.stdout.write(told(planned, !flags.dryRun));
    });
};
