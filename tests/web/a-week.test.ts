/**
 * A week through the pages alone, by the people who live with them: the cook by keyboard and screen reader, her
 * aunt who sees little, a teenager with a phone, and whoever runs it. Nothing is done but what each would do:
 * press, type, and hear or read what comes.
 */
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { THURSDAY } from '../support/service.js';
import { expectNoBarriers, openBrowser, openSite, soon, type Site } from './browser.js';

let browser: Browser;
let site: Site;
let runner: Page;
const contexts: BrowserContext[] = [];

const someone = async (how: Parameters<Browser['newContext']>[0]): Promise<Page> => {
  const context = await browser.newContext(how);
  context.setDefaultTimeout(60_000);
  contexts.push(context);
  const page = await context.newPage();
  await page.clock.install({ time: new Date(THURSDAY) });
  return page;
};

/** Everything the page's live regions said, in order, as a screen reader is told of it. */
const listen = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const log: string[] = [];
    (window as unknown as { said: string[] }).said = log;
    const live = '[role="status"],[role="alert"],[aria-live]';
    new MutationObserver((changes) => {
      const regions = new Set<Element>();
      for (const { target } of changes) {
        const region = (target instanceof Element ? target : target.parentElement)?.closest(live);
        if (region) regions.add(region);
      }
      for (const region of regions) {
        const text = (region.textContent ?? '').replace(/\s+/g, ' ').trim();
        if (text !== '' && log.at(-1) !== text) log.push(text);
      }
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
};
const said = (page: Page): Promise<string[]> =>
  page.evaluate(() => (window as unknown as { said: string[] }).said);

/** Comes to a control by keyboard and presses it, as somebody does who has no pointer. */
const press = async (page: Page, role: 'button' | 'radio' | 'link', name: string | RegExp): Promise<void> => {
  const control = page.getByRole(role, typeof name === 'string' ? { name, exact: true } : { name }).first();
  await control.focus();
  expect(await control.evaluate((element) => element === document.activeElement), String(name)).toBe(true);
  await page.keyboard.press(role === 'radio' ? 'Space' : 'Enter');
};
const ask = async (page: Page, words: string): Promise<string> => {
  const before = await page.locator('.transcript li.kitchen').count();
  await page.getByLabel('Or type it').focus();
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
  const answer = page.locator('.transcript li.kitchen').nth(before);
  await answer.waitFor({ state: 'attached' });
  return ((await answer.textContent()) ?? '').replace(/^Kitchen:\s*/, '');
};

const kitchen = async () => (await site.service.households.look('marta')).kitchen;
const living = async (name: string) =>
  [...(await kitchen()).items.values()].filter((item) => item.name === name && item.gone === null);

/** An invitation made on the runner's page; its link, as it is sent. */
const invite = async (name: string, role: 'speak' | 'help'): Promise<string> => {
  await runner.getByLabel(/^What to call their device/).fill(name);
  await runner.locator('#invite-role').selectOption(role);
  await runner.getByRole('button', { name: 'Make an invitation' }).click();
  await runner.getByText(new RegExp(`^The invitation for ${name} is ready`)).waitFor();
  await runner.getByRole('button', { name: 'Copy the link' }).click();
  await runner.getByText('The link is copied.').waitFor();
  return runner.evaluate(() => navigator.clipboard.readText());
};

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
  runner = await someone({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  await runner.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: site.address });
  await runner.goto(`${site.address}/home`);
  await runner.getByLabel(/^Key of a device/).fill(site.service.tokens.own);
  await runner.getByRole('button', { name: 'Go in' }).click();
  await runner.getByRole('heading', { name: 'People', exact: true }).waitFor();
});
afterAll(async () => {
  for (const context of contexts) await context.close();
  await browser.close();
  await site.service.close();
});

describe('whoever runs it', () => {
  it('sets the house up: a person, the microwave, a place, a copy of everything', async () => {
    await runner.getByText('Add somebody').click();
    const form = runner.getByRole('group', { name: 'Somebody new' });
    await form.getByLabel('Name').fill('Ola');
    await form.getByLabel(/^sesame/i).check();
    await form.getByRole('button', { name: 'Add' }).click();
    await runner.getByText('Ola is added.').waitFor();
    await runner.getByLabel(/^Power of the microwave/).fill('900');
    await runner.getByRole('button', { name: 'Save the settings' }).click();
    await runner.getByText('The settings are saved.').waitFor();
    await runner.getByText('Add a place').click();
    await runner.getByLabel(/^What it is called/).fill('porch box');
    await runner.getByLabel('What it is', { exact: true }).selectOption('basket');
    await runner.getByRole('button', { name: 'Add the place' }).click();
    await runner.getByText('porch box is a place now.').waitFor();
    await runner.getByText('Add a marker').click();
    const marker = runner.locator('details.card[open]', { hasText: /^Add a marker/ });
    await marker.getByLabel('What it is').selectOption('charm');
    await marker.getByLabel('What it feels like').selectOption('wooden');
    await marker.getByRole('button', { name: 'Add the marker' }).click();
    await runner.getByText('The marker is in the spare box.').waitFor();
    const [download] = await Promise.all([
      runner.waitForEvent('download'),
      runner.getByRole('button', { name: /^Take everything along/ }).click(),
    ]);
    const copy = readFileSync(await download.path(), 'utf8');
    for (const word of ['Ola', 'porch box']) expect(copy).toContain(word);
  });
});

describe('the cook, by keyboard and screen reader', () => {
  let page: Page;
  it('comes in by a link that was sent to her, and says who reads to her', async () => {
    page = await someone({ viewport: { width: 1024, height: 700 } });
    await listen(page);
    await page.goto(await invite('Marta’s computer', 'help'));
    await press(page, 'button', 'My screen reader');
    // The pressed button is gone: focus is on what came of it, and nowhere else.
    await soon(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(
      /^Your screen reader will read answers/,
    );
    await press(page, 'button', 'Come in');
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    // It is not asked again.
    expect(await page.getByText('Who should read answers to you?').count()).toBe(0);
  });

  it('hears each answer once, in the order she asked', async () => {
    const from = (await said(page)).length;
    const answers: string[] = [];
    for (const words of ['what should I use first', 'where is the hummus', 'can Ola eat the hummus']) {
      answers.push(await ask(page, words));
      await soon(async () => (await said(page)).at(-1)).toBe(answers.at(-1));
    }
    const heard = (await said(page)).slice(from).filter((text) => answers.includes(text));
    expect(heard).toEqual(answers);
    // Of sesame nothing is recorded: it is never said to be absent.
    expect(answers[2]).not.toMatch(/\bsafe\b|does not contain|\bno sesame\b/i);
  });

  it('puts food away, hears it said back, and takes it back with one press', async () => {
    const told = await ask(page, 'put three tubs of barley broth in the chest freezer');
    expect(told).toMatch(/barley broth/i);
    expect((await living('barley broth')).length).toBeGreaterThan(0);
    await press(page, 'button', 'Undo');
    await soon(async () => (await living('barley broth')).length).toBe(0);
    await soon(async () => (await said(page)).at(-1)).toMatch(/barley broth/i);
  });

  it('follows steps by buttons', async () => {
    const first = await ask(page, 'how do I reheat the peanut stew');
    await soon(() => page.getByRole('button', { name: 'Next step' }).count()).toBe(1);
    await press(page, 'button', 'Next step');
    await soon(async () => (await said(page)).at(-1) !== first).toBe(true);
    await ask(page, 'never mind');
  });

  it('stops a ringing timer from where she is, with Escape', async () => {
    await ask(page, 'set a rice timer for one minute');
    const due = '2026-05-14T23:01:05.000Z';
    site.service.setNow(due);
    await page.clock.fastForward(65_000);
    await page.getByRole('button', { name: 'Stop the ringing' }).first().waitFor();
    expect((await said(page)).some((text) => /rice/i.test(text))).toBe(true);
    await page.keyboard.press('Escape');
    await soon(() => page.getByRole('button', { name: 'Stop the ringing' }).count()).toBe(0);
    await soon(async () =>
      [...(await kitchen()).reminders.values()].every(
        ({ label, deliveredAt }) => label !== 'rice' || deliveredAt !== null,
      ),
    ).toBe(true);
    await expectNoBarriers(page, 'the cook’s page after it all');
  });
});

describe('her aunt, who sees little, on a phone with large text', () => {
  let page: Page;
  const inSight = async (text: string | RegExp): Promise<void> => {
    const box = await page.getByText(text).first().boundingBox();
    expect(box, String(text)).not.toBeNull();
    expect(box?.y ?? -1).toBeGreaterThanOrEqual(0);
    expect(box?.y ?? 9_999).toBeLessThan(844);
  };
  it('comes in and reads the answer without looking for it, twice as large, on a dark page', async () => {
    page = await someone({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
    await page.goto(await invite('Auntie’s phone', 'speak'));
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    await page.evaluate(() => (document.documentElement.style.fontSize = '225%'));
    const answer = await ask(page, 'where is the hummus');
    await inSight(answer);
    const size = await page
      .locator('#answer')
      .evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
    expect(size).toBeGreaterThanOrEqual(36);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
    await expectNoBarriers(page, 'her aunt’s page');
  });

  it('uses something up from its card, sees that it was done, and puts it on the list', async () => {
    await page.getByLabel('Find a food, a place, an allergen').fill('hummus');
    const card = page.getByRole('article', { name: 'hummus', exact: true }).first();
    await card.getByRole('button', { name: 'hummus', exact: true }).click();
    await card.getByRole('button', { name: 'To buy hummus' }).click();
    await card.getByText('hummus is on the list to buy.').waitFor();
    await card.getByRole('button', { name: 'Used up hummus' }).click();
    await page.getByText('hummus: used up.').waitFor();
    await inSight('hummus: used up.');
    // What stays in place at that size of text leaves room for the cards.
    const covered = await page.evaluate(() =>
      ['.said', '.ear']
        .map((name) => document.querySelector<HTMLElement>(name))
        .map((part) => (part && getComputedStyle(part).position === 'sticky' ? part.offsetHeight : 0))
        .reduce((sum, height) => sum + height, 0),
    );
    expect(covered).toBeLessThan(844 * 0.72);
    expect(await living('hummus')).toEqual([]);
  });

  it('is not shown what she may not do', async () => {
    await page.goto(`${site.address}/home`);
    await page.getByRole('heading', { name: 'People', exact: true }).waitFor();
    for (const name of ['Save the settings', 'Make an invitation', 'Let it in'])
      expect(await page.getByRole('button', { name }).count(), name).toBe(0);
  });
});

describe('a teenager with a phone', () => {
  let page: Page;
  it('puts twelve tubs away by thumb and keyboard, with the allergen', async () => {
    page = await someone({ viewport: { width: 360, height: 740 }, hasTouch: true });
    await page.goto(await invite('Dele’s phone', 'help'));
    await page.getByRole('button', { name: 'Come in' }).tap();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    await page.getByLabel('What is it').fill('split pea supper');
    await page.getByLabel('How many').first().fill('7');
    await page.getByLabel('Where').first().selectOption({ label: 'chest freezer' });
    await page.getByRole('button', { name: 'And in another place' }).tap();
    await page.getByLabel('How many in place 2').fill('5');
    await page.getByLabel('Where, place 2').selectOption({ label: 'upright freezer' });
    await page.getByText(/^More: allergens/).tap();
    await page.getByLabel('Contains (allergens)').fill('celery');
    await page.getByRole('button', { name: 'Put away' }).tap();
    await page.getByText(/^split pea supper is on the record/).waitFor();
    const made = await living('split pea supper');
    expect(made.map(({ amount }) => amount?.value).sort()).toEqual([5, 7]);
    expect(made.every(({ contains }) => contains.includes('celery'))).toBe(true);
  });

  it('goes on in the cellar, where there is no network, and finds it all done upstairs', async () => {
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await page.getByLabel('Find a food, a place, an allergen').fill('split pee');
    const card = page.getByRole('article', { name: 'split pea supper', exact: true }).first();
    await card.getByRole('button', { name: 'split pea supper', exact: true }).tap();
    await site.goAway();
    await page.getByText(/^No connection to the kitchen/).waitFor();
    await card.getByRole('button', { name: 'Took some split pea supper' }).tap();
    await card.getByRole('button', { name: 'Take', exact: true }).tap();
    await card.getByText(/^1 of split pea supper taken\. Kept here/).waitFor();
    await page.getByLabel('Or type it').fill('put crackers on the list');
    await page.getByRole('button', { name: 'Send' }).tap();
    await soon(() => page.locator('#answer').innerText()).toMatch(/kept here/);
    await site.comeBack();
    await soon(async () => {
      const amounts = (await living('split pea supper')).map(({ amount }) => amount?.value ?? 0);
      return amounts.reduce((sum, value) => sum + value, 0);
    }).toBe(11);
    await page.getByRole('button', { name: 'Take off crackers' }).waitFor();
  });

  it('mends a date, and the card says the new one', async () => {
    await page.getByLabel('Find a food, a place, an allergen').fill('sour cream');
    const card = page.getByRole('article', { name: 'sour cream', exact: true }).first();
    await card.getByRole('button', { name: 'sour cream', exact: true }).tap();
    await card.getByRole('button', { name: 'Dates and more sour cream' }).tap();
    const form = page.getByRole('dialog');
    await form.getByLabel('Use by').fill('2026-05-21');
    await form.getByRole('button', { name: 'Save' }).tap();
    await form.waitFor({ state: 'detached' });
    expect((await living('sour cream'))[0]?.dates.useBy).toBe('2026-05-21');
  });
});

describe('whoever runs it, on Sunday', () => {
  it('reads what was changed and by which hand, and sends a lost phone away', async () => {
    await runner.reload();
    await runner.getByRole('heading', { name: 'What was changed' }).waitFor();
    await runner
      .locator('.history')
      .getByText(/split pea supper/)
      .first()
      .waitFor();
    await runner.getByText(/^Auntie’s phone, talks/).click();
    const form = runner.locator('details', { hasText: /^Auntie’s phone/ });
    await form.getByRole('button', { name: 'Send it away' }).click();
    await form.getByRole('button', { name: 'Yes, send Auntie’s phone away' }).click();
    await soon(
      async () =>
        (await site.service.store.devices('marta')).find(({ name }) => name === 'Auntie’s phone')?.revokedAt,
    ).not.toBeNull();
    // The pressed button is gone; what came of it is said where it was, and focus is there.
    await soon(() => runner.evaluate(() => document.activeElement?.textContent)).toBe(
      'Auntie’s phone is sent away.',
    );
    const aunt = contexts[2]?.pages()[0];
    await aunt?.reload();
    await aunt?.getByRole('heading', { name: 'This page is no longer let in' }).waitFor();
  });
});
