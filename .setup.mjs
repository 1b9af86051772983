// Builds the one native library (better-sqlite3) after `npm ci`. Its own install script fetches a
// ready-made binary, else compiles against Node's headers, which it fetches too. Where neither can
// be fetched but the headers came with Node, this compiles against those.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);
const home = dirname(require.resolve('better-sqlite3/package.json'));

const works = () =>
  spawnSync(process.execPath, ['-e', "new (require('better-sqlite3'))(':memory:')"], {
    cwd: dirname(home),
    stdio: 'ignore',
  }).status === 0;

/** The folder Node was installed to, if its headers are there and are of this very version. */
const headers = () => {
  const prefix = dirname(dirname(process.execPath));
  const file = join(prefix, 'include', 'node', 'node_version.h');
  if (!existsSync(file)) return null;
  const text = readFileSync(file, 'utf8');
  const part = (name) => new RegExp(`#define NODE_${name}_VERSION (\\d+)`).exec(text)?.[1];
  return `${part('MAJOR')}.${part('MINOR')}.${part('PATCH')}` === process.versions.node ? prefix : null;
};

if (!works()) {
  const nodedir = headers();
  const env = nodedir === null ? process.env : { ...process.env, npm_config_nodedir: nodedir };
  const built = spawnSync('npm', ['run', 'install'], {
    cwd: home,
    env,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (built.status !== 0 || !works()) {
    process.stderr.write(`${built.stdout ?? ''}${built.stderr ?? ''}\nbetter-sqlite3 could not be built.\n`);
    process.exit(1);
  }
}

// `npx tellshelf` in this folder: npm links the commands of what a project needs, not its own.
if (process.platform !== 'win32') {
  const link = join('node_modules', '.bin', 'tellshelf');
  mkdirSync(dirname(link), { recursive: true });
  rmSync(link, { force: true });
  symlinkSync(join('..', '..', '.run.mjs'), link);
}
