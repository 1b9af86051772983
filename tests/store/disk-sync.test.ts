import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { createDiskSync } from '../../src/store/disk-sync.js';

const folder = mkdtempSync(join(tmpdir(), 'tellshelf-sync-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('bringing commits to the disk', () => {
  it('shares one sync among all who come while another is under way', async () => {
    const path = join(folder, 'a.db');
    writeFileSync(`${path}-wal`, 'log');
    const disk = createDiskSync(path);
    const first = disk.reached();
    const second = disk.reached();
    // The first may have begun before the second's commit, so it does not answer for it.
    expect(second).not.toBe(first);
    expect(disk.reached()).toBe(second);
    await Promise.all([first, second, disk.othersReached()]);
    await disk.close();
  });

  it('makes who changed nothing wait for those who did, and for nobody else', async () => {
    const path = join(folder, 'b.db');
    writeFileSync(`${path}-wal`, 'log');
    const disk = createDiskSync(path);
    const order: string[] = [];
    const change = disk.reached().then(() => order.push('change'));
    const question = disk.othersReached().then(() => order.push('question'));
    await Promise.all([change, question]);
    expect(order).toEqual(['change', 'question']);
    await disk.othersReached();
    await disk.close();
  });

  it('promises nothing more once the disk has failed', async () => {
    const path = join(folder, 'c.db');
    const disk = createDiskSync(path);
    await expect(disk.reached()).rejects.toMatchObject({ fault: 'not-known' });
    writeFileSync(`${path}-wal`, 'log');
    await expect(disk.reached()).rejects.toMatchObject({ fault: 'not-known' });
    await disk.close();
  });
});
