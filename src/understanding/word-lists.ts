/** Word lists that are plain text: entries parted by commas or lines, notes after a hash. */
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../project-files.js';

/** Lines of `grammars/<language>/words/<list>.txt` that hold anything but a note; none when there is no such list. */
export const linesOf = (language: string, list: string): readonly string[] => {
  const file = projectFile('grammars', language, 'words', `${list}.txt`);
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));
};

/** Entries of such a list, parted by commas or lines, lower case. */
export const entriesOf = (language: string, list: string): readonly string[] =>
  linesOf(language, list)
    .flatMap((line) => line.split(','))
    .map((entry) => entry.trim().toLowerCase())
    .filter((entry) => entry !== '');
