/**
 * `npm run pictures`: the pictures of the README, taken anew: the board after a question, and a sheet of labels.
 * Needs chromium and poppler's pdftoppm. No test: what they show is tested elsewhere.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { projectFile } from '../../src/project-files.js';
import { bearer, startService } from '../support/service.js';

const folder = projectFile('deploy', 'pictures');
mkdirSync(folder, { recursive: true });
const service = await startService({ PUBLIC_URL: 'https://kitchen.example' });
const address = await service.app.listen({ host: '127.0.0.1', port: 0 });

await service.app.inject({
  method: 'PATCH',
  url: '/v1/household',
  headers: bearer(service.tokens.own),
  payload: { name: 'Marta’s kitchen' },
});

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
const page = await browser.newPage({ viewport: { width: 960, height: 900 }, colorScheme: 'light' });
await page.goto(address);
await page.getByLabel(/^Key of a device/).fill(service.tokens.own);
await page.getByRole('button', { name: 'Go in' }).click();
await page.getByRole('button', { name: 'Go in' }).waitFor({ state: 'detached' });
await page.getByRole('button', { name: 'My screen reader' }).click();
await page.getByLabel('Or type it').fill('what should I use first');
await page.getByLabel('Or type it').press('Enter');
await page.locator('.transcript li.kitchen').first().waitFor({ state: 'attached' });
await page.evaluate(() => window.scrollTo(0, 0));
await page.screenshot({ path: join(folder, 'board.png') });
await browser.close();

const wanted = [
  'lentil stew',
  'egusi soup',
  'caraway sauerkraut',
  'jollof rice',
  'chicken stock',
  'plum chutney',
];
const items = [...service.kitchen.items.values()].filter(({ name }) => wanted.includes(name));
const made = await service.app.inject({
  method: 'POST',
  url: '/v1/labels',
  headers: bearer(service.tokens.own),
  payload: { kind: 'pdf', items: items.map(({ id }) => id), markers: [], grade: 2 },
});
const temporary = mkdtempSync(join(tmpdir(), 'labels-'));
writeFileSync(join(temporary, 'labels.pdf'), Buffer.from(made.json<{ file: string }>().file, 'base64'));
const args = [
  '-png',
  '-r',
  '70',
  '-f',
  '1',
  '-singlefile',
  join(temporary, 'labels.pdf'),
  join(folder, 'labels'),
];
if (spawnSync('pdftoppm', args, { stdio: 'inherit' }).status !== 0) process.exitCode = 1;
rmSync(temporary, { recursive: true });
await service.close();
