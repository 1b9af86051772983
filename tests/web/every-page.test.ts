/**
 * Every page for every eye, at each role and with nothing in the kitchen: no barrier, nothing that runs out of a
 * narrow screen, and no word on a button or beside a box that large text cuts in two.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyKitchen } from '../../src/kitchen/index.js';
import { letIn as letDeviceIn, kitchenOf, THURSDAY } from '../support/service.js';
import { expectNoBarriers, letIn, openBrowser, openSite, soon, type Site } from './browser.js';

const PAGES = ['/', '/home', '/labels', '/charts', '/teach'] as const;

let browser: Browser;
let site: Site;
let emptyToken: string;
beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
  const { household } = kitchenOf('new');
  await site.service.store.createHousehold(emptyKitchen(household), THURSDAY);
  emptyToken = (await letDeviceIn(site.service.store, 'new', 'own')).token;
});
afterAll(async () => {
  await browser.close();
  await site.service.close();
});

/** On a small phone, let in; leaves with the page closed. */
const onPhone = async (work: (page: Page) => Promise<void>): Promise<void> => {
  const context = await browser.newContext({ viewport: { width: 320, height: 640 } });
  context.setDefaultTimeout(60_000);
  try {
    await work(await context.newPage());
  } finally {
    await context.close();
  }
};

const settled = async (page: Page): Promise<void> => {
  await page.getByRole('heading', { level: 1 }).waitFor({ state: 'attached' });
  await soon(() => page.getByText('One moment.', { exact: true }).count()).toBe(0);
};

const overWide = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

/**
 * Words that stand on two lines though they have no hyphen: large text broke them. Longer than eleven letters they
 * have no room at twice the size, whatever a page does.
 */
const brokenWords = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const broken: string[] = [];
    for (const element of document.querySelectorAll('button, label, legend, summary, nav a, h1, h2, h3')) {
      const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      for (let node = texts.nextNode(); node !== null; node = texts.nextNode())
        for (const word of (node.textContent ?? '').matchAll(/[\p{L}\p{N}]+/gu)) {
          const range = document.createRange();
          range.setStart(node, word.index);
          range.setEnd(node, word.index + word[0].length);
          const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
          if (lines.size > 1 && word[0].length <= 11) broken.push(word[0]);
        }
    }
    return [...new Set(broken)];
  });

describe('every page, on a small phone', () => {
  it.each(PAGES)('%s: light, dark, and with text twice as large', async (path) => {
    await onPhone(async (page) => {
      await letIn(page, site, path);
      await settled(page);
      await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)));
      expect(await overWide(page), 'at 320 pixels').toBeLessThanOrEqual(0);
      expect(await brokenWords(page), 'at 320 pixels').toEqual([]);
      await expectNoBarriers(page, `${path} light`);
      await page.emulateMedia({ colorScheme: 'dark' });
      await expectNoBarriers(page, `${path} dark`);
      await page.evaluate(() => (document.documentElement.style.fontSize = '225%'));
      expect(await overWide(page), 'text twice as large').toBeLessThanOrEqual(0);
      expect(await brokenWords(page), 'text twice as large').toEqual([]);
    });
  });

  it('the gate too, and a broken word would be found', async () => {
    await onPhone(async (page) => {
      await page.goto(site.address);
      await page.getByRole('button', { name: 'Go in' }).waitFor();
      await page.evaluate(() => (document.documentElement.style.fontSize = '225%'));
      expect(await overWide(page)).toBeLessThanOrEqual(0);
      expect(await brokenWords(page)).toEqual([]);
      await page.evaluate(() => (document.querySelector('h1')!.style.width = '2rem'));
      expect(await brokenWords(page)).not.toEqual([]);
    });
  });
});

describe('each role and each household', () => {
  it.each(['speak', 'help'] as const)('one who may %s meets no barrier on any page', async (scope) => {
    await onPhone(async (page) => {
      await letIn(page, site, '/', scope);
      for (const path of PAGES) {
        await page.goto(`${site.address}${path}`);
        await settled(page);
        expect(await page.locator('.notice:not(:empty)').allInnerTexts(), path).toEqual([]);
        expect(await overWide(page), path).toBeLessThanOrEqual(0);
        await expectNoBarriers(page, `${path} for ${scope}`);
      }
    });
  });

  it('an empty kitchen says so on every page, and how to begin', async () => {
    await onPhone(async (page) => {
      await page.goto(site.address);
      await page.getByLabel(/^Key of a device/).fill(emptyToken);
      await page.getByRole('button', { name: 'Go in' }).click();
      await page.getByRole('heading', { name: 'Tonight' }).waitFor();
      for (const path of PAGES) {
        await page.goto(`${site.address}${path}`);
        await settled(page);
        await expectNoBarriers(page, `${path}, empty`);
        // No chart of nothing, no list of nothing.
        expect(await page.locator('.bar').count(), path).toBe(0);
        expect(await page.locator('ul:empty, ol:empty, select:empty').count(), path).toBe(0);
      }
    });
  });
});
