/** A real browser against a real service, for the pages' tests. */
import { existsSync } from 'node:fs';
import type { Socket } from 'node:net';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium, type Browser, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { startService, type Service } from '../support/service.js';

const program = '/usr/bin/chromium';

export const openBrowser = async (): Promise<Browser> => {
  if (!existsSync(program)) throw new Error('Chromium is not installed (Debian: chromium).');
  return chromium.launch({
    executablePath: program,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
};

export interface Site {
  readonly service: Service;
  readonly address: string;
  /** Cuts every connection, as a network that fails does. */
  cut(): void;
}

export const openSite = async (): Promise<Site> => {
  const service = await startService();
  const sockets = new Set<Socket>();
  service.app.server.on('connection', (socket: Socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  return {
    service,
    address: await service.app.listen({ host: '127.0.0.1', port: 0 }),
    cut: () => {
      for (const socket of sockets) socket.destroy();
    },
  };
};

/** A page let in with an owner's token. */
export const letIn = async (page: Page, site: Site, path = '/'): Promise<void> => {
  await page.goto(`${site.address}${path}`);
  await page.getByLabel(/^Key of a device/).fill(site.service.tokens.own);
  await page.getByRole('button', { name: 'Go in' }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.getByRole('button', { name: 'Go in' }).waitFor({ state: 'detached' });
};

/** Types an utterance and gives what the kitchen answered. */
export const say = async (page: Page, words: string): Promise<string> => {
  const answers = page.locator('.transcript li.kitchen');
  const before = await answers.count();
  await page.getByLabel('Or type it').fill(words);
  await page.getByLabel('Or type it').press('Enter');
  await answers.nth(before).waitFor();
  return (await answers.nth(before).innerText()).replace(/^Kitchen:\s*/, '');
};

/** WCAG 2.2 A and AA, by axe-core's rules for them. */
export const expectNoBarriers = async (page: Page, state: string): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  const told = violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).join(' … ')}`,
  );
  expect(told, state).toEqual([]);
};
