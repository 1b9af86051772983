/** Notices as they come to a browser: while no page is seen they are shown, once, and lead to the board. */
import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';
import webPush from 'web-push';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { expectNoBarriers, letIn, openBrowser, openSite, soon, type Site } from './browser.js';

let browser: Browser;
let site: Site;
let context: BrowserContext;
let page: Page;
let session: CDPSession;
/** Of the page's service worker, as the browser numbers it. */
let registrationId: string;

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite({ NOTICE_PUBLIC_KEY: webPush.generateVAPIDKeys().publicKey });
});
afterAll(async () => {
  await browser.close();
  await site.service.close();
});
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  context.setDefaultTimeout(60_000);
  await context.grantPermissions(['notifications'], { origin: site.address });
  page = await context.newPage();
  session = await context.newCDPSession(page);
  const registered = new Promise<string>((resolve) => {
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const own = registrations.find(({ scopeURL }) => scopeURL.startsWith(site.address));
      if (own !== undefined) resolve(own.registrationId);
    });
  });
  await session.send('ServiceWorker.enable');
  await letIn(page, site);
  registrationId = await registered;
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
});
afterEach(() => context.close());

const push = (notice: object): Promise<unknown> =>
  session.send('ServiceWorker.deliverPushMessage', {
    origin: site.address,
    registrationId,
    data: JSON.stringify(notice),
  });
const shown = (): Promise<{ body: string; tag: string; silent: boolean | null }[]> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    return (await registration.getNotifications()).map(({ body, tag, silent }) => ({ body, tag, silent }));
  });
const rice = { id: 'timer.r1.1', kind: 'timer', text: 'The rice timer is done.', quiet: false };

describe('a notice', () => {
  it('is left to the page while one is seen', async () => {
    await push(rice);
    await page.waitForTimeout(1_000);
    expect(await shown()).toEqual([]);
  });

  it('is shown once while none is, and goes when the timer was stopped on a page', async () => {
    await page.goto('about:blank');
    await push(rice);
    await push(rice);
    await push({ ...rice, id: 'summary.1', kind: 'summary', text: 'Tonight: nothing.', quiet: true });
    await page.goto(`${site.address}/charts`);
    await soon(async () => (await shown()).length).toBe(2);
    expect((await shown()).sort((one, other) => other.tag.localeCompare(one.tag))).toEqual([
      { body: 'The rice timer is done.', tag: 'timer.r1.1', silent: false },
      { body: 'Tonight: nothing.', tag: 'summary.1', silent: true },
    ]);
  });
});

describe('the switch on the board', () => {
  const asked = () => site.service.store.noticeAddresses('marta');
  /** A stand-in for the push service that a browser without a network cannot reach. */
  const withPushService = (works: boolean): Promise<void> =>
    page.evaluate((fine) => {
      let now: unknown = null;
      PushManager.prototype.getSubscription = () => Promise.resolve(now as PushSubscription | null);
      PushManager.prototype.subscribe = (how) => {
        if (!fine) return Promise.reject(new DOMException('no push service', 'AbortError'));
        const key = new Uint8Array(
          (how?.applicationServerKey ?? new Uint8Array()) as Uint8Array<ArrayBuffer>,
        );
        if (key.length !== 65) return Promise.reject(new DOMException('no key', 'InvalidAccessError'));
        now = {
          toJSON: () => ({
            endpoint: 'https://push.kitchen.example/one',
            keys: { p256dh: 'B'.repeat(87), auth: 'a'.repeat(22) },
          }),
          unsubscribe: () => {
            now = null;
            return Promise.resolve(true);
          },
        };
        return Promise.resolve(now as PushSubscription);
      };
      Notification.requestPermission = () => Promise.resolve('granted');
    }, works);

  it('asks the browser, keeps the address, and gives it back', async () => {
    await withPushService(true);
    await page.getByText('While the page is closed, nothing rings on this device.').waitFor();
    await expectNoBarriers(page, 'notices off');
    await page.getByRole('button', { name: 'Ring here all the same' }).click();
    await page.getByText(/come to this device as notices/).waitFor();
    expect((await asked()).map(({ endpoint }) => endpoint)).toEqual(['https://push.kitchen.example/one']);
    await page.getByRole('button', { name: 'Do not ring here any more' }).click();
    await page.getByText('While the page is closed, nothing rings on this device.').waitFor();
    expect(await asked()).toEqual([]);
  });

  it('says so where the browser refuses, or reaches no push service', async () => {
    await withPushService(false);
    await page.getByRole('button', { name: 'Ring here all the same' }).click();
    await page.getByText(/this browser gave no address for notices/).waitFor();
    await page.evaluate(() => {
      Notification.requestPermission = () => Promise.resolve('denied');
    });
    await page.getByRole('button', { name: 'Ring here all the same' }).click();
    await page.getByText(/may not show notices for this address/).waitFor();
    expect(await asked()).toEqual([]);
  });
});

describe('a service without a key', () => {
  it('does not speak of notices', async () => {
    const bare = await openSite();
    await page.goto('about:blank');
    await letIn(page, bare);
    await page.getByRole('heading', { name: 'How answers are read' }).waitFor();
    expect(await page.getByRole('heading', { name: 'When this page is closed' }).count()).toBe(0);
    await page.goto('about:blank');
    await bare.service.close();
  });
});
