/** `tellshelf kitchens`: a kitchen of one's own from nothing to gone, as the command line does it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { addDeviceCommands } from '../../src/cli/devices.js';
import { addKitchensCommand } from '../../src/cli/kitchens.js';
import { dataFlag } from '../../src/cli/with-store.js';
import { newHousehold } from '../../src/kitchen/index.js';
import { openSqliteStore } from '../../src/store/index.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-kitchens-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let data: string;
beforeEach(() => {
  data = mkdtempSync(join(folder, 'one-'));
});

/** What a command printed, or the error that main would print. */
const run = async (...words: readonly string[]): Promise<string> => {
  const program = new Command().exitOverride();
  addKitchensCommand(program);
  addDeviceCommands(program);
  let said = '';
  const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    said += String(text);
    return true;
  });
  try {
    await program.parseAsync([...words, '--data', data], { from: 'user' });
  } catch (error) {
    said += `error: ${error instanceof Error ? error.message : String(error)}`;
  } finally {
    spy.mockRestore();
  }
  return said;
};

describe('tellshelf kitchens', () => {
  it('begins one that is empty, in its own time zone, with whose guidance by its country', async () => {
    expect(
      await run('kitchens', 'begin', "Ruth's kitchen", '--time-zone', 'Europe/London', '--locale', 'en-gb'),
    ).toMatch(/^Ruth's kitchen is begun, empty, as "ruths-kitchen": guidance of the United Kingdom/);
    expect(await run('kitchens')).toBe("ruths-kitchen\tRuth's kitchen\tEurope/London\n");
    const store = openSqliteStore(join(data, 'kitchen.sqlite'));
    const kitchen = await store.loadKitchen('ruths-kitchen');
    await store.close();
    expect(kitchen?.household).toMatchObject({ locale: 'en-GB', region: 'uk', measures: 'metric' });
    expect([...(kitchen?.places.keys() ?? [])]).toEqual([]);
  });

  it('says how to go on, with the folder it was told', async () => {
    const begun = await run('kitchens', 'begin', "Ruth's kitchen", '--owner', 'Ruth');
    for (const command of ['talk', 'serve', 'pair'])
      expect(begun, command).toMatch(new RegExp(`tellshelf ${command} .*--data ${data}`));
    expect(dataFlag('.data')).toBe('');
    expect(dataFlag("Ruth's store")).toBe(" --data 'Ruth'\\''s store'");
  });

  it('keeps kitchens of the same name apart', async () => {
    await run('kitchens', 'begin', 'Bíró Kata konyhája', '--time-zone', 'UTC');
    await run('kitchens', 'begin', 'Bíró Kata konyhája', '--time-zone', 'UTC');
    expect((await run('kitchens')).split('\n').map((line) => line.split('\t')[0])).toEqual([
      'biro-kata-konyhaja',
      'biro-kata-konyhaja-2',
      '',
    ]);
  });

  it('lets the owner pair a device of hers', async () => {
    const begun = await run('kitchens', 'begin', 'K', '--time-zone', 'UTC', '--owner', 'Ruth');
    const person = /--person (\S+)/.exec(begun)?.[1] ?? '';
    expect(await run('pair', '--name', 'phone', '--scope', 'own', '--person', person)).toMatch(/^tsf_/);
    expect(await run('devices')).toMatch(/\tphone\town\t/);
  });

  it('refuses zones, locales and names that are none, and writes nothing', async () => {
    expect(await run('kitchens', 'begin', 'K', '--time-zone', 'Mars/One')).toMatch(/no time zone known/);
    expect(await run('kitchens', 'begin', 'K', '--locale', 'en_GB!')).toMatch(/is no locale/);
    expect(await run('kitchens', 'begin', '  ')).toMatch(/needs a name/);
    expect(await run('kitchens')).toBe('');
  });

  it('deletes one only when told that it is meant', async () => {
    await run('kitchens', 'begin', 'K', '--time-zone', 'UTC');
    expect(await run('kitchens', 'delete', 'k')).toMatch(/would delete K for good.*--yes/);
    expect(await run('kitchens')).not.toBe('');
    expect(await run('kitchens', 'delete', 'k', '--yes')).toBe('K is deleted.\n');
    expect(await run('kitchens')).toBe('');
    expect(await run('kitchens', 'delete', 'k', '--yes')).toMatch(/no kitchen "k"/);
  });
});

describe('a new household', () => {
  const given = { id: 'h', name: 'H', timeZone: 'UTC' };
  it.each([
    ['en-US', 'us', 'us'],
    ['en', 'us', 'us'],
    ['en-GB', 'uk', 'metric'],
    ['en-IE', 'uk', 'metric'],
    ['es-MX', 'us', 'metric'],
  ] as const)('of %s starts with guidance of the %s and %s measures', (locale, region, measures) => {
    expect(newHousehold({ ...given, locale })).toMatchObject({ region, measures });
  });
});
