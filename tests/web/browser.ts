/** A real browser against a real service, for the pages' tests. */
import { existsSync } from 'node:fs';
import type { Socket } from 'node:net';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium, type Browser, type Page } from 'playwright-core';
import { expect, vi } from 'vitest';
import { startService, type Service } from '../support/service.js';

// A browser on a busy machine takes its time; nothing here judges how fast it is.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

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
  /** Cuts every connection and takes no new one, until it comes back at the same address. */
  goAway(): Promise<void>;
  comeBack(): Promise<void>;
}

export const openSite = async (settings: Record<string, string> = {}): Promise<Site> => {
  const service = await startService(settings);
  const sockets = new Set<Socket>();
  service.app.server.on('connection', (socket: Socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  const address = await service.app.listen({ host: '127.0.0.1', port: 0 });
  const { server } = service.app;
  const cut = (): void => {
    for (const socket of sockets) socket.destroy();
  };
  return {
    service,
    address,
    cut,
    goAway: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        cut();
      }),
    comeBack: async () => {
      if (server.listening) return;
      await new Promise<void>(
        (resolve) => void server.listen(Number(new URL(address).port), '127.0.0.1', resolve),
      );
    },
  };
};

/** A page let in with a device's key, an owner's where nothing else is said. */
export const letIn = async (
  page: Page,
  site: Site,
  path = '/',
  scope: keyof Service['tokens'] = 'own',
): Promise<void> => {
  await page.goto(`${site.address}${path}`);
  await page.getByLabel(/^Key of a device/).fill(site.service.tokens[scope]);
  await page.getByRole('button', { name: 'Go in' }).click();
  await page.getByRole('button', { name: 'Go in' }).waitFor({ state: 'detached' });
  await page.getByRole('heading', { level: 1 }).waitFor({ state: 'attached' });
};

/** What the kitchen said on this page so far: its transcript stands folded at the end. */
export const answersOf = (page: Page) => page.locator('.transcript li.kitchen');

/** Types an utterance and gives what the kitchen answered. */
export const say = async (page: Page, words: string): Promise<string> => {
  const answers = answersOf(page);
  const before = await answers.count();
  await page.getByLabel('Or type it').fill(words);
  await page.getByLabel('Or type it').press('Enter');
  await answers.nth(before).waitFor({ state: 'attached' });
  return ((await answers.nth(before).textContent()) ?? '').replace(/^Kitchen:\s*/, '');
};

/** Waits for what a page will show: as long as a busy machine takes. */
export const soon = <T>(get: () => T | Promise<T>) => expect.poll(get, { timeout: 30_000 });

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
