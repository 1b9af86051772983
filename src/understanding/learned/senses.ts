/** Words of one sense, from `grammars/<language>/learned/senses.txt`, found by their stems. */
import { readFileSync } from 'node:fs';
import { stemmer } from 'stemmer';
import { projectFile } from '../../project-files.js';

interface Phrase {
  readonly stems: readonly string[];
  readonly sense: string;
}
/** Phrases by their first stem. */
export type Senses = ReadonlyMap<string, readonly Phrase[]>;

const stems = new Map<string, string>();
/** Stem of a word; a piece in angle brackets is its own. Remembered, and forgotten before it could grow without end. */
export const stemOfPiece = (text: string): string => {
  let stem = stems.get(text);
  if (stem === undefined) {
    if (stems.size > 20_000) stems.clear();
    stems.set(text, (stem = text.startsWith('<') ? text : stemmer(text)));
  }
  return stem;
};

/** Throws `Error` for a line without a colon. */
export const readSenses = (language: string): Senses => {
  const senses = new Map<string, Phrase[]>();
  const file = projectFile('grammars', language, 'learned', 'senses.txt');
  for (const line of readFileSync(file, 'utf8').split(/\r?\n/)) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const colon = line.indexOf(':');
    if (colon < 0) throw new Error(`senses.txt: no colon in "${line}"`);
    const sense = line.slice(0, colon).trim();
    for (const entry of line.slice(colon + 1).split(',')) {
      const words = entry.trim().split(' ').map(stemOfPiece);
      const first = words[0]!;
      if (first !== '') senses.set(first, [...(senses.get(first) ?? []), { stems: words, sense }]);
    }
  }
  return senses;
};
