/** A household that speaks Spanish: every page in it, what stays English marked as such. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bearer } from '../support/service.js';
import { expectNoBarriers, openBrowser, openSite, soon, type Site } from './browser.js';

let browser: Browser;
let site: Site;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  site = await openSite();
  const set = await site.service.app.inject({
    method: 'PATCH',
    url: '/v1/household',
    headers: bearer(site.service.tokens.own),
    payload: { locale: 'es-MX' },
  });
  expect(set.statusCode).toBe(200);
});
afterAll(async () => {
  await browser.close();
  await site.service.close();
});
beforeEach(async () => {
  // The browser itself speaks English: inside, the household decides.
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-US' });
  context.setDefaultTimeout(60_000);
  page = await context.newPage();
});
afterEach(() => context.close());

const enter = async (path: string): Promise<void> => {
  await page.goto(`${site.address}${path}`);
  await page.getByLabel(/^Key of a device/).fill(site.service.tokens.own);
  await page.getByRole('button', { name: 'Go in' }).click();
  await page.getByRole('navigation', { name: 'Páginas' }).waitFor();
};
const say = async (words: string): Promise<string> => {
  const answers = page.locator('.transcript li.kitchen');
  const before = await answers.count();
  await page.getByLabel('O escríbelo').fill(words);
  await page.getByLabel('O escríbelo').press('Enter');
  await answers.nth(before).waitFor({ state: 'attached' });
  return (await answers.nth(before).textContent()) ?? '';
};

describe('a household that speaks Spanish', () => {
  it.each([
    ['/', 'Esta noche', 'Tablero'],
    ['/home', 'Personas', 'Casa'],
    ['/labels', 'Etiquetas', 'Etiquetas'],
    ['/charts', 'Lo que se tiró', 'Cuentas'],
    ['/teach', 'Cómo fue', 'Lecciones'],
  ])('%s is in Spanish, says so, and has no barriers', async (path, heading, title) => {
    await enter(path);
    await page.getByRole('heading', { name: heading, exact: true }).waitFor();
    for (const fold of await page.locator('summary').all()) await fold.click();
    // The bar that stays at the bottom covers what runs under it, wherever one has scrolled to: looked at from the top.
    await page.evaluate(() => window.scrollTo(0, 0));
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es-MX');
    expect(await page.title()).toMatch(new RegExp(`^${title} —`));
    await expectNoBarriers(page, `${path} in Spanish`);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
    // No message was missing: its name would stand there.
    expect(await page.locator('body').innerText()).not.toMatch(
      /\b(?:talk|card|add|edit|home|deed|until|age)-\w+/,
    );
  });

  it('the board’s cards say amounts, allergens and days in Spanish, and are found by Spanish words', async () => {
    await enter('/');
    await page.getByLabel('Busca una comida, un lugar, un alérgeno').fill('cacahuate');
    const card = page.getByRole('article').filter({ hasText: 'peanut stew' }).last();
    await card
      .getByText(/Contiene .*cacahuate/i)
      .first()
      .waitFor();
    await card
      .getByText(/(?:hace|ayer|hoy|sin fecha)/i)
      .first()
      .waitFor();
    await page.getByLabel('Busca una comida, un lugar, un alérgeno').fill('hummus');
    const hummus = page.getByRole('article', { name: 'hummus', exact: true }).first();
    await hummus.getByRole('button', { name: 'hummus', exact: true }).click();
    await hummus.getByRole('button', { name: 'Se acabó hummus' }).click();
    await page.getByText('hummus: se acabó.').waitFor();
    await page.getByRole('button', { name: 'Deshacer', exact: true }).last().click();
    await page.getByText('Deshecho.').waitFor();
  });

  it('keeps the record’s own word for what is counted, written in Spanish', async () => {
    await enter('/');
    await page.getByLabel('Qué es').fill('caldo de pollo');
    await page.getByLabel('Cuántos').first().fill('3');
    await page.getByLabel('De qué').fill('porción');
    await page.getByRole('button', { name: 'Guardar', exact: true }).click();
    await page.getByText(/^caldo de pollo está en el registro/).waitFor();
    const made = [...(await site.service.households.look('marta')).kitchen.items.values()].find(
      ({ name }) => name === 'caldo de pollo',
    );
    expect(made?.amount).toEqual({ value: 3, unit: 'portion' });
    await page.getByLabel('Busca una comida, un lugar, un alérgeno').fill('caldo');
    await page
      .getByText(/3 porciones/)
      .first()
      .waitFor();
  });

  it('marks each answer with its own language', async () => {
    await enter('/');
    expect(await say('dónde están los huevos')).toMatch(/\p{L}/u);
    expect(await page.locator('#answer').getAttribute('lang')).toBe('es-MX');
    expect(await say('give me the nightly summary')).toMatch(/\p{L}/u);
    await soon(() => page.locator('#answer').getAttribute('lang')).toMatch(/^en/);
  });

  it('its buttons are heard in Spanish', async () => {
    await enter('/');
    await page.getByRole('button', { name: 'Más lento' }).click();
    await soon(() => page.locator('#answer').innerText()).toMatch(/más despacio/i);
  });

  it('says why something cannot be, in Spanish', async () => {
    await enter('/');
    const [item] = [...(await site.service.households.look('marta')).kitchen.items.values()].filter(
      ({ name, gone }) => name === 'sour cream' && gone === null,
    );
    const finish = () =>
      site.service.app.inject({
        method: 'POST',
        url: `/v1/kitchen/items/${item?.id ?? ''}/finish`,
        headers: bearer(site.service.tokens.help),
        payload: { how: 'used' },
      });
    expect((await finish()).statusCode).toBe(200);
    expect((await finish()).json<{ detail: string }>().detail).toMatch(/ya no está en el registro/);
  });

  it('a page that is not let in, and a wrong address, speak the browser’s language', async () => {
    const spanish = await browser.newContext({ locale: 'es-ES' });
    const other = await spanish.newPage();
    await other.goto(site.address);
    await other.getByRole('heading', { name: 'Esta página todavía no tiene permiso' }).waitFor();
    expect(await other.evaluate(() => document.documentElement.lang)).toMatch(/^es/);
    await expectNoBarriers(other, 'the gate in Spanish');
    await other.goto(`${site.address}/no-hay`);
    await other.getByRole('heading', { name: 'No hay ninguna página en esta dirección' }).waitFor();
    expect(await other.evaluate(() => document.documentElement.lang)).toBe('es');
    await spanish.close();
  });
});
