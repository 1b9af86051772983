import { homedir } from 'node:os';
import { join } from 'node:path';

/** Tellshelf's folder in the user's cache: the program's own folder may be another's, who alone may write in it. */
export const userCache = () => {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  if (XDG_CACHE_HOME) return join(XDG_CACHE_HOME, 'tellshelf');
  if (process.platform === 'win32' && LOCALAPPDATA) return join(LOCALAPPDATA, 'tellshelf');
  const folder = process.platform === 'darwin' ? join('Library', 'Caches') : '.cache';
  return join(homedir(), folder, 'tellshelf');
};
