/** Where the project's data files are, whether run from source or built. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const findRoot = (from: string): string => {
  if (existsSync(join(from, 'package.json'))) return from;
  const parent = dirname(from);
  if (parent === from) throw new Error('package.json not found above the program');
  return findRoot(parent);
};

// A bundle that runs from the user's cache is told where the project is (`.run.mjs`).
const root = process.env['TELLSHELF_HOME'] ?? findRoot(dirname(fileURLToPath(import.meta.url)));

/** Absolute path of a file or folder shipped with the project, e.g. `projectFile('grammars', 'en')`. */
export const projectFile = (...parts: string[]): string => join(root, ...parts);
