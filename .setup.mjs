// After installing: sees to SQLite, the one native library. Node 22 and later have it ready made inside
// better-sqlite3 13. There npm compiles it nevertheless, unless it keeps to "allowScripts", and leaves the whole
// library out where that fails: then it is fetched here without its scripts. For Node 20 this fetches
// better-sqlite3 12, which npm would build for every Node if it were among the dependencies, and compiles it:
// against headers that came with Node where they did, else by its own script, which fetches a ready-made binary or
// the headers. What was built is kept in the user's cache.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { userCache } from './.cache-folder.mjs';

const RELEASE_FOR_20 = '12.11.1';
/** The release among the dependencies, for when npm left it out. */
const RELEASE = '13.2.0';

const here = dirname(fileURLToPath(import.meta.url));
const require = createRequire(import.meta.url);
const ready = Number.parseInt(process.versions.node, 10) >= 22;
const beside = join(here, 'node_modules', ready ? '.sqlite-13' : '.sqlite-12');
const kept = join(
  userCache(),
  `sqlite-${RELEASE_FOR_20}-${process.platform}-${process.arch}-${process.versions.modules}`,
);

const say = (...lines) => process.stderr.write(`${lines.join('\n')}\n`);
const folderBeside = join(beside, 'node_modules', 'better-sqlite3');
const folderAmongLibraries = () => {
  try {
    return dirname(require.resolve('better-sqlite3/package.json'));
  } catch {
    return null;
  }
};
/** Where it is, as `src/store/sqlite-library.ts` looks for it: what was fetched here goes first. */
const folderOf = () => (existsSync(folderBeside) || !ready ? folderBeside : folderAmongLibraries());
// In a process of its own: what cannot be loaded may end it.
const works = () =>
  spawnSync(process.execPath, ['-e', `new (require(${JSON.stringify(folderOf())}))(':memory:')`], {
    stdio: 'ignore',
  }).status === 0;

/** The folder Node was installed to, if its headers are there and are of this very version. */
const headers = () => {
  const prefix = dirname(dirname(process.execPath));
  const file = join(prefix, 'include', 'node', 'node_version.h');
  if (!existsSync(file)) return null;
  const text = readFileSync(file, 'utf8');
  const part = (what) => new RegExp(`#define NODE_${what}_VERSION (\\d+)`).exec(text)?.[1];
  return `${part('MAJOR')}.${part('MINOR')}.${part('PATCH')}` === process.versions.node ? prefix : null;
};

/** The environment without what npm says of the installing that this is part of. */
const environment = () =>
  Object.fromEntries(
    Object.entries(process.env).filter(
      ([key]) =>
        !/^npm_(package|lifecycle|command|config_(global|prefix|local_prefix|location|omit|include|only|production|dry_run|save|package_lock_only|ignore_scripts|allow_scripts|workspaces?|w|g)$)/.test(
          key,
        ),
    ),
  );
const npm = (args, options) =>
  spawnSync('npm', args, { encoding: 'utf8', shell: process.platform === 'win32', ...options });

/** Fetches it as it is, into a folder of its own. What npm said. */
const fetchBeside = (release) => {
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  writeFileSync(join(beside, 'package.json'), '{ "private": true }\n');
  return npm(['install', '--no-audit', '--no-fund', '--ignore-scripts', `better-sqlite3@${release}`], {
    cwd: beside,
    env: environment(),
  });
};

const said = (...runs) => runs.map((ran) => `${ran?.stdout ?? ''}${ran?.stderr ?? ''}`).join('');

/** Fetches and compiles it. What npm and the compiler said. */
const make12 = () => {
  const fetched = fetchBeside(RELEASE_FOR_20);
  const nodedir = headers();
  const env = environment();
  const built =
    fetched.status === 0
      ? npm(['run', 'install'], {
          cwd: folderBeside,
          env: nodedir === null ? env : { ...env, npm_config_nodedir: nodedir },
        })
      : null;
  return said(fetched, built);
};

/** Drops what only a compiler needs, and what was made ready for other machines. */
const trim = (library) => {
  for (const part of ['deps', 'src', 'build/Release/obj', 'build/Release/obj.target'])
    rmSync(join(library, part), { recursive: true, force: true });
  const made = join(library, 'prebuilds');
  // "linux" is "linuxmusl" too.
  const ours = (name) => name.startsWith(process.platform) && name.includes(`-${process.arch}`);
  for (const name of existsSync(made) ? readdirSync(made) : [])
    if (!ours(name)) rmSync(join(made, name), { recursive: true, force: true });
};

const get12 = () => {
  if (existsSync(kept)) {
    rmSync(beside, { recursive: true, force: true });
    cpSync(kept, beside, { recursive: true });
    if (works()) return '';
  }
  const log = make12();
  if (works()) {
    trim(folderBeside);
    try {
      rmSync(kept, { recursive: true, force: true });
      cpSync(beside, kept, { recursive: true });
    } catch {
      // Next time it is compiled again.
    }
  }
  return log;
};

const lacks = (program) => spawnSync(program, ['--version'], { stdio: 'ignore' }).status !== 0;
const OTHERWISE = 'or use Node 22 or later, which needs no compiler, or a PostgreSQL server (DATABASE_URL)';

/** Two lines: what is missing, and how to get it. */
const explain = (log) => {
  if (ready) {
    say(
      `SQLite (better-sqlite3 13) could not be fetched ready made for ${process.platform}-${process.arch}: there is no store in a file.`,
      `Run "node .setup.mjs" in ${here} when the package registry can be reached, or name a PostgreSQL server with DATABASE_URL.`,
    );
    return;
  }
  const missing = [
    ['python3', 'python3'],
    ['make', 'make'],
    ['c++', 'g++'],
  ].flatMap(([program, what]) => (lacks(program) ? [what] : []));
  if (missing.length > 0) {
    say(
      `SQLite must be compiled for Node 20, and this machine lacks ${missing.join(', ')}.`,
      `Install that (Debian: apt-get install ${missing.join(' ')}) and run "node .setup.mjs" in ${here}, ${OTHERWISE}.`,
    );
    return;
  }
  const file = join(mkdtempSync(join(tmpdir(), 'tellshelf-')), 'sqlite.log');
  writeFileSync(file, log);
  say(
    `SQLite could not be compiled for Node 20: ${file} says why.`,
    `Mend that and run "node .setup.mjs" in ${here}, ${OTHERWISE}.`,
  );
};

const inCheckout = existsSync(join(here, 'src', 'cli', 'main.ts'));
if (!works()) {
  const log = ready ? said(fetchBeside(RELEASE)) : get12();
  if (!works()) explain(log);
}
// Of a program of its own, not of one among whose libraries this is: others may use the same copy.
if (!inCheckout && ready && folderOf()?.startsWith(join(here, sep))) trim(folderOf());

// `npx tellshelf` in a checkout: npm links the commands of what a project needs, not its own.
const links = join(here, 'node_modules', '.bin');
if (inCheckout && process.platform !== 'win32' && existsSync(links)) {
  const link = join(links, 'tellshelf');
  rmSync(link, { force: true });
  symlinkSync(join('..', '..', '.run.mjs'), link);
}
