/** Word lists that are plain text: entries parted by commas or lines, notes after a hash. */
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../project-files.js';

/** Entries of `grammars/<language>/words/<list>.txt`, lower case; empty when there is no such list. */
export const entriesOf = (language: string, list: string): readonly string[] => {
  const file = projectFile('grammars', language, 'words', `${list}.txt`);
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .flatMap((line) => line.split(','))
    .map((entry) => entry.trim().toLowerCase())
    .filter((entry) => entry !== '');
};
