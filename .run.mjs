#!/usr/bin/env node
// Runs the command line. In a checkout it is bundled from the sources once, and again whenever one changes:
// a bundle starts in a third of the time that loading some three hundred files takes. A package carries its own.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { userCache } from './.cache-folder.mjs';

const home = dirname(fileURLToPath(import.meta.url));
const WEEK = 7 * 24 * 60 * 60 * 1000;

const short = (hash) => hash.digest('hex').slice(0, 16);
const cache = join(userCache(), short(createHash('sha256').update(home)));

/** Changes when any source does. */
const stateOfSources = () => {
  const hash = createHash('sha256');
  for (const folder of ['src', 'shared']) {
    for (const file of readdirSync(join(home, folder), { recursive: true, withFileTypes: true })) {
      if (!file.name.endsWith('.ts')) continue;
      const path = join(file.parentPath ?? file.path, file.name);
      const { mtimeMs, size } = statSync(path);
      hash.update(`${path} ${mtimeMs} ${size}\n`);
    }
  }
  return short(hash);
};

const dropOld = (keep) => {
  for (const name of readdirSync(cache)) {
    const path = join(cache, name);
    if (name === 'node_modules' || path === keep) continue;
    if (Date.now() - statSync(path).mtimeMs > WEEK) rmSync(path, { recursive: true, force: true });
  }
};

const bundle = async (target) => {
  const { bundleSources } = await import('./.bundle.mjs');
  mkdirSync(cache, { recursive: true });
  try {
    // From here the bundles find the checkout's libraries.
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
  dropOld(target);
};

const ready = join(home, 'dist', 'program');
const fromSources =
  existsSync(join(home, 'src', 'cli', 'main.ts')) && existsSync(join(home, 'node_modules', 'esbuild'));
if (!fromSources && !existsSync(ready)) {
  process.stderr.write(`The libraries are not installed: run "npm ci" in ${home}.\n`);
  process.exit(1);
}
const folder = fromSources ? join(cache, stateOfSources()) : ready;
if (!existsSync(folder)) await bundle(folder);
await import(pathToFileURL(join(folder, 'main.mjs')).href);
