/** The page for a tablet on the wall in a real browser: no barriers, nothing too wide, with and without the dark. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { bearer } from '../support/service.js';
import { expectNoBarriers, openBrowser, openSite, type Site } from './browser.js';

let browser: Browser;
let site: Site;
beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
});
afterAll(async () => {
  await browser.close();
  await site.service.close();
});

it.each([
  ['light', 1280],
  ['dark', 320],
] as const)('has no barriers in the %s, %i points wide', async (colorScheme, width) => {
  const asked = await site.service.app.inject({
    url: '/v1/feeds',
    headers: bearer(site.service.tokens.speak),
  });
  const { pathname } = new URL(asked.json<{ wall: string }>().wall);
  const context = await browser.newContext({ colorScheme, viewport: { width, height: 800 } });
  const page = await context.newPage();
  await page.goto(`${site.address}${pathname}`);
  expect(await page.getByRole('heading', { level: 2 }).allInnerTexts()).toHaveLength(3);
  await expectNoBarriers(page, `wall, ${colorScheme}`);
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0);
  await context.close();
});
