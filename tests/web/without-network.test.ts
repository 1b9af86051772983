/** Saying and pressing while the kitchen is away, through loading the page again, until it is back. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bearer, say as sayByVoice, THURSDAY } from '../support/service.js';
import {
  answersOf,
  expectNoBarriers,
  letIn,
  openBrowser,
  openSite,
  say,
  soon,
  type Site,
} from './browser.js';
import { fakeSpeech, logOf } from './fake-speech.js';

let browser: Browser;
let site: Site;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
});
afterAll(async () => {
  await browser.close();
  await site.service.close();
});
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  context.setDefaultTimeout(60_000);
  page = await context.newPage();
  // The service's clock is held at this instant; the page's runs on from it.
  await page.clock.install({ time: new Date(THURSDAY) });
});
afterEach(async () => {
  await site.comeBack();
  await context.close();
});

/** Let in, with the pages themselves kept for when there is no network. */
const enter = async (): Promise<void> => {
  await letIn(page, site);
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  await page.reload();
  await page.getByRole('heading', { name: 'Tonight' }).waitFor();
  await soon(() => page.getByText(/^No connection/).count()).toBe(0);
};
const leave = async (): Promise<void> => {
  await site.goAway();
  await page.getByText(/^No connection to the kitchen/).waitFor();
};
const type = async (words: string): Promise<void> => {
  await page.getByLabel('Or type it').fill(words);
  await page.getByLabel('Or type it').press('Enter');
};
const kept = () => page.locator('section', { has: page.locator('#kept-here') });
const kitchen = async () => (await site.service.households.look('marta')).kitchen;
const living = async (name: string) =>
  [...(await kitchen()).items.values()].filter((item) => item.name === name && item.gone === null);
/** How often it was put on the list. */
const bought = async (name: string): Promise<number> => {
  const rows = await site.service.app.inject({
    url: '/v1/kitchen/journal',
    headers: bearer(site.service.tokens.own),
  });
  return rows.json<{ about: string[] }[]>().filter(({ about }) => about.some((one) => one.includes(name)))
    .length;
};

describe('without the kitchen', () => {
  it('what is said is kept, said to be kept, outlives the page, and is done once and answered when it is back', async () => {
    await enter();
    await leave();
    await type('put sesame crackers on the list');
    await soon(() => page.locator('#answer').innerText()).toMatch(/no connection.*kept here/i);
    await kept().getByText('“put sesame crackers on the list”').waitFor();
    await expectNoBarriers(page, 'something kept');
    await page.reload();
    await kept().getByText('“put sesame crackers on the list”').waitFor();
    await site.comeBack();
    await soon(() => kept().count()).toBe(0);
    await soon(() => page.locator('#answer').innerText()).toMatch(/sesame crackers/i);
    await page.getByRole('button', { name: 'Take off sesame crackers' }).waitFor();
    expect(await bought('sesame crackers')).toBe(1);
    // A page loaded once more sends nothing again.
    await page.reload();
    await page.getByRole('button', { name: 'Take off sesame crackers' }).waitFor();
    expect(await bought('sesame crackers')).toBe(1);
  });

  it('what is pressed is kept, outlives the page, and can be undone after it was sent', async () => {
    await enter();
    await page.getByLabel('Find a food, a place, an allergen').fill('hummus');
    const card = page.getByRole('article', { name: 'hummus', exact: true }).first();
    await card.getByRole('button', { name: 'hummus', exact: true }).click();
    await leave();
    await card.getByRole('button', { name: 'Used up hummus' }).click();
    await card.getByText('hummus: used up. Kept here; it is sent when the kitchen is reached.').waitFor();
    await card.getByText('Not sent yet: hummus: used up.').waitFor();
    await site.comeBack();
    await soon(async () => (await living('hummus')).length).toBe(0);
    await soon(() => page.locator('#answer').innerText()).toMatch(/A change from the cards is sent/);
    // The page was not loaded again: it knows which change it made, and takes it back.
    await page.getByLabel('Find a food, a place, an allergen').fill('');
    await leave();
    await page.getByLabel('Put on the list').fill('caraway bread');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByText(/^caraway bread is on the list\. Kept here/).waitFor();
    await page.reload();
    await kept()
      .getByText(/^caraway bread is on the list/)
      .waitFor();
    await site.comeBack();
    await page.getByRole('button', { name: 'Take off caraway bread' }).waitFor();
    expect(await bought('caraway bread')).toBe(1);
    await say(page, 'undo');
    await soon(() => page.getByRole('button', { name: 'Take off caraway bread' }).count()).toBe(0);
  });

  it('what the kitchen cannot take any more stands there with the reason, until it is forgotten', async () => {
    await enter();
    await page.getByLabel('Find a food, a place, an allergen').fill('sour cream');
    const card = page.getByRole('article', { name: 'sour cream', exact: true }).first();
    await card.getByRole('button', { name: 'sour cream', exact: true }).click();
    await leave();
    await card.getByRole('button', { name: 'Used up sour cream' }).click();
    await card.getByText('Not sent yet: sour cream: used up.').waitFor();
    // Somebody else used it up meanwhile.
    const [item] = await living('sour cream');
    const other = await site.service.app.inject({
      method: 'POST',
      url: `/v1/kitchen/items/${item?.id ?? ''}/finish`,
      headers: bearer(site.service.tokens.help),
      payload: { how: 'used' },
    });
    expect(other.statusCode).toBe(200);
    await site.comeBack();
    await kept()
      .getByText(/The kitchen did not take it/)
      .waitFor();
    await expectNoBarriers(page, 'something refused');
    await kept().getByRole('button', { name: 'Try it again sour cream: used up.' }).click();
    await kept()
      .getByText(/The kitchen did not take it/)
      .waitFor();
    await kept().getByRole('button', { name: 'Forget it sour cream: used up.' }).click();
    await soon(() => kept().count()).toBe(0);
  });

  it('what was said on another day is asked about, never sent by itself', async () => {
    await enter();
    await leave();
    await type('put fennel tea on the list');
    await kept().getByText('“put fennel tea on the list”').waitFor();
    await page.evaluate(() => {
      for (const key of Object.keys(localStorage))
        if (key.startsWith('tellshelf.unsent.'))
          localStorage.setItem(
            key,
            (localStorage.getItem(key) ?? '').replace('"day":"2026-05-14"', '"day":"2026-05-13"'),
          );
    });
    await page.reload();
    await site.comeBack();
    await soon(() => page.locator('#answer').innerText()).toMatch(/One thing you said a while ago waits/);
    expect(await bought('fennel tea')).toBe(0);
    await kept().getByRole('button', { name: 'Send it put fennel tea on the list' }).click();
    await page.getByRole('button', { name: 'Take off fennel tea' }).waitFor();
    expect(await bought('fennel tea')).toBe(1);
  });

  it('Undo takes back what was kept last, without the kitchen', async () => {
    await enter();
    await leave();
    await type('put dill pickles on the list');
    await kept().getByText('“put dill pickles on the list”').waitFor();
    await page.getByLabel('About the answer').getByRole('button', { name: 'Undo' }).click();
    await soon(() => page.locator('#answer').innerText()).toBe(
      'Taken back, and not sent: put dill pickles on the list',
    );
    expect(await kept().count()).toBe(0);
    await site.comeBack();
    await soon(() => page.getByText(/^No connection/).count()).toBe(0);
    expect(await say(page, 'where are the eggs')).toMatch(/eggs/i);
    expect(await bought('dill pickles')).toBe(0);
  });

  it('signing out says first what would be forgotten', async () => {
    await enter();
    await leave();
    await type('put juniper on the list');
    await kept().getByText('“put juniper on the list”').waitFor();
    await site.comeBack();
    await page.route('**/v1/conversation', (route) => route.abort());
    await page.evaluate(() => {
      // As if it had never gone out.
      const key = Object.keys(localStorage).find((one) => one.startsWith('tellshelf.unsent.'));
      if (key !== undefined) sessionStorage.setItem('kept', `${key}|${localStorage.getItem(key) ?? ''}`);
    });
    await page.goto(`${site.address}/home`);
    await page.evaluate(() => {
      const [key, ...rest] = (sessionStorage.getItem('kept') ?? '').split('|');
      if (key !== undefined) localStorage.setItem(key, rest.join('|'));
    });
    await page.reload();
    await page.getByRole('button', { name: 'Sign this page out' }).click();
    await page.getByText(/One thing is kept on the board of this page and not sent yet/).waitFor();
    await page.getByRole('button', { name: 'Sign out and forget what was not sent' }).click();
    await page.getByRole('heading', { name: 'This page is not let in yet' }).waitFor();
    expect(
      await page.evaluate(() =>
        Object.keys(localStorage).filter((key) => key.startsWith('tellshelf.unsent.')),
      ),
    ).toEqual([]);
  });
});

describe('a timer that comes due without the kitchen', () => {
  it('rings here, is stopped here, and does not ring again when the kitchen is back', async () => {
    await fakeSpeech(page, {});
    await enter();
    await sayByVoice(site.service, 'set a rice timer for two minutes');
    await page
      .getByText(/rice.*left/i)
      .first()
      .waitFor();
    await leave();
    await page.reload();
    await page.getByText(/^No connection to the kitchen/).waitFor();
    // Its timer is there again before its time comes, and what waits for the clock is let run until it rings.
    await page
      .getByText(/rice.*left/i)
      .first()
      .waitFor();
    await page.clock.fastForward(125_000);
    await soon(async () => {
      await page.clock.runFor(1000);
      return page.getByRole('button', { name: 'Stop the ringing' }).isVisible();
    }).toBe(true);
    await soon(async () => (await logOf(page)).some(({ text }) => /rice.*it is time/i.test(text ?? ''))).toBe(
      true,
    );
    await page.getByRole('button', { name: 'Stop the ringing' }).click();
    await page.getByRole('button', { name: 'Talk', exact: true }).waitFor();
    site.service.setNow('2026-05-14T23:02:10.000Z');
    await site.comeBack();
    await soon(() => page.getByText(/^No connection/).count()).toBe(0);
    // Heard here, it is heard everywhere: the kitchen no longer holds it open.
    await soon(async () => {
      const open = await site.service.app.inject({
        url: '/v1/kitchen/reminders',
        headers: bearer(site.service.tokens.speak),
      });
      return open.json<unknown[]>().length;
    }).toBe(0);
    expect(await page.getByRole('button', { name: 'Stop the ringing' }).count()).toBe(0);
    expect(await answersOf(page).count()).toBe(0);
    site.service.setNow(THURSDAY);
  });
});
