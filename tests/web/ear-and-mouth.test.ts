/** Pressing, holding, scrolling and failing, in a real browser with a stand-in for its speech. */
import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { THURSDAY, say as sayOverHttp } from '../support/service.js';
import { answersOf, letIn, openBrowser, openSite, say, soon, type Site } from './browser.js';
import { fakeSpeech, logOf, readOut, type FakeSpeech, type Logged } from './fake-speech.js';

let browser: Browser;
let site: Site;
let context: BrowserContext;
let page: Page;
let touch: CDPSession;

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
}, 120_000);
afterAll(async () => {
  await browser.close();
  await site.service.close();
}, 120_000);
afterEach(() => context.close());

const open = async (fake: FakeSpeech = {}): Promise<void> => {
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  context.setDefaultTimeout(120_000);
  page = await context.newPage();
  await fakeSpeech(page, fake);
  await letIn(page, site);
  await page.locator('.talk').waitFor();
  touch = await context.newCDPSession(page);
};

const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', x = 0, y = 0): Promise<unknown> =>
  touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
const middleOf = async (selector: string): Promise<{ x: number; y: number }> => {
  const box = await page.locator(selector).boundingBox();
  if (box === null) throw new Error(`${selector} is not on the page`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};
const swipe = async (x: number, y: number, by: number): Promise<void> => {
  await finger('touchStart', x, y);
  for (let moved = 0; moved <= Math.abs(by); moved += 20) {
    await finger('touchMove', x, y + Math.sign(by) * moved);
    await page.waitForTimeout(10);
  }
  await finger('touchEnd');
};
const at = (log: readonly Logged[], what: Logged['what']): number =>
  log.findLast((entry) => entry.what === what)?.at ?? Number.NaN;
const count = async (what: Logged['what']): Promise<number> =>
  (await logOf(page)).filter((entry) => entry.what === what).length;
const answered = () => answersOf(page).first().waitFor({ state: 'attached' });

describe('the Talk button', () => {
  it('held by a finger listens while it is held, and sends what was heard', async () => {
    await open();
    const { x, y } = await middleOf('.talk');
    await finger('touchStart', x, y);
    await page.waitForTimeout(1_500);
    await finger('touchEnd');
    await answered();
    const log = await logOf(page);
    expect(at(log, 'ear-start')).toBeGreaterThan(at(log, 'down'));
    expect(at(log, 'ear-start')).toBeLessThan(at(log, 'up'));
    expect(at(log, 'ear-stop')).toBeGreaterThanOrEqual(at(log, 'up'));
    expect(await count('ear-start')).toBe(1);
    expect(await page.locator('.transcript li.you').first().textContent()).toContain('where are the eggs');
  });

  it('held by the space bar does the same', async () => {
    await open();
    await page.locator('.talk').focus();
    await page.keyboard.down('Space');
    await page.waitForTimeout(1_200);
    expect(await count('ear-start')).toBe(1);
    await page.keyboard.up('Space');
    await answered();
    expect(await count('ear-start')).toBe(1);
    expect(await count('ear-stop')).toBe(1);
  });

  it('pressed shortly listens until the next press, also as a screen reader presses', async () => {
    for (const press of [
      () => page.locator('.talk').tap(),
      () => page.locator('.talk').evaluate((button) => (button as HTMLButtonElement).click()),
    ]) {
      await open();
      await press();
      await page.getByRole('button', { name: /^Listening/ }).waitFor();
      await page.waitForTimeout(1_000);
      expect(await count('ear-stop')).toBe(0);
      await press();
      await answered();
      expect([await count('ear-start'), await count('ear-stop')]).toEqual([1, 1]);
      await context.close();
    }
    await open();
  });

  it('does not open the ear for a finger that is on its way', async () => {
    await open({ sentence: 60_000 });
    await say(page, 'what should I use first');
    await soon(() => count('speak')).toBeGreaterThan(0);
    const cancels = await count('cancel');
    // Without a pause between them, so that no busy machine makes a resting finger of it.
    await page.locator('.talk').evaluate((button) => {
      const { x, y } = button.getBoundingClientRect();
      const send = (type: string, moved: number): boolean =>
        button.dispatchEvent(
          new PointerEvent(type, {
            pointerId: 1,
            pointerType: 'touch',
            isPrimary: true,
            button: 0,
            bubbles: true,
            clientX: x + 20,
            clientY: y + 20 - moved,
          }),
        );
      button.setPointerCapture = () => undefined;
      send('pointerdown', 0);
      send('pointermove', 30);
      send('pointerup', 200);
      // The browser takes a finger over that scrolls.
      send('pointerdown', 0);
      send('pointercancel', 10);
    });
    await swipe(5, 500, -300);
    await page.waitForTimeout(600);
    expect(await count('ear-start')).toBe(0);
    expect(await count('cancel')).toBe(cancels);
  });

  it('is closed again, and nothing is sent, when a scroll takes the finger that talked', async () => {
    await open();
    const { x, y } = await middleOf('.talk');
    await swipe(x, y, -200);
    await page.getByRole('button', { name: 'Talk', exact: true }).waitFor();
    expect(await count('ear-abort')).toBe(await count('ear-start'));
    expect(await page.locator('.transcript li.you').count()).toBe(0);
  });

  it('a click on the margin or on words does nothing', async () => {
    await open();
    await page.mouse.click(3, 500);
    await page.locator('h2:not(.hidden)').first().click();
    await page.waitForTimeout(300);
    expect(await count('ear-start')).toBe(0);
  });

  it('hears once, though every event comes twice', async () => {
    await open({ twice: true });
    await page.locator('.talk').tap();
    await page.getByRole('button', { name: /^Listening/ }).waitFor();
    await page.locator('.talk').tap();
    await answered();
    await page.waitForTimeout(500);
    expect(await page.locator('.transcript li.you').count()).toBe(1);
  });

  it('says so when the recogniser never answers', async () => {
    await open({ hears: null });
    await page.locator('.talk').tap();
    await page.getByRole('button', { name: /^Listening/ }).waitFor();
    await page.locator('.talk').tap();
    await page.getByText('The microphone did not work.').waitFor({ timeout: 8_000 });
    await page.getByRole('button', { name: 'Talk', exact: true }).waitFor();
  });
});

describe('a voice that does not work', () => {
  it('leaves the answer to the screen reader within a second or so, and says so once', async () => {
    for (const voice of ['fails', 'none'] as const) {
      await open({ voice });
      const answer = await say(page, 'where are the eggs');
      await soon(() => readOut(page)).toContain(answer);
      await page.getByText('The voice of this browser does not work just now.').waitFor();
      const next = await say(page, 'how old is the milk');
      await soon(() => readOut(page)).toContain(next);
      expect(await page.getByText('The voice of this browser does not work just now.').count()).toBe(0);
      await context.close();
    }
    await open();
  });
});

describe('a timer', () => {
  const isOpen = async (): Promise<boolean> => {
    const { kitchen } = await site.service.households.look('marta');
    return [...kitchen.reminders.values()].some(
      ({ label, deliveredAt }) => label === 'rice' && deliveredAt === null,
    );
  };

  it('whose speech fails is not acknowledged; it rings until it is stopped', async () => {
    await open({ voice: 'fails' });
    await sayOverHttp(site.service, 'set a rice timer for ten minutes');
    site.service.setNow(new Date(Date.parse(THURSDAY) + 601_000).toISOString());
    const stop = page.getByRole('button', { name: 'Stop the ringing' });
    await stop.waitFor({ timeout: 15_000 });
    await soon(async () => (await readOut(page)).join(' ')).toMatch(/rice timer is done/i);
    await page.waitForTimeout(1_500);
    expect(await isOpen()).toBe(true);
    await stop.tap();
    await soon(isOpen).toBe(false);
    expect(await count('ear-start')).toBe(0);
  });

  it('stopped on one device stops on the other', async () => {
    await open();
    const other = await context.newPage();
    await other.goto(site.address);
    await sayOverHttp(site.service, 'set a rice timer for ten minutes');
    site.service.setNow(new Date(Date.parse(THURSDAY) + 1_300_000).toISOString());
    for (const each of [page, other])
      await each.getByRole('button', { name: 'Stop the ringing' }).waitFor({ timeout: 30_000 });
    await other.getByRole('button', { name: 'Stop the ringing' }).click();
    await page.getByRole('button', { name: 'Stop the ringing' }).waitFor({ state: 'detached' });
    expect(await isOpen()).toBe(false);
  });
});
