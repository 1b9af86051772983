import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import jsQRModule from 'jsqr';
import { PNG } from 'pngjs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fromBraille } from '../../src/labels/index.js';
import { say } from '../support/service.js';
import { expectNoBarriers, letIn, openBrowser, openSite, soon, type Site } from './browser.js';

// The library is written for CommonJS.
const jsQR = jsQRModule as unknown as typeof jsQRModule.default;

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
  context.setDefaultTimeout(120_000);
  page = await context.newPage();
});
// A device may hold only so many sockets open at once.
afterEach(() => page.context().close());

describe('the home page', () => {
  beforeEach(async () => {
    await letIn(page, site, '/home');
    await page.getByRole('heading', { name: 'People', exact: true }).waitFor();
  });
  const kitchen = async () => (await site.service.households.look('marta')).kitchen;

  it('has no barriers and no sideways scroll', async () => {
    for (const fold of await page.locator('summary').all()) await fold.click();
    await expectNoBarriers(page, 'home');
    await page.setViewportSize({ width: 320, height: 640 });
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
  });

  it('adds somebody with an allergy, and changes it', async () => {
    await page.getByText('Add somebody').click();
    const form = page.getByRole('group', { name: 'Somebody new' });
    await form.getByLabel('Name').fill('Ingrid');
    await form.getByLabel('And, separated by commas').fill('kiwi');
    await form.getByLabel(/^peanut/i).check();
    await form.getByRole('button', { name: 'Add' }).click();
    await page.getByText('Ingrid is added.').waitFor();
    const ingrid = [...(await kitchen()).people.values()].find(({ name }) => name === 'Ingrid');
    expect(ingrid?.allergens).toHaveLength(2);
    expect(ingrid?.allergens).toContain('kiwi');
    await page.getByText(/^Ingrid; not/).click();
    const hers = page.getByRole('group', { name: 'Ingrid' });
    await hers.getByLabel(/^Stricter guidance/).check();
    await hers.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Ingrid is changed.').waitFor();
    expect((await kitchen()).people.get(ingrid?.id ?? '')).toMatchObject({
      atRisk: true,
      allergens: ingrid?.allergens,
    });
  });

  it('keeps when a guest comes and how their food is to be, and says it in the summary', async () => {
    await page.getByText('Add somebody').click();
    const form = page.getByRole('group', { name: 'Somebody new' });
    await form.getByLabel('Name').fill('Tove');
    await form.getByLabel(/^How their food is to be/).fill('cut up small, no bones');
    await form.getByLabel('A guest comes on').fill('2999-05-17');
    await form.getByRole('button', { name: 'Add' }).click();
    await page.getByText(/^Tove; food cut up small, no bones; comes on .*2999$/).click();
    const hers = page.getByRole('group', { name: 'Tove' });
    const tove = async () => [...(await kitchen()).people.values()].find(({ name }) => name === 'Tove');
    expect(await tove()).toMatchObject({ needs: ['cut up small', 'no bones'], comesOn: '2999-05-17' });
    await hers.getByLabel('A guest comes on').fill('');
    await hers.getByRole('button', { name: 'Save' }).click();
    await page.getByText(/^Tove; food cut up small, no bones$/).waitFor();
    expect(await tove()).not.toHaveProperty('comesOn');
  });

  it('brings in a list once each heading and row was shown, all of it or nothing', async () => {
    const bring = page.getByRole('region', { name: 'Bring in a list' });
    const choose = (name: string, text: string, code: BufferEncoding = 'utf8') =>
      bring
        .getByLabel(/^A list of food/)
        .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text, code) });
    const before = (await kitchen()).version;
    await choose(
      'list.csv',
      'Item,Colour,Location,Quantity,Expiry\nOat jalapeños,red,attic,2 bags,11/30/2026\n',
      'latin1',
    );
    await bring.getByText('Colour: left out').waitFor();
    await bring
      .getByText('Row 2: name: Oat jalapeños; place: attic; amount: 2; use by: 2026-11-30; unit: bag')
      .waitFor();
    await bring
      .getByRole('alert')
      .getByText(/^2, place: there is no place "attic"/)
      .waitFor();
    expect(await bring.getByRole('button', { name: 'Bring it all in' }).count()).toBe(0);
    await expectNoBarriers(page, 'a list with a fault');
    await bring.getByLabel('Make the places that are not there yet').check();
    await bring.getByText('One food would come in. New places: attic.').waitFor();
    expect((await kitchen()).version).toBe(before);
    await bring.getByRole('button', { name: 'Bring it all in' }).click();
    await bring.getByText('One food is on the record. “Undo” takes it back.').waitFor();
    const oats = [...(await kitchen()).items.values()].find(({ name }) => /jalapeños/i.test(name));
    expect(oats).toMatchObject({ amount: { value: 2, unit: 'bag' }, dates: { useBy: '2026-11-30' } });
    expect((await kitchen()).version).toBe(before + 1);
    await choose('list.csv', 'oats,2\n');
    await bring.getByText(/no heading says which column holds the names/).waitFor();
  });

  it('lets a device in as a helper, changes what it may do, and sends it away', async () => {
    const asked = await site.service.app.inject({
      method: 'POST',
      url: '/v1/pairings',
      payload: { name: 'kitchen tablet' },
    });
    const { code } = asked.json<{ code: string }>();
    await page.getByLabel('Its code, eight digits').fill(code);
    await page.getByRole('button', { name: 'Let it in' }).click();
    await page.getByText('It is let in.').waitFor();
    const tablet = async () =>
      (await site.service.store.devices('marta')).find(({ name }) => name === 'kitchen tablet');
    expect((await tablet())?.scope).toBe('help');
    await page.getByText(/^kitchen tablet, helper/).click();
    const form = page.locator('details', { hasText: /^kitchen tablet/ });
    await form.getByLabel('What it may do').selectOption('speak');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByText(/^kitchen tablet, talks/).waitFor();
    expect((await tablet())?.scope).toBe('speak');
    // It stays open, with what came of it by the button.
    await form.getByText('kitchen tablet is changed.').waitFor();
    await form.getByRole('button', { name: 'Send it away' }).click();
    expect((await tablet())?.revokedAt).toBeNull();
    await form.getByRole('button', { name: 'Yes, send kitchen tablet away' }).click();
    await soon(async () => (await tablet())?.revokedAt).not.toBeNull();
    await page.getByText('kitchen tablet is sent away.').waitFor();
  });

  it('invites a phone by a square code, which lets it in once, in its role', async () => {
    await page.getByRole('button', { name: 'Make an invitation' }).click();
    await soon(() => page.locator('#invite-error').innerText()).toMatch(/Write what to call/);
    await page.getByLabel(/^What to call their device/).fill('Ruth’s phone');
    await page.locator('#invite-role').selectOption('speak');
    await page.getByRole('button', { name: 'Make an invitation' }).click();
    await page.getByText(/^The invitation for Ruth’s phone is ready\. It works once/).waitFor();
    // Everything runs on one machine here: the page says that no phone can open this.
    await page.getByText(/works on no phone/).waitFor();
    await expectNoBarriers(page, 'an invitation');
    // What a camera makes of what is on the screen.
    const code = page.getByRole('img', { name: /^Square code of the invitation for Ruth’s phone/ });
    await code.scrollIntoViewIfNeeded();
    const shown = PNG.sync.read(await code.screenshot());
    const link = jsQR(new Uint8ClampedArray(shown.data), shown.width, shown.height)?.data ?? '';
    expect(link).toMatch(new RegExp(`^${site.address}/#join=`));
    await page.setViewportSize({ width: 320, height: 640 });
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);

    const phone = await browser.newContext({ viewport: { width: 390, height: 844 } });
    const hers = await phone.newPage();
    await hers.goto(link);
    await hers.getByRole('heading', { name: 'You are invited to Kitchen marta' }).waitFor();
    await hers.getByText(/^This device may then talk to the kitchen/).waitFor();
    await expectNoBarriers(hers, 'an invitation, opened');
    await hers.getByRole('button', { name: 'Come in' }).click();
    await hers.getByRole('heading', { name: 'Tonight' }).waitFor();
    expect(hers.url()).toBe(`${site.address}/`);
    expect(
      (await site.service.store.devices('marta')).find(({ name }) => name === 'Ruth’s phone')?.scope,
    ).toBe('speak');
    // Opened again where it was used, it is no news; on another device it lets nobody in.
    await hers.goto(link);
    await hers.reload();
    await hers.getByRole('heading', { name: 'Tonight' }).waitFor();
    await phone.close();
    const other = await browser.newContext();
    const theirs = await other.newPage();
    await theirs.goto(link);
    await theirs.getByRole('button', { name: 'Come in' }).click();
    await soon(() => theirs.getByRole('alert').innerText()).toMatch(/does not work any more/);
    await theirs.goto(`${site.address}/#join=broken`);
    await theirs.reload();
    await theirs.getByRole('heading', { name: /not whole/ }).waitFor();
    await other.close();
  });

  it('takes an invitation back', async () => {
    await page.getByLabel(/^What to call their device/).fill('tablet');
    await page.getByRole('button', { name: 'Make an invitation' }).click();
    const code = page.getByRole('img', { name: /^Square code of the invitation for tablet/ });
    await code.waitFor();
    await page.getByRole('button', { name: 'Take the invitation back' }).click();
    await page.getByText('The invitation is taken back. Nobody comes in with it.').waitFor();
    expect(await code.count()).toBe(0);
  });

  it('keeps settings, builds a place, and signs out', async () => {
    await page.getByLabel(/^Power of the microwave/).fill('850');
    await page.getByRole('button', { name: 'Save the settings' }).click();
    await soon(async () => (await kitchen()).household.microwaveWatts).toBe(850);
    await page.getByText('Add a place').click();
    await page.getByLabel(/^What it is called/).fill('cellar rack');
    await page.getByLabel('What it is', { exact: true }).selectOption('shelf');
    await page.getByRole('button', { name: 'Add the place' }).click();
    await page.getByText('cellar rack is a place now.').waitFor();
    expect([...(await kitchen()).places.values()].some(({ name }) => name === 'cellar rack')).toBe(true);
    await page.getByText(/only the machine itself can open/i).waitFor();
    await page.getByRole('button', { name: 'Sign this page out' }).click();
    await page.getByRole('heading', { name: 'This page is not let in yet' }).waitFor();
  });

  it('changes how a marker feels, and tells of one that feels the same before it is done', async () => {
    const markers = async () => [...(await kitchen()).markers.values()];
    const disc = (await markers()).find(({ touch }) => touch.fastening === 'disc')!;
    await page.getByText(/^All \d+ markers$/).click();
    await page.getByText(/^disc, cork, middle of the lid; on jollof rice/).click();
    const form = page.locator('details.card[open]', { hasText: /^disc, cork/ });
    await form.getByLabel('How many points to count on it').fill('2');
    await form.getByLabel('What is counted').selectOption('notch');
    await form.getByLabel('Where on the container').selectOption('');
    await form.getByLabel(/^How it is looked after/).fill('hand wash only');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByText('The marker is changed.').waitFor();
    const after = (await markers()).find(({ id }) => id === disc.id);
    expect(after).toMatchObject({
      touch: { texture: 'cork', fastening: 'disc', dots: 2, counted: 'notch' },
      care: 'hand wash only',
    });
    expect(after?.touch.spot).toBeUndefined();
    expect(await say(site.service, 'what is the cork disc on')).toMatchObject({
      speech: { text: expect.stringMatching(/jollof rice/i) as unknown },
    });

    await page.getByText('Add a marker').click();
    const fresh = page.locator('details.card[open]', { hasText: /^Add a marker/ });
    await fresh.getByRole('button', { name: 'Add the marker' }).click();
    await fresh.getByText('Choose something that a hand finds on it.').waitFor();
    await fresh.getByLabel('What it is').selectOption('bead');
    await fresh.getByLabel('What it feels like').selectOption('glass');
    await fresh.getByLabel('Where on the container').selectOption('neck');
    const before = (await markers()).length;
    await fresh.getByRole('button', { name: 'Add the marker' }).click();
    await fresh.getByText('You have a marker that feels the same.').waitFor();
    expect(await markers()).toHaveLength(before);
    await fresh.getByRole('button', { name: 'Keep it so nevertheless' }).click();
    await fresh.getByText('The marker is in the spare box.').waitFor();
    expect(await markers()).toHaveLength(before + 1);
    await expectNoBarriers(page, 'markers');
  });

  it('shows one who may only talk what there is, and no more', async () => {
    await page.context().clearCookies();
    await letIn(page, site, '/home', 'speak');
    await page.getByRole('heading', { name: 'People', exact: true }).waitFor();
    expect(await page.getByRole('heading', { name: 'Devices' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Save the settings' }).count()).toBe(0);
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
    await page.getByRole('button', { name: /sheet \(PDF\)/ }).click();
    await soon(() => page.getByRole('alert').innerText()).toBe('Pick at least one item or marker.');
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
      page.getByRole('button', { name: /sheet \(PDF\)/ }).click(),
    ]);
    const text = execFileSync('pdftotext', ['-layout', await download.path(), '-'], { encoding: 'utf8' });
    expect(text).toContain('hummus');
  });

  it('gives the key to the household’s touch, to print and to emboss', async () => {
    const get = async (name: RegExp): Promise<string> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name }).click(),
      ]);
      return download.path();
    };
    const text = execFileSync('pdftotext', ['-layout', await get(/key to print/), '-'], { encoding: 'utf8' });
    const { people, household } = (await site.service.households.look('marta')).kitchen;
    for (const { name, allergens } of people.values())
      if (allergens.length > 0) expect(text).toContain(`${name} must not have`);
    for (const meaning of Object.values(household.dotMeanings)) expect(text).toContain(meaning);
    await page.getByText('key.pdf is ready.').waitFor();
    const brf = readFileSync(await get(/key to emboss/), 'ascii');
    expect(brf.split('\r\n').length).toBeGreaterThan(10);
    expect(Math.max(...brf.split('\r\n').map((line) => line.length))).toBeLessThanOrEqual(40);
    await page.getByText(/^key\.brf is ready\./).waitFor();
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
      page.getByRole('button', { name: /file \(BRF\)/ }).click(),
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

describe('the charts page', () => {
  it('says each chart in a sentence, then each count on a line, without barriers', async () => {
    await letIn(page, site, '/charts');
    await page.getByRole('heading', { name: 'How old things are' }).waitFor();
    const lines = await page.getByRole('list', { name: 'How old things are' }).locator('li').allInnerTexts();
    const counts = lines.map((line) => Number(/(\d+)\s*$/.exec(line)?.[1] ?? Number.NaN));
    const living = [...(await site.service.households.look('marta')).kitchen.items.values()].filter(
      (item) => item.gone === null,
    ).length;
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(living);
    expect(counts.every((count) => count > 0)).toBe(true);
    await page.getByRole('heading', { name: 'What was thrown out' }).waitFor();
    await expectNoBarriers(page, 'charts');
  });
});

describe('the teacher’s page', () => {
  it('shows nothing of how it went before a yes said aloud, then each task, and gives a table', async () => {
    const hold = async (...said: readonly string[]): Promise<void> => {
      for (const text of said) await say(site.service, text);
    };
    await letIn(page, site, '/teach');
    await page.getByText(/^Nothing is shown until/).waitFor();
    await hold(
      'lesson one',
      'where is the butter',
      'skip this one',
      'skip this one',
      'hint',
      'where is the milk',
    );
    await page.getByRole('button', { name: 'Look again' }).click();
    await page.getByText(/^Nothing is shown until/).waitFor();
    await hold('yes');
    await page.getByRole('button', { name: 'Look again' }).click();
    const held = page.getByRole('region', { name: /^finding by touch/ });
    await held.waitFor();
    const tasks = await held.getByRole('listitem').allInnerTexts();
    expect(tasks.map((text) => /(Done alone|Done with a hint|Passed over)\.$/.exec(text)?.[1])).toEqual([
      'Done alone',
      'Passed over',
      'Passed over',
      'Done with a hint',
    ]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /table/ }).click(),
    ]);
    expect(
      readFileSync(await download.path(), 'utf8')
        .trim()
        .split('\n'),
    ).toHaveLength(5);
    for (const fold of await page.locator('summary').all()) await fold.click();
    await expectNoBarriers(page, 'teach');
    await hold('stop sharing my lessons');
    await page.getByRole('button', { name: /table/ }).click();
    await page.getByText(/^It was said aloud that nobody/).waitFor();
    expect(await held.count()).toBe(0);
  });
});
