#!/usr/bin/env node
// Runs the command line. In a checkout it is bundled from the sources once, and again whenever one changes, with its
// libraries and the pages: a bundle starts in a third of the time that loading some seven hundred files takes. A
// package carries its own. What the program makes of its data at its first start is kept beside (`src/prepared.ts`).
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, symlinkSync } from 'node:fs';
import module from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { checkoutCache, preparedFolder, stateOfSources, userCache } from './.cache-folder.mjs';

const home = dirname(fileURLToPath(import.meta.url));
const WEEK = 7 * 24 * 60 * 60 * 1000;

const dropOld = (cache, keep) => {
  for (const name of readdirSync(cache)) {
    const path = join(cache, name);
    if (name === 'node_modules' || path === keep) continue;
    if (Date.now() - statSync(path).mtimeMs > WEEK) rmSync(path, { recursive: true, force: true });
  }
};

/** Two lines for whoever may not write there: a service's own user, for instance, who has no home. */
const makeCache = (cache) => {
  try {
    mkdirSync(cache, { recursive: true });
  } catch (error) {
    process.stderr.write(
      `A checkout is bundled into a cache, and ${cache} cannot be made (${error.code}).\n` +
        `Name a folder with XDG_CACHE_HOME, or run what was built: "npm run build && npm prune --omit=dev" in ${home}.\n`,
    );
    process.exit(1);
  }
};

const bundle = async (cache, target) => {
  const { bundleSources } = await import('./.bundle.mjs');
  makeCache(cache);
  try {
    // From here the bundles find those of the checkout's libraries that are not inside.
    symlinkSync(join(home, 'node_modules'), join(cache, 'node_modules'), 'junction');
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  const making = `${target}.${process.pid}`;
  await bundleSources(making);
  try {
    renameSync(making, target);
  } catch (error) {
    // Another process was quicker.
    if (!existsSync(target)) throw error;
    rmSync(making, { recursive: true, force: true });
  }
  dropOld(cache, target);
};

/** The folder of the program's bundles. Says where the pages and what was prepared lie. */
const fromCheckout = async () => {
  const cache = checkoutCache();
  const state = stateOfSources();
  const folder = join(cache, state);
  if (!existsSync(folder)) await bundle(cache, folder);
  process.env.TELLSHELF_PAGES ??= join(folder, 'pages');
  process.env.TELLSHELF_PREPARED ??= preparedFolder(state);
  return folder;
};

const fromPackage = () => {
  const dist = join(home, 'dist');
  if (!existsSync(join(dist, 'program'))) {
    process.stderr.write(`The libraries are not installed: run "npm ci" in ${home}.\n`);
    process.exit(1);
  }
  process.env.TELLSHELF_PAGES ??= join(dist, 'pages');
  process.env.TELLSHELF_PREPARED ??= join(dist, 'prepared');
  return join(dist, 'program');
};

const isCheckout =
  existsSync(join(home, 'src', 'cli', 'main.ts')) && existsSync(join(home, 'node_modules', 'esbuild'));
const folder = isCheckout ? await fromCheckout() : fromPackage();
// Node 22 and later keep the compiled code too, in a folder of the user's.
module.enableCompileCache?.(join(userCache(), 'code'));
await import(pathToFileURL(join(folder, 'main.mjs')).href);
