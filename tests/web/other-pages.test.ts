import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fromBraille } from '../../src/labels/index.js';
import { say as sayByVoice } from '../support/service.js';
import { expectNoBarriers, letIn, openBrowser, openSite, type Site } from './browser.js';

let browser: Browser;
let site: Site;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
}, 120_000);
afterAll(async () => {
  await browser.close();
  await site.service.close();
}, 120_000);
beforeEach(async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
});
// A device may hold only so many sockets open at once.
afterEach(() => page.context().close());

describe('the kitchen page', () => {
  beforeEach(async () => {
    await letIn(page, site, '/kitchen');
    await page.getByRole('heading', { name: 'Use first' }).waitFor();
  });

  it('shows places, what to use first, the list and the history without barriers', async () => {
    for (const name of ['Use first', 'List to buy', 'Places and what stands there', 'History'])
      await page.getByRole('heading', { name }).waitFor();
    await expectNoBarriers(page, 'kitchen');
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectNoBarriers(page, 'kitchen, dark');
  });

  it('changes an item, says so, and undoes it', async () => {
    await page.getByLabel('Find an item').fill('hummus');
    await page.getByRole('button', { name: 'Change hummus' }).first().click();
    await expectNoBarriers(page, 'edit form');
    await page.getByLabel('Name').fill('');
    await page.getByRole('button', { name: 'Save' }).click();
    await expect
      .poll(() => page.locator('form [role=alert]').first().innerText())
      .toContain('Give the item a name.');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('name');
    await expectNoBarriers(page, 'edit form with an error');
    await page.getByLabel('Name').fill('lemon hummus');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('lemon hummus is changed.').waitFor();
    await page.getByLabel('Find an item').fill('lemon');
    await page.getByRole('button', { name: 'Change lemon hummus' }).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByText('The last change is undone.').waitFor();
    await expect.poll(() => page.getByRole('button', { name: 'Change lemon hummus' }).count()).toBe(0);
  });

  it('keeps the list to buy', async () => {
    await page.getByRole('button', { name: 'Add' }).click();
    await expect.poll(() => page.locator('#buy-error').innerText()).toMatch(/Write what to buy/);
    await page.getByLabel('Put on the list').fill('tamarind');
    await page.getByRole('button', { name: 'Add' }).click();
    await page.getByRole('button', { name: 'Take off tamarind' }).click();
    await page.getByText('tamarind is off the list.').waitFor();
  });

  it('is told when somebody speaks', async () => {
    const reply = await sayByVoice(site.service, 'put olive oil on the list');
    expect(reply.changes.map(({ verb }) => verb)).toEqual(['put on the list']);
    await expect
      .poll(() => page.getByRole('listitem').filter({ hasText: 'olive oil' }).count(), { timeout: 10_000 })
      .toBeGreaterThan(0);
  });

  it('goes back to where it was after a form is left', async () => {
    await page.getByLabel('Find an item').fill('eggs');
    const button = page.getByRole('button', { name: 'Change eggs' }).first();
    const id = await button.getAttribute('id');
    await button.press('Enter');
    await page.getByRole('button', { name: 'Leave it as it was' }).press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe(id);
  });
});

describe('the labels page', () => {
  beforeEach(async () => {
    await letIn(page, site, '/labels');
    await page
      .getByLabel(/^hummus/)
      .first()
      .waitFor();
  });

  it('has no barriers, and asks for something to be picked', async () => {
    await page.getByRole('button', { name: /PDF/ }).click();
    await expect.poll(() => page.getByRole('alert').innerText()).toBe('Pick at least one item or marker.');
    await expectNoBarriers(page, 'labels');
  });

  it('makes a sheet whose text is text', async () => {
    await page
      .getByLabel(/^hummus/)
      .first()
      .check();
    await page.getByLabel('Sheet').selectOption('a4-2x4');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /PDF/ }).click(),
    ]);
    const text = execFileSync('pdftotext', ['-layout', await download.path(), '-'], { encoding: 'utf8' });
    expect(text).toContain('hummus');
  });

  it('makes a Braille file that reads back as the names', async () => {
    await page
      .getByLabel(/^hummus/)
      .first()
      .check();
    await page
      .getByLabel(/^sour cream/)
      .first()
      .check();
    await page.getByLabel('Braille').selectOption('1');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /BRF/ }).click(),
    ]);
    const brf = readFileSync(await download.path(), 'ascii');
    const cells = [...brf].map((char) => {
      const at = ' A1B\'K2L@CIF/MSP"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)='.indexOf(char);
      return at < 0 ? char : String.fromCodePoint(0x2800 + at);
    });
    const lines = cells
      .join('')
      .split('\r\n')
      .filter((line) => line !== '');
    const print = (await fromBraille(lines, 1)).join('\n');
    expect(print).toContain('hummus');
    expect(print).toContain('sour cream');
  });
});

describe('the plots page', () => {
  it('says each plot in a sentence and in a table, without barriers', async () => {
    await letIn(page, site, '/plots');
    await page.getByRole('heading', { name: 'How old things are' }).waitFor();
    expect(await page.getByRole('heading', { level: 2 }).count()).toBe(3);
    for (const summary of await page.getByText('As a table').all()) await summary.click();
    const counts = await page.locator('table').first().locator('tbody td').allInnerTexts();
    const living = [...site.service.kitchen.items.values()].filter((item) => item.gone === null).length;
    expect(counts.reduce((sum, count) => sum + Number(count), 0)).toBe(living);
    await expectNoBarriers(page, 'plots');
  });
});
