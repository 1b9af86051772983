/** The board as a person at it: talking by keyboard, using up, adding, finding, with and without a network. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bearer, say as sayByVoice } from '../support/service.js';
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
  context.setDefaultTimeout(120_000);
  page = await context.newPage();
});
// A device may hold only so many sockets open at once.
afterEach(() => context.close());

const overWide = (): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
const items = async () => [...(await site.service.households.look('marta')).kitchen.items.values()];
const living = async (name: string) =>
  (await items()).filter((item) => item.name === name && item.gone === null);
const find = async (words: string): Promise<void> => {
  await page.getByLabel('Find a food, a place, an allergen').fill(words);
};

describe('a page that is not let in', () => {
  it('refuses an unknown key in plain words, by its field', async () => {
    await page.goto(site.address);
    await page.getByLabel(/^Key/).fill('tsf_wrong');
    await page.getByRole('button', { name: 'Go in' }).click();
    await soon(() => page.locator('#token-error').innerText()).toBe('That key is not known here.');
    await expectNoBarriers(page, 'gate');
    expect(await overWide()).toBeLessThanOrEqual(0);
  });

  it('asks first who is to read answers, and remembers it', async () => {
    await page.goto(site.address);
    const question = page.getByRole('heading', { name: 'Who should read answers to you?' });
    await question.waitFor();
    const order = await page.getByRole('main').getByRole('heading').allInnerTexts();
    expect(order[1]).toBe('Who should read answers to you?');
    const controls = await page.getByRole('main').locator('button, input').allInnerTexts();
    expect(controls.slice(0, 2)).toEqual(['This page’s own voice', 'My screen reader']);
    await page.getByRole('button', { name: 'My screen reader' }).click();
    await soon(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(
      /^Your screen reader will read answers/,
    );
    await letIn(page, site);
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect(await question.count()).toBe(0);
    expect(await page.getByRole('radio', { name: 'My screen reader' }).isChecked()).toBe(true);
    await say(page, 'where is the milk');
    await soon(() => page.locator('#announcement').innerText()).toMatch(/milk/);
  });

  it('asks under a name of its own, says its code digit by digit, and opens once it is confirmed', async () => {
    await page.goto(site.address);
    await page.getByLabel(/^What to call this device/).fill('Ruth’s phone');
    await page.getByRole('button', { name: 'Get a code' }).click();
    const code = (await page.locator('.code').innerText()).replace(/\s/g, '');
    expect(code).toMatch(/^\d{8}$/);
    expect(await page.locator('.code').getAttribute('aria-label')).toMatch(/^(\d ){3}\d, (\d ){3}\d$/);
    const confirmed = await site.service.app.inject({
      method: 'POST',
      url: '/v1/pairings/confirm',
      headers: bearer(site.service.tokens.own),
      payload: { code },
    });
    expect(confirmed.json()).toMatchObject({ name: 'Ruth’s phone', scope: 'speak' });
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    // Let in to talk alone, it may see the kitchen and press what it may say.
    await find('hummus');
    await page.getByRole('button', { name: 'hummus', exact: true }).first().click();
    await page.getByRole('button', { name: 'Used up hummus' }).first().waitFor();
    expect(await page.getByRole('button', { name: 'Dates and more hummus' }).count()).toBe(0);
  });

  it('says what to do where a browser keeps no key over http', async () => {
    // What a cookie that was not kept comes to.
    await page.route('**/v1/me', (route) =>
      route.fulfill({
        status: 401,
        contentType: 'application/problem+json',
        body: JSON.stringify({ type: 'about:blank', title: 'No.', status: 401, code: 'not-identified' }),
      }),
    );
    await page.goto(site.address);
    await page.getByLabel(/^Key/).fill(site.service.tokens.own);
    await page.getByRole('button', { name: 'Go in' }).click();
    await soon(() => page.locator('#token-error').innerText()).toMatch(/key is right.*https/);
  });
});

describe('talking on the board', () => {
  beforeEach(() => letIn(page, site));

  it('holds a conversation: put away, find, undo', async () => {
    expect(await say(page, 'put the barley soup on the second shelf of the fridge')).toMatch(/barley soup/i);
    expect(await say(page, 'where is the barley soup')).toMatch(/second shelf/);
    expect(await say(page, 'undo that')).toMatch(/barley soup/i);
  });

  it('offers steps as buttons, and pressing one answers', async () => {
    await say(page, 'how do I reheat the peanut stew');
    for (const name of ['Next step', 'Repeat step', 'Step back'])
      await page.getByRole('button', { name }).waitFor();
    await expectNoBarriers(page, 'steps');
    const before = await answersOf(page).count();
    await page.getByRole('button', { name: 'Next step' }).click();
    await answersOf(page).nth(before).waitFor({ state: 'attached' });
    await say(page, 'never mind');
  });

  it('shows the newest answer on the screen, after many and wherever the page stands', async () => {
    for (let times = 0; times < 3; times++) await say(page, 'what should I use first');
    await page.evaluate(() => window.scrollTo(0, 2_000));
    const answer = await say(page, 'where are the eggs');
    expect(await page.locator('#answer').innerText()).toBe(answer);
    const box = await page.locator('#answer').boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + 24).toBeLessThan(844);
  });

  it('gives answers to the screen reader where that was chosen, the same one twice too', async () => {
    await page.getByRole('button', { name: 'My screen reader' }).click();
    const region = page.locator('#announcement');
    expect(await region.getAttribute('role')).toBe('status');
    for (let times = 0; times < 2; times++) {
      const answer = await say(page, 'how old is the milk');
      await soon(async () => (await region.innerText()).trim()).toBe(answer.trim());
    }
    await page.reload();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect(await page.getByRole('button', { name: 'My screen reader' }).count()).toBe(0);
    expect(await page.getByLabel('My screen reader').isChecked()).toBe(true);
  });

  it('opens with a thing in hand from a label’s code', async () => {
    const [hummus] = await living('hummus');
    await page.goto(`${site.address}/this/item/${hummus?.id ?? ''}`);
    await answersOf(page).first().waitFor({ state: 'attached' });
    expect(await answersOf(page).first().textContent()).toMatch(/hummus/i);
  });
});

describe('the cards', () => {
  beforeEach(() => letIn(page, site));

  it('say what is known, and are used up where they stand, said and undone', async () => {
    await find('hummus');
    const card = page.getByRole('article', { name: 'hummus', exact: true }).first();
    await card.getByRole('button', { name: 'hummus', exact: true }).click();
    await expectNoBarriers(page, 'an open card');
    await card.getByRole('button', { name: 'Used up hummus' }).click();
    await page.getByText('hummus: used up.').waitFor();
    expect(await living('hummus')).toEqual([]);
    // The pressed button is gone; focus stays where it was.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('hummus: used up.');
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await soon(async () => (await living('hummus')).length).toBe(1);
  });

  it('take some, move, and go on the list to buy', async () => {
    const [before] = await living('lentil stew');
    await find('lentil stew');
    const card = page.getByRole('article', { name: 'lentil stew', exact: true }).first();
    await card.getByRole('button', { name: 'lentil stew', exact: true }).click();
    await card.getByRole('button', { name: 'Took some lentil stew' }).click();
    await card.getByRole('button', { name: 'Take', exact: true }).click();
    await card.getByText('1 of lentil stew taken.').waitFor();
    const [after] = await living('lentil stew');
    expect(after?.amount?.value).toBe((before?.amount?.value ?? 0) - 1);
    await card.getByRole('button', { name: 'Move lentil stew' }).click();
    const place = [...(await site.service.households.look('marta')).kitchen.places.values()].find(
      ({ name }) => name === 'chest freezer',
    );
    await card.getByLabel('Where to').selectOption(place?.id ?? '');
    await card.getByRole('button', { name: 'Move', exact: true }).click();
    await card.getByText(/^lentil stew is now in/).waitFor();
    expect((await living('lentil stew'))[0]?.placeId).toBe(place?.id);
    await card.getByRole('button', { name: 'To buy lentil stew' }).click();
    await card.getByText('lentil stew is on the list to buy.').waitFor();
    await page.getByRole('button', { name: 'Take off lentil stew' }).waitFor();
  });

  it('correct dates in a dialogue; a refusal stands by the button that was pressed', async () => {
    await find('eggs');
    const card = page.getByRole('article', { name: 'eggs', exact: true }).first();
    await card.getByRole('button', { name: 'eggs', exact: true }).click();
    await card.getByRole('button', { name: 'Dates and more eggs' }).click();
    await expectNoBarriers(page, 'correcting');
    const form = page.getByRole('dialog');
    await form.getByLabel('Name').fill('');
    await form.getByRole('button', { name: 'Save' }).click();
    await soon(() => form.getByRole('alert').innerText()).toContain('Give the item a name.');
    const [alert, save] = await Promise.all([
      form.getByRole('alert').boundingBox(),
      form.getByRole('button', { name: 'Save' }).boundingBox(),
    ]);
    expect(Math.abs((alert?.y ?? 0) - (save?.y ?? 9_999))).toBeLessThan(200);
    await form.getByLabel('Name').fill('eggs');
    await form.getByLabel('Use by').fill('2026-05-20');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.waitFor({ state: 'detached' });
    await soon(async () => (await living('eggs'))[0]?.dates.useBy).toBe('2026-05-20');
    // What was looked for is still there.
    expect(await page.getByLabel('Find a food, a place, an allergen').inputValue()).toBe('eggs');
  });

  it('are found by sound, spelling, plural, place and allergen', async () => {
    for (const [words, name] of [
      ['hummous', 'hummus'],
      ['hummuses', 'hummus'],
      ['lentill stew', 'lentil stew'],
      ['peanuts', 'peanut stew'],
    ] as const) {
      await find(words);
      await page.getByRole('article', { name, exact: true }).first().waitFor();
    }
    await find('fridge door');
    await page.getByText(/\d found/).waitFor();
    await find('xylophone');
    await page.getByText('Nothing here fits that.').waitFor();
  });

  it('several at once', async () => {
    await page.getByRole('button', { name: 'Pick several' }).click();
    await find('rice');
    const boxes = page.locator('.pick input');
    await boxes.nth(0).check();
    await boxes.nth(1).check();
    const before = (await items()).filter(({ gone }) => gone === null).length;
    await page.locator('.several').getByRole('button', { name: 'Used up' }).click();
    await page.getByText(/: used up\.$/).waitFor();
    expect((await items()).filter(({ gone }) => gone === null).length).toBe(before - 2);
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await page.getByText('Undone.').waitFor();
    expect((await items()).filter(({ gone }) => gone === null).length).toBe(before);
  });

  it('a timer is ended from where it stands, said and undone', async () => {
    await sayByVoice(site.service, 'set a quinoa timer for fifty minutes');
    const end = page.getByRole('button', { name: /^End it quinoa/i });
    await end.waitFor();
    await expectNoBarriers(page, 'a timer');
    await end.click();
    await page.getByText(/^quinoa.* is ended\./i).waitFor();
    await soon(() => end.count()).toBe(0);
    // The pressed button is gone; focus is where it was.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/quinoa.* is ended/i);
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await end.click();
    await soon(() => end.count()).toBe(0);
  });

  it('one that stands still says so', async () => {
    await sayByVoice(site.service, 'set a barley timer for fifty minutes');
    await sayByVoice(site.service, 'pause the barley timer');
    await page.getByText('barley: paused with 50 min 0 s left').waitFor();
    await page.getByRole('button', { name: /^End it barley/i }).click();
  });

  it('follow what is said elsewhere', async () => {
    await sayByVoice(site.service, 'put olive oil on the list');
    await page.getByRole('button', { name: 'Take off olive oil' }).waitFor();
  });
});

describe('the list to buy', () => {
  beforeEach(() => letIn(page, site));
  const lines = () => page.getByRole('region', { name: 'List to buy' });

  it('takes how much, which kind, which shop and for whom, and shows them; its error stands by its field', async () => {
    const [who] = [...(await site.service.households.look('marta')).kitchen.people.values()];
    await page.getByLabel('Put on the list').fill('quince');
    await lines()
      .getByText(/^More: how much/)
      .click();
    await page.getByLabel('Amount to buy').fill('some');
    await page.getByLabel(/^Counted in/).fill('bag');
    await page.getByLabel(/^Which kind/).fill('dried');
    await page.getByLabel('Shop', { exact: true }).fill('corner shop');
    await page.getByLabel('For whom').selectOption(who?.id ?? '');
    await lines().getByRole('button', { name: 'Add' }).click();
    await soon(() => page.locator('#buy-error').innerText()).toContain('as a number');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('buy-count');
    await expectNoBarriers(page, 'the list, with an error');
    await page.getByLabel('Amount to buy').fill('2');
    await lines().getByRole('button', { name: 'Add' }).click();
    await lines().getByText(`quince, 2 bags, dried, from: corner shop, for ${who?.name}`).waitFor();
    expect(await page.getByLabel('Put on the list').inputValue()).toBe('');
    const { kitchen } = await site.service.households.look('marta');
    expect([...kitchen.purchases.values()].find(({ name }) => name === 'quince')).toMatchObject({
      amount: { value: 2, unit: 'bag' },
      note: 'dried',
      shop: 'corner shop',
      forPersonId: who?.id,
    });
  });

  it('shows what was told of a line by voice', async () => {
    await sayByVoice(site.service, 'put tinned pears from the fish market on the list');
    await lines().getByText('tinned pears, from: fish market').waitFor();
  });
});

describe('putting away', () => {
  beforeEach(() => letIn(page, site));

  it('twelve tubs over two freezers by the keyboard alone, and the form stays open for the next', async () => {
    await page.getByLabel('What is it').focus();
    await page.keyboard.type('bean chilli supper');
    await page.keyboard.press('Tab');
    await page.keyboard.type('8');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.type('chest freezer');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByLabel('How many in place 2').fill('4');
    await page.getByLabel('Where, place 2').focus();
    await page.keyboard.type('upright freezer');
    await page.getByRole('button', { name: 'Put away' }).press('Enter');
    await page
      .getByText(/^bean chilli supper is on the record: 8 in .*chest freezer.*; 4 in .*upright freezer/)
      .waitFor();
    const made = await living('bean chilli supper');
    expect(made.map(({ amount }) => amount)).toEqual([
      { value: 8, unit: 'tub' },
      { value: 4, unit: 'tub' },
    ]);
    // New food that goes into a freezer was frozen today.
    expect(made.every(({ dates }) => dates.made === '2026-05-14' && dates.frozen === '2026-05-14')).toBe(
      true,
    );
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('add-name');
    expect(await page.getByLabel('What is it').inputValue()).toBe('');
  });

  it('asks for a name by its field, and keeps what was written', async () => {
    await page.getByLabel('How many').first().fill('3');
    await page.getByRole('button', { name: 'Put away' }).click();
    await soon(() => page.locator('#add-error').innerText()).toContain('Write what it is');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('add-name');
    expect(await page.getByLabel('How many').first().inputValue()).toBe('3');
    await expectNoBarriers(page, 'adding, with an error');
  });

  it('records allergens, and takes the food off the list to buy', async () => {
    await sayByVoice(site.service, 'put tamarind paste on the list');
    await page.getByLabel('What is it').fill('tamarind paste');
    await page.getByText(/^More: allergens/).click();
    await page.getByLabel('Contains (allergens)').fill('mustard, celery');
    await page.getByRole('button', { name: 'Put away' }).click();
    await page.getByText(/^tamarind paste is on the record/).waitFor();
    expect((await living('tamarind paste'))[0]?.contains).toEqual(['mustard', 'celery']);
    await soon(() => page.getByRole('button', { name: 'Take off tamarind paste' }).count()).toBe(0);
  });
});

describe('the board for every eye and hand', () => {
  it('has no barriers and no sideways scroll, light, dark, forced colours, 320 pixels, 200 % text', async () => {
    await letIn(page, site);
    await say(page, 'what should I use first');
    await expectNoBarriers(page, 'light');
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectNoBarriers(page, 'dark');
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    await expectNoBarriers(page, 'forced colours');
    await page.emulateMedia({ forcedColors: 'none', colorScheme: 'light' });
    for (const fold of await page.locator('h3 .plain').all()) await fold.click();
    // WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels wide is 1,280 at 400 %.
    for (const height of [640, 256]) {
      await page.setViewportSize({ width: 320, height });
      expect(await overWide(), `320 by ${height}`).toBeLessThanOrEqual(0);
    }
    await expectNoBarriers(page, '400 %');
    await page.setViewportSize({ width: 390, height: 844 });
    await page.evaluate(() => (document.documentElement.style.fontSize = '225%'));
    expect(await overWide(), '200 % text').toBeLessThanOrEqual(0);
  });

  it('names every control, and the household in its title', async () => {
    await letIn(page, site);
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect(await page.title()).toContain(site.service.kitchen.household.name);
    const mute = await page.evaluate(
      () =>
        [...document.querySelectorAll('button,a,input,select,summary')].filter(
          (each) =>
            (each.textContent ?? '').trim() === '' &&
            each.getAttribute('aria-label') === null &&
            ((each as HTMLInputElement).labels?.length ?? 0) === 0,
        ).length,
    );
    expect(mute).toBe(0);
  });
});

describe('without a network, or sent away', () => {
  it('says that the connection is lost, and takes up what was said when it is back', async () => {
    await letIn(page, site);
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
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
    await page.getByText('No connection to the kitchen.').first().waitFor();
    await page.getByLabel('Or type it').fill('where are the eggs');
    await page.getByLabel('Or type it').press('Enter');
    await page.evaluate(() => (window as unknown as { back: () => void }).back());
    await answersOf(page).first().waitFor({ state: 'attached' });
    expect(await answersOf(page).first().textContent()).toMatch(/eggs/i);
  });

  it('opens from what it kept, with the time of it, and says that what is pressed is kept too', async () => {
    await letIn(page, site);
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    const active = await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    expect(active).toMatch(/activat/);
    await page.reload();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    await context.setOffline(true);
    await page.goto(`${site.address}/this/item/anything`);
    await page.getByText(/This is the record as of/).waitFor();
    await find('eggs');
    await page.getByRole('article', { name: 'eggs', exact: true }).first().waitFor();
    await page.getByRole('button', { name: 'eggs', exact: true }).first().click();
    await page.getByRole('button', { name: 'Used up eggs' }).first().click();
    await page
      .getByText('eggs: used up. Kept here; it is sent when the kitchen is reached.')
      .first()
      .waitFor();
    await page.getByText('Not sent yet: eggs: used up.').first().waitFor();
    expect((await living('eggs')).length).toBeGreaterThan(0);
    // Taken back before it was sent, it is never sent.
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await page.getByText('Undone.').waitFor();
    await context.setOffline(false);
    await page.reload();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect((await living('eggs')).length).toBeGreaterThan(0);
  });

  it('forgets what it showed when its device is sent away, and says so', async () => {
    const asked = await site.service.app.inject({
      method: 'POST',
      url: '/v1/pairings',
      payload: { name: 'lost phone' },
    });
    const { code, token } = asked.json<{ code: string; token: string }>();
    const { id } = (
      await site.service.app.inject({
        method: 'POST',
        url: '/v1/pairings/confirm',
        headers: bearer(site.service.tokens.own),
        payload: { code, scope: 'help' },
      })
    ).json<{ id: string }>();
    await page.goto(site.address);
    await page.getByLabel(/^Key/).fill(token);
    await page.getByRole('button', { name: 'Go in' }).click();
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    await site.service.app.inject({
      method: 'DELETE',
      url: `/v1/devices/${id}`,
      headers: bearer(site.service.tokens.own),
    });
    await page.getByRole('heading', { name: 'This page is no longer let in' }).waitFor();
    expect(await page.evaluate(() => localStorage.getItem('tellshelf.board'))).toBeNull();
    await expectNoBarriers(page, 'sent away');
  });
});

describe('addresses and installing', () => {
  it('a wrong address is a page that leads back; a program still gets a problem', async () => {
    await page.goto(`${site.address}/no-such-thing`);
    await page.getByRole('heading', { name: 'There is no page at this address' }).waitFor();
    await expectNoBarriers(page, 'lost');
    const problem = await site.service.app.inject({ url: '/no-such-thing' });
    expect(problem.json()).toMatchObject({ code: 'not-found' });
  });

  it('has a manifest whose icons are there', async () => {
    const manifest = (await site.service.app.inject({ url: '/manifest.webmanifest' })).json<{
      start_url: string;
      icons: { src: string }[];
    }>();
    expect(manifest.start_url).toBe('/');
    for (const { src } of manifest.icons)
      expect((await site.service.app.inject({ url: src })).statusCode, src).toBe(200);
  });
});

describe('five hundred foods', () => {
  it('stand folded by place, are found, and are not all on the page at once', async () => {
    const { kitchen } = await site.service.households.look('marta');
    const places = [...kitchen.places.keys()];
    for (let food = 0; food < 17; food++) {
      const made = await site.service.app.inject({
        method: 'POST',
        url: '/v1/kitchen/items',
        headers: bearer(site.service.tokens.speak),
        payload: {
          name: `soup number ${food}`,
          shares: Array.from({ length: 30 }, (_, at) => ({
            count: 1,
            placeId: places[(food + at) % places.length],
          })),
        },
      });
      expect(made.statusCode).toBe(200);
    }
    await letIn(page, site);
    await page.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect(await page.locator('button').count()).toBeLessThan(150);
    await find('soup number 7');
    await page.getByText(/30 found/).waitFor();
    expect(await page.locator('.cards article').count()).toBeLessThan(60);
    await find('soup');
    await page.getByText(/the first 40 are shown/).waitFor();
  });
});
