/**
 * What the mood of a stretch of words is judged by: its words, alone and with their neighbours; the same with
 * foods, figures and units standing for their kind; the same again with small words standing for what they do
 * in a sentence; how it begins and ends; how long it is; what is waited for.
 */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../project-files.js';
import { entriesOf } from '../word-lists.js';

export interface MoodWords {
  /** May begin a sentence, and say nothing of its mood. */
  readonly fill: ReadonlySet<string>;
  /** What a small word does in a sentence. */
  readonly classOf: ReadonlyMap<string, string>;
  /** Words of `classOf`, and others that stand for themselves. */
  readonly small: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  readonly units: ReadonlySet<string>;
  readonly figures: ReadonlySet<string>;
}

interface WordsFile {
  readonly fill: string;
  readonly classes: Readonly<Record<string, string>>;
  readonly small: string;
}

const json = (language: string, ...path: string[]): Readonly<Record<string, unknown>> =>
  JSON.parse(readFileSync(projectFile('grammars', language, ...path), 'utf8')) as Record<string, unknown>;

/** Every word among the strings of a value, keys of records too. */
const wordsIn = (value: unknown): string[] => {
  if (typeof value === 'string') return value.toLowerCase().split(' ');
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => [
    ...(Array.isArray(value) ? [] : wordsIn(key)),
    ...wordsIn(part),
  ]);
};

const listed = (words: string): string[] => words.split(' ').filter((word) => word !== '');

/** @throws Error where a file of the language is missing or of another form. */
export const readMoodWords = (language: string): MoodWords => {
  const { fill, classes, small } = json(language, 'learned', 'mood-words.json') as unknown as WordsFile;
  const classOf = new Map<string, string>();
  for (const [name, words] of Object.entries(classes))
    for (const word of listed(words)) if (!classOf.has(word)) classOf.set(word, name);
  const numbers = json(language, 'words', 'numbers.json');
  const of = (...values: unknown[]): ReadonlySet<string> => new Set(values.flatMap(wordsIn));
  return {
    fill: new Set(listed(fill)),
    classOf,
    small: new Set([...classOf.keys(), ...listed(small)]),
    foods: new Set(entriesOf(language, 'foods').map((entry) => entry.split(' ').at(-1)!)),
    units: of(
      json(language, 'words', 'units.json')['units'],
      json(language, 'words', 'touch.json')['containers'],
    ),
    figures: of(numbers['words'], numbers['scales'], numbers['ordinals']),
  };
};

const isIn = (words: ReadonlySet<string>, word: string): boolean =>
  words.has(word) || (word.endsWith('s') && (words.has(word.slice(0, -1)) || words.has(word.slice(0, -2))));

/** What a word stands for where it is not small. */
const kindOf = (word: string, { foods, units, figures }: MoodWords): string => {
  if (/\d/.test(word) || figures.has(word)) return '<n>';
  if (isIn(units, word)) return '<unit>';
  if (isIn(foods, word)) return '<food>';
  const ending = /.(?:ing|ed|en|ly|s)$/.exec(word)?.[0].slice(1);
  return ending === undefined ? '<w>' : `<${ending}>`;
};

const lengths = [1, 2, 3, 5, 8, 12, 18, 27, Infinity] as const;

/** Runs of `size` neighbours. */
const runs = (of: readonly string[], size: number, mark: string, into: Set<string>): void => {
  for (let at = 0; at + size <= of.length; at += 1) into.add(`${mark}${of.slice(at, at + size).join(' ')}`);
};

/**
 * `tokens`: lower case, as `normalise` leaves them; a last "?" is taken for what it is, where there is one.
 * `awaited`: what the talk waits for; null where that is not known.
 */
export const moodFeatures = (
  tokens: readonly string[],
  words: MoodWords,
  awaited: string | null,
): readonly string[] => {
  const found = new Set<string>();
  // "When'd" and "theo's" are two words.
  const said = tokens
    .flatMap((token) =>
      token
        .toLowerCase()
        .replace(/[?.!,;]+$/, '')
        .split(/(?=')/),
    )
    .filter((word) => word !== '');
  if (tokens.at(-1)?.endsWith('?')) found.add('?');
  const figured = said.map((word) => (words.small.has(word) ? word : kindOf(word, words)));
  const classed = said.map((word, at) => {
    const name = words.classOf.get(word);
    return name === undefined ? figured[at]! : `<${name}>`;
  });
  let first = 0;
  while (first + 1 < said.length && words.fill.has(said[first]!)) first += 1;
  for (const word of said) found.add(word);
  const within = (of: readonly string[]): string[] => ['^', ...of, '$'];
  runs(within(said), 2, '', found);
  runs(within(figured), 2, '2:', found);
  runs(within(figured), 3, '3:', found);
  runs(within(classed), 2, 'c2:', found);
  runs(within(classed), 3, 'c3:', found);
  runs(within(classed), 4, 'c4:', found);
  // How it begins, past what says nothing.
  for (const size of [1, 2, 3]) {
    found.add(`^${size}:${figured.slice(first, first + size).join(' ')}`);
    found.add(`^c${size}:${classed.slice(first, first + size).join(' ')}`);
  }
  found.add(`^w:${said[first] ?? ''}`);
  found.add(`$2:${figured.slice(-2).join(' ')}`);
  found.add(`$c3:${classed.slice(-3).join(' ')}`);
  // Which words of each kind it has at all, and which of two comes first.
  const kinds = [...new Set(classed)];
  kinds.forEach((kind, at) => {
    found.add(`has:${kind}`);
    for (const other of kinds.slice(at + 1)) found.add(`${kind}..${other}`);
  });
  const long = `long:${lengths.find((most) => said.length <= most)}`;
  found.add(long);
  found.add(`${long} ${classed[first] ?? ''}`);
  if (awaited !== null) {
    found.add(`awaited:${awaited}`);
    found.add(`awaited:${awaited === 'anything' ? awaited : 'something'} ${long}`);
    found.add(`awaited:${awaited} ${classed[first] ?? ''}`);
  }
  return [...found];
};
