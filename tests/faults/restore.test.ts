/** `restore --replace` is all or nothing, killed at whatever moment. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { openSqliteStore } from '../../src/store/index.js';
import { kitchenOf, letIn, THURSDAY } from '../support/service.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-restore-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const ITEMS = 8_000;

const restore = (archive: string, data: string) =>
  spawn(process.execPath, [projectFile('.run.mjs'), 'restore', archive, '--replace', '--data', data], {
    cwd: projectFile(),
    env: { ...process.env, DATABASE_URL: '' },
    stdio: 'ignore',
  });

it('leaves the household as it was or as the archive has it', async () => {
  const file = join(folder, 'kitchen.sqlite');
  const archive = join(folder, 'archive.json');
  const store = openSqliteStore(file);
  await store.migrate();
  const kitchen = kitchenOf('marta');
  await store.createHousehold(kitchen, THURSDAY);
  const { device } = await letIn(store, 'marta', 'own');
  const revoked = await letIn(store, 'marta', 'help');
  const document = JSON.parse(JSON.stringify(await store.archiveHousehold('marta'))) as {
    records: { item: { id: string; markerId: string | null }[] };
  };
  const [first] = document.records.item;
  for (let n = 0; n < ITEMS; n += 1)
    document.records.item.push({ ...first!, id: `more.${n}`, markerId: null });
  writeFileSync(archive, JSON.stringify(document));
  // Sent away after the archive was made.
  await store.changeDevices('marta', {
    deeds: [{ kind: 'send-away', id: revoked.device.id }],
    by: null,
    at: THURSDAY,
  });
  await store.close();

  const sizes = new Set([kitchen.items.size, kitchen.items.size + ITEMS]);
  const started = performance.now();
  await once(restore(archive, folder), 'exit');
  const took = performance.now() - started;
  for (const share of [0.6, 0.75, 0.9]) {
    const killed = restore(archive, folder);
    await Promise.race([sleep(took * share), once(killed, 'exit')]);
    killed.kill('SIGKILL');
    if (killed.exitCode === null && killed.signalCode === null) await once(killed, 'exit');
    const there = openSqliteStore(file);
    await there.migrate();
    expect(sizes).toContain((await there.loadKitchen('marta'))?.items.size);
    const devices = await there.devices('marta');
    expect(devices.find(({ id }) => id === device.id)?.revokedAt).toBeNull();
    expect(devices.find(({ id }) => id === revoked.device.id)?.revokedAt).toBe(THURSDAY);
    await there.close();
  }
}, 300_000);
