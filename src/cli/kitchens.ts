/** `tellshelf kitchens`: which there are, beginning one of one's own, and deleting one for good. */
import { randomUUID } from 'node:crypto';
import type { Command } from 'commander';
import { emptyKitchen, newHousehold } from '../kitchen/index.js';
import type { Kitchen } from '../kitchen/model.js';
import { dataFlag, whereabouts, withStore, type Where } from './with-store.js';

interface BeginFlags extends Where {
  readonly timeZone: string;
  readonly locale: string;
  readonly owner?: string;
}

/** "Ruth's kitchen" is `ruths-kitchen`, and with one of that id there, `ruths-kitchen-2`. */
const idFor = (name: string, taken: readonly string[]): string => {
  const stem =
    name
      .normalize('NFKD')
      .toLowerCase()
      .replace(/['’\p{Mark}]/gu, '')
      .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'kitchen';
  let id = stem;
  for (let n = 2; taken.includes(id); n += 1) id = `${stem}-${n}`;
  return id;
};

const zoneOf = (timeZone: string): string => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone }).resolvedOptions().timeZone;
  } catch {
    throw new Error(`"${timeZone}" is no time zone known here. One looks like Europe/London.`);
  }
};

const localeOf = (locale: string): string => {
  try {
    const [canonical] = Intl.getCanonicalLocales(locale);
    if (canonical !== undefined) return canonical;
  } catch {
    // Told below, in the same words.
  }
  throw new Error(`"${locale}" is no locale. One looks like en-GB.`);
};

/** Its owner, if named, is put on record as someone who eats there. */
const beginning = (name: string, id: string, flags: BeginFlags): Kitchen => {
  const kitchen = emptyKitchen(
    newHousehold({ id, name, timeZone: zoneOf(flags.timeZone), locale: localeOf(flags.locale) }),
  );
  if (flags.owner === undefined) return kitchen;
  const owner = { id: randomUUID(), name: flags.owner, eatsHere: true, allergens: [], atRisk: false };
  return { ...kitchen, people: new Map([[owner.id, owner]]) };
};

export const addKitchensCommand = (program: Command): void => {
  const kitchens = program
    .command('kitchens')
    .description('Kitchens in the store; begin one of your own, or delete one.');
  whereabouts(kitchens.command('list', { isDefault: true }), false)
    .description('List them: id, name, time zone.')
    .action((flags: Where) =>
      withStore(flags, async (store) => {
        for (const id of await store.householdIds()) {
          const kitchen = await store.loadKitchen(id);
          if (kitchen)
            process.stdout.write(`${id}\t${kitchen.household.name}\t${kitchen.household.timeZone}\n`);
        }
      }),
    );
  whereabouts(kitchens.command('begin <name>'), false)
    .description('Begin a kitchen of your own, empty: then talk to it and say "help me set up".')
    .option('--time-zone <zone>', 'where it is', Intl.DateTimeFormat().resolvedOptions().timeZone)
    .option('--locale <tag>', 'its language and country; decides whose guidance it starts with', 'en-US')
    .option('--owner <name>', 'whose kitchen it is')
    .action(async (name: string, flags: BeginFlags) => {
      const now = new Date().toISOString();
      await withStore(flags, async (store) => {
        const kitchen = beginning(name.trim(), idFor(name, await store.householdIds()), flags);
        if (kitchen.household.name === '') throw new Error('A kitchen needs a name.');
        await store.createHousehold(kitchen, now);
        const { id, region, measures, timeZone } = kitchen.household;
        const owner = [...kitchen.people.keys()][0];
        const here = dataFlag(flags.data);
        process.stdout
          .write(`${kitchen.household.name} is begun, empty, as "${id}": guidance of the ${region === 'uk' ? 'United Kingdom' : 'United States'}, ${measures === 'us' ? 'US measures' : 'metric measures'}, time of ${timeZone}.
Talk to it:       tellshelf talk --household ${id}${here}     and say: help me set up
Serve it:         tellshelf serve${here}
Let a device in:  tellshelf pair --household ${id}${here} --name "kitchen speaker" --scope own${owner === undefined ? '' : ` --person ${owner}`}
`);
      });
    });
  whereabouts(kitchens.command('delete <id>'), false)
    .description('Delete a kitchen for good: its records, journal, talk and devices.')
    .option('--yes', 'say that you mean it')
    .action(async (id: string, { yes, ...flags }: Where & { readonly yes?: boolean }) =>
      withStore(flags, async (store) => {
        const kitchen = await store.loadKitchen(id);
        if (!kitchen) throw new Error(`There is no kitchen "${id}" here. "tellshelf kitchens" lists them.`);
        if (yes !== true) {
          throw new Error(
            `This would delete ${kitchen.household.name} for good, ${kitchen.items.size} items and all. "tellshelf backup" keeps a copy. Say --yes to go on.`,
          );
        }
        await store.deleteHousehold(id);
        process.stdout.write(`${kitchen.household.name} is deleted.\n`);
      }),
    );
};
