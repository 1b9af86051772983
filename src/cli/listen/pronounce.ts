/**
 * A pronouncing dictionary for the words of a grammar: the recogniser's own entries, and for words
 * it lacks ("reheat", a family dish) what flite's letter-to-sound rules say, in the same phones.
 */
import { spawnSync } from 'node:child_process';

/** flite's two phones that the recogniser writes otherwise. */
const renamed: Readonly<Record<string, string>> = { AX: 'AH', AXR: 'ER' };

/** All words of a JSGF text's right-hand sides. */
export const wordsOf = (jsgf: string): string[] => [
  ...new Set(
    jsgf
      .split('\n')
      .filter((line) => line.includes('='))
      .flatMap(
        (line) =>
          line
            .slice(line.indexOf('=') + 1)
            .replace(/<[^>]*>|\/[\d.]+\//g, ' ')
            .match(/[\p{L}\p{N}'’-]+/gu) ?? [],
      ),
  ),
];

/** One word's phones by flite, or null where flite is missing or makes nothing of it. */
const fromFlite = (word: string): string | null => {
  const said = spawnSync('flite', ['-t', word, '-ps', 'none'], { encoding: 'utf8' });
  if (said.status !== 0) return null;
  const phones = said.stdout
    .trim()
    .split(/\s+/)
    .filter((phone) => phone !== 'pau' && phone !== '')
    .map((phone) => phone.toUpperCase())
    .map((phone) => renamed[phone] ?? phone);
  return phones.length === 0 ? null : phones.join(' ');
};

export interface Dictionary {
  readonly text: string;
  /** Words nobody could pronounce: the recogniser will not hear them. */
  readonly unknown: readonly string[];
}

/**
 * @param known the recogniser's dictionary, one `word PH ON ES` a line, alternatives as `word(2)`
 */
export const dictionaryFor = (
  words: readonly string[],
  known: string,
  pronounce: (word: string) => string | null = fromFlite,
): Dictionary => {
  const wanted = new Set(words);
  const lines: string[] = [];
  const found = new Set<string>();
  for (const line of known.split('\n')) {
    const word = line.slice(0, line.indexOf(' ')).replace(/\(\d+\)$/, '');
    if (!wanted.has(word)) continue;
    found.add(word);
    lines.push(line);
  }
  const unknown: string[] = [];
  for (const word of words) {
    if (found.has(word)) continue;
    const phones = pronounce(word);
    if (phones === null) unknown.push(word);
    else lines.push(`${word} ${phones}`);
  }
  return { text: `${lines.join('\n')}\n`, unknown };
};
