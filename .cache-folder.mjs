import { createHash } from 'node:crypto';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = dirname(fileURLToPath(import.meta.url));
const short = (hash) => hash.digest('hex').slice(0, 16);

/** Tellshelf's folder in the user's cache: the program's own folder may be another's, who alone may write in it. */
export const userCache = () => {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  if (XDG_CACHE_HOME) return join(XDG_CACHE_HOME, 'tellshelf');
  if (process.platform === 'win32' && LOCALAPPDATA) return join(LOCALAPPDATA, 'tellshelf');
  const folder = process.platform === 'darwin' ? join('Library', 'Caches') : '.cache';
  return join(homedir(), folder, 'tellshelf');
};

/** The part of it that is this checkout's. */
export const checkoutCache = () => join(userCache(), short(createHash('sha256').update(home)));

/** Code, and the words of the pages, which are bundled with it. */
const IN_BUNDLES =
  /\.tsx?$|[\\/]pages[\\/][^\\/]*\.ftl$|[\\/]phrases[\\/](touch|units|words)\.ftl$|[\\/]touch\.json$/;

/** Changes when anything in the bundles does. */
export const stateOfSources = () => {
  const hash = createHash('sha256').update(process.version);
  const add = (path) => {
    const { mtimeMs, size } = statSync(path);
    hash.update(`${path} ${mtimeMs} ${size}\n`);
  };
  add(join(home, 'package-lock.json'));
  for (const folder of ['src', 'shared', 'grammars'])
    for (const name of readdirSync(join(home, folder), { recursive: true }))
      if (IN_BUNDLES.test(name)) add(join(home, folder, name));
  return short(hash);
};

const PREPARED = 'prepared-';

/**
 * Where what was made of the data is kept, for these very sources (`src/prepared.ts`). Older ones go: whoever still
 * runs with them makes it anew.
 */
export const preparedFolder = (state) => {
  const cache = checkoutCache();
  try {
    for (const name of readdirSync(cache))
      if (name.startsWith(PREPARED) && name !== PREPARED + state)
        rmSync(join(cache, name), { recursive: true, force: true });
  } catch {
    // There is none yet, or another process drops the same.
  }
  return join(cache, PREPARED + state);
};
