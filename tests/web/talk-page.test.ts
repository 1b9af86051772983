import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectNoBarriers, letIn, openBrowser, openSite, say, type Site } from './browser.js';

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
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
});
// A device may hold only so many sockets open at once.
afterEach(() => page.context().close());

describe('a page that is not paired', () => {
  it('refuses an unknown token in plain words, by its field', async () => {
    await page.goto(site.address);
    await page.getByLabel(/^Key/).fill('tsf_wrong');
    await page.getByRole('button', { name: 'Go in' }).click();
    await expect.poll(() => page.getByRole('alert').innerText()).toBe('That token is not known here.');
    await expectNoBarriers(page, 'gate');
  });

  it('opens by itself once an owner confirms its code', async () => {
    await page.goto(site.address);
    await page.getByRole('button', { name: 'Get a code' }).click();
    const code = await page.locator('.code').innerText();
    expect(code.replace(/\s/g, '')).toMatch(/^\d{8}$/);
    const confirmed = await site.service.app.inject({
      method: 'POST',
      url: '/v1/pairings/confirm',
      headers: { authorization: `Bearer ${site.service.tokens.own}` },
      payload: { code },
    });
    expect(confirmed.statusCode).toBe(201);
    await page.getByRole('heading', { name: 'Talk to your kitchen' }).waitFor({ timeout: 15_000 });
  });
});

describe('the talk page', () => {
  beforeEach(() => letIn(page, site));

  it('holds a conversation: put away, find, undo', async () => {
    expect(await say(page, 'put the barley soup on the second shelf of the fridge')).toMatch(/barley soup/i);
    expect(await say(page, 'where is the barley soup')).toMatch(/second shelf/);
    expect(await say(page, 'undo that')).toMatch(/barley soup/i);
    expect(await say(page, 'where is the barley soup')).toMatch(
      /no barley soup|don’t have|do not have|nothing/i,
    );
  });

  it('offers choices as buttons, and pressing one answers', async () => {
    await say(page, 'where is the sauerkraut');
    await say(page, 'throw away the spinach');
    const yes = page.getByRole('button', { name: 'Yes' });
    if ((await yes.count()) > 0) {
      const answers = page.locator('.transcript li.kitchen');
      const before = await answers.count();
      await yes.click();
      await answers.nth(before).waitFor();
      expect(await answers.nth(before).innerText()).toMatch(/spinach/i);
    }
    await say(page, 'undo');
  });

  it('reads steps with buttons for next, back and repeat', async () => {
    await say(page, 'how do I reheat the peanut stew');
    for (const name of ['Next', 'Repeat', 'Back'])
      await page
        .getByRole('button', { name: new RegExp(name, 'i') })
        .first()
        .waitFor();
    await expectNoBarriers(page, 'steps');
  });

  it('has no barriers, light, dark, in forced colours and at 400 % zoom', async () => {
    await say(page, 'what should I use first');
    await expectNoBarriers(page, 'light');
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectNoBarriers(page, 'dark');
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    await expectNoBarriers(page, 'forced colours');
    // WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels wide is 1,280 at 400 %.
    await page.setViewportSize({ width: 320, height: 256 });
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wider).toBeLessThanOrEqual(0);
    await expectNoBarriers(page, '400 %');
  });

  it('is walked by keyboard alone', async () => {
    const names: string[] = [];
    for (let presses = 0; presses < 14; presses++) {
      await page.keyboard.press('Tab');
      names.push(
        await page.evaluate(() => {
          const at = document.activeElement as HTMLElement | null;
          return (at?.getAttribute('aria-label') ?? at?.id ?? '')
            ? `${at?.id || at?.textContent?.trim()}`
            : (at?.textContent?.trim() ?? '');
        }),
      );
    }
    for (const name of ['Skip to the page', 'Talk', 'Kitchen', 'answer', 'Again', 'Undo', 'typed', 'Send'])
      expect(names).toContain(name);
    await page.getByLabel('Or type it').focus();
    await page.keyboard.type('what can I ask you');
    await page.keyboard.press('Enter');
    await page.locator('.transcript li.kitchen').first().waitFor();
  });

  it('gives answers to the screen reader where that was chosen, the same one twice too', async () => {
    await page.getByLabel('My screen reader').check();
    const region = page.locator('#announcement');
    expect(await region.getAttribute('role')).toBe('status');
    for (let times = 0; times < 2; times++) {
      const answer = await say(page, 'how old is the milk');
      await expect.poll(async () => (await region.innerText()).trim()).toBe(answer.trim());
    }
  });

  it('shows the newest answer on the screen, after many', async () => {
    for (let times = 0; times < 4; times++) await say(page, 'what should I use first');
    const answer = await say(page, 'where are the eggs');
    expect(await page.locator('#answer').innerText()).toBe(answer);
    const box = await page.locator('#answer').boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + 24).toBeLessThan(844);
  });

  it('speaks without sight: every cue has words', async () => {
    const mute = await page.evaluate(
      () =>
        [...document.querySelectorAll('button,a,input,select')].filter(
          (each) =>
            (each.textContent ?? '').trim() === '' &&
            each.getAttribute('aria-label') === null &&
            (each as HTMLInputElement).labels?.length === 0,
        ).length,
    );
    expect(mute).toBe(0);
  });

  it('says that the connection is lost, and takes up what was said when it is back', async () => {
    await page.getByText('Connected.').waitFor();
    await page.evaluate(() => {
      const Own = window.WebSocket;
      // The next connections fail until the switch is thrown back.
      (window as unknown as { back: () => void }).back = () => (window.WebSocket = Own);
      window.WebSocket = class {
        readyState = 3;
        addEventListener(type: string, hear: () => void) {
          if (type === 'close') setTimeout(hear, 50);
        }
        close() {}
        send() {}
      } as unknown as typeof WebSocket;
    });
    site.cut();
    await page.getByText('The connection was lost. Trying again.').first().waitFor({ timeout: 10_000 });
    await page.getByLabel('Or type it').fill('where are the eggs');
    await page.getByLabel('Or type it').press('Enter');
    await page.evaluate(() => (window as unknown as { back: () => void }).back());
    await page.locator('.transcript li.kitchen').first().waitFor({ timeout: 20_000 });
    expect(await page.locator('.transcript li.kitchen').first().innerText()).toMatch(/eggs/i);
    await page.getByText('Connected.').waitFor();
  });

  it('opens with a thing in hand from a label’s code', async () => {
    const item = [...site.service.kitchen.items.values()].find((each) => each.name === 'hummus');
    await page.goto(`${site.address}/this/item/${item?.id ?? ''}`);
    const answer = page.locator('.transcript li.kitchen').first();
    await answer.waitFor();
    expect(await answer.innerText()).toMatch(/hummus/i);
  });

  it('can be installed: a manifest and a worker that keeps the pages', async () => {
    const manifest = await page.evaluate(
      async () =>
        (await fetch('/manifest.webmanifest')).json() as Promise<{ start_url: string; icons: unknown[] }>,
    );
    expect(manifest.start_url).toBe('/');
    expect(manifest.icons.length).toBeGreaterThan(0);
    const active = await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    expect(active).toMatch(/activat/);
  });
});
