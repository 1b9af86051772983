import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { addBackupCommand } from '../../src/cli/backup.js';
import { addExportCommand } from '../../src/cli/export.js';
import { addImportCommand } from '../../src/cli/import.js';
import { addRestoreCommand } from '../../src/cli/restore.js';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import { openSqliteStore } from '../../src/store/index.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' };
const folder = mkdtempSync(join(tmpdir(), 'tellshelf-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What a command printed, or the error that main would print. */
const run = async (...words: readonly string[]): Promise<string> => {
  const program = new Command().exitOverride();
  for (const add of [addBackupCommand, addExportCommand, addImportCommand, addRestoreCommand]) add(program);
  let said = '';
  const hear = (text: string | Uint8Array): boolean => {
    said += String(text);
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(hear),
    vi.spyOn(process.stderr, 'write').mockImplementation(hear),
  ];
  try {
    await program.parseAsync([...words], { from: 'user' });
  } catch (error) {
    said += `error: ${error instanceof Error ? error.message : String(error)}`;
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
  return said;
};

let data: string;
let serial = 0;
const names = async (): Promise<readonly string[]> => {
  const store = openSqliteStore(join(data, 'kitchen.sqlite'));
  const kitchen = await store.loadKitchen('demo');
  await store.close();
  return kitchen ? livingItems(kitchen).map(({ name }) => name) : [];
};
const file = (name: string, text: string): string => {
  const path = join(data, name);
  writeFileSync(path, text);
  return path;
};

describe('files in and out by the command line', () => {
  beforeEach(async () => {
    vi.stubEnv('DATABASE_URL', '');
    data = join(folder, String(++serial));
    const { openStore } = await import('../../src/cli/open-store.js');
    const store = await openStore({ data });
    await store.createHousehold(demoKitchen(clock), clock.now);
    await store.close();
  });

  it('a dry run says what an import would do and does nothing', async () => {
    const path = file('new.csv', 'name,place\nquince paste,fridge > door\nrye bread,attic > box\n');
    const before = await names();
    expect(await run('import', path, '--data', data)).toBe(
      'row 3, place: there is no place "attic". Write a place that is there, or ask for new places to be made.\n--make-places makes places that are not there yet.\nerror: Nothing was imported.',
    );
    expect(await run('import', path, '--dry-run', '--make-places', '--data', data)).toBe(
      'Would import 2 items, 2 new places (attic, attic > box).\n',
    );
    expect(await names()).toEqual(before);
    expect(await run('import', path, '--make-places', '--data', data)).toContain('Imported 2 items');
    expect(await names()).toEqual(expect.arrayContaining([...before, 'quince paste', 'rye bread']));
    expect(await run('import', path, '--data', data)).toContain('because they are there already: 2');
  });

  it('somebody’s own list is shown as it is taken, days by the household’s country, before anything is done', async () => {
    const path = file(
      'own.csv',
      'My list,,,\nItem,Location,Qty,Expiry,Colour\nQuince paste,Fridge,2 jars,5/6/2027,red\n',
    );
    expect(await run('import', path, '--dry-run', '--data', data)).toBe(
      'Item: name\nLocation: place\nQty: amount\nExpiry: use by\nColour: left out\n' +
        'row 3: name Quince paste, place fridge, amount 2, use by 2027-05-06, unit jar\nWould import 1 item.\n',
    );
    expect(await names()).not.toContain('Quince paste');
    expect(await run('import', path, '--data', data)).toMatch(/Imported 1 item\.\n$/);
    expect(await names()).toContain('Quince paste');
  });

  it('what was exported is imported with nothing added', async () => {
    for (const form of ['csv', 'json']) {
      const path = join(data, `out.${form}`);
      expect(await run('export', '--as', form, '--out', path, '--data', data)).toBe('');
      expect(await run('import', path, '--data', data)).toContain('Imported 0 items');
    }
    expect(await run('import', join(data, 'out.xls'), '--data', data)).toBe(
      'error: The file must end in .csv, .tsv, .txt or .json. A spreadsheet program saves its sheets as CSV.',
    );
  });

  it('a store file is not put in the place of one that is in use', async () => {
    const backup = join(data, 'in-use.sqlite');
    await run('backup', backup, '--data', data);
    const service = openSqliteStore(join(data, 'kitchen.sqlite'));
    expect(await run('restore', backup, '--replace', '--data', data)).toMatch(/the store is in use/);
    expect((await service.householdIds()).length).toBeGreaterThan(0);
    await service.close();
    expect(await run('restore', backup, '--replace', '--data', data)).toMatch(/Restoring/);
  });

  it('a backup brings back what was lost since, and is never overwritten', async () => {
    const before = await names();
    const backup = join(data, 'saved.sqlite');
    await run('backup', backup, '--data', data);
    expect(await run('backup', backup, '--data', data)).toContain('A backup never overwrites');
    await run('import', file('new.csv', 'name\nquince paste\n'), '--data', data);
    expect(await names()).toContain('quince paste');
    expect(await run('restore', backup, '--data', data)).toContain('There is a store');
    await run('restore', backup, '--replace', '--data', data);
    expect(await names()).toEqual(before);
    expect(readdirSync(data).filter((name) => name.includes('.before-'))).toHaveLength(1);
    expect(await run('restore', file('not.sqlite', 'hello '.repeat(200)), '--replace', '--data', data)).toBe(
      'error: the store file cannot be read',
    );
    expect(await names()).toEqual(before);
  });

  it('an archive moves a whole household to another store', async () => {
    const before = await names();
    const archive = join(data, 'all.json');
    await run('export', '--as', 'archive', '--out', archive, '--data', data);
    expect(await run('restore', archive, '--data', data)).toContain('already');
    const old = data;
    data = join(folder, `${serial}-new`);
    expect(await run('restore', archive, '--data', data)).toBe('Restored household demo\n');
    expect(await names()).toEqual(before);
    const broken = { ...JSON.parse(readFileSync(archive, 'utf8')), journal: 'none' };
    expect(
      await run('restore', file('broken.json', JSON.stringify(broken)), '--replace', '--data', data),
    ).toContain('not a household’s archive'.replace('’', "'"));
    expect(await names()).toEqual(before);
    data = old;
  });
});
