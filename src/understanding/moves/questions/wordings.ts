/** How questions are worded, by language: `grammars/<language>/questions.txt`, which anybody can edit. */
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../../../project-files.js';
import type { Attribute } from '../../../protocol/query.js';
import { INTENTS, type Intent, type Slots } from '../../intents.js';
import { phraseTable, type PhraseTable } from '../../words/phrases.js';

export interface Wordings {
  /** Every phrase with all it may do in a question. */
  readonly phrases: PhraseTable<ReadonlySet<string>>;
  /** What is asked by which words together, those of most words first. */
  readonly asks: readonly { readonly ask: Attribute; readonly of: readonly string[] }[];
  /** What is asked that is no food, those of most words first. */
  readonly matters: readonly Matter[];
  readonly allergens: PhraseTable<string>;
  /** Words a warning is known by: "hot", "spicy". */
  readonly cautions: readonly string[];
}

/** A request, and which words together ask for it. */
export interface Matter {
  readonly intent: Intent;
  readonly slots: Slots;
  readonly of: readonly string[];
  /** Words that make something else of it. */
  readonly without: readonly string[];
  /** Asked of a thing that is named; else no thing is. */
  readonly ofThing: boolean;
}

type Line = readonly [name: string, rest: string];

const sections = (text: string): ReadonlyMap<string, readonly Line[]> => {
  const found = new Map<string, Line[]>();
  let lines: Line[] = [];
  for (const raw of text.split(/\r?\n/)) {
    const line = raw.trim();
    if (line === '' || line.startsWith('#')) continue;
    if (line.startsWith('[')) {
      found.set(line.slice(1, line.indexOf(']')), (lines = []));
      continue;
    }
    // The last colon with a space: a name may hold one ("date:opened").
    const at = line.indexOf(': ');
    if (at < 0) throw new Error(`questions.txt: no colon in "${line}"`);
    lines.push([line.slice(0, at), line.slice(at + 2)]);
  }
  return found;
};

const phrasesIn = (rest: string): readonly string[] =>
  rest
    .split(',')
    .map((phrase) => phrase.trim())
    .filter((phrase) => phrase !== '');

const matter = ([name, rest]: Line): Matter => {
  const [intent = '', ...given] = name.split(' ');
  if (!(INTENTS as readonly string[]).includes(intent))
    throw new Error(`questions.txt: no request is called "${intent}"`);
  const words = rest.split(' ');
  const slots = given
    .map((one) => one.split('='))
    .map(([key, value = '']) => [key, value.replaceAll('-', ' ')]);
  return {
    intent: intent as Intent,
    slots: Object.fromEntries(slots) as Slots,
    of: words.filter((word) => !word.startsWith('!')).map((word) => word.replace(/^\+/, '')),
    without: words.filter((word) => word.startsWith('!')).map((word) => word.slice(1)),
    ofThing: words.some((word) => word.startsWith('+')),
  };
};

const read = (text: string): Wordings => {
  const found = sections(text);
  const words = new Map<string, Set<string>>();
  for (const [name, rest] of found.get('words') ?? [])
    for (const phrase of phrasesIn(rest)) words.set(phrase, (words.get(phrase) ?? new Set()).add(name));
  const asks = (found.get('asks') ?? []).map(([ask, of]) => ({ ask: ask as Attribute, of: of.split(' ') }));
  return {
    phrases: phraseTable(words),
    cautions: [...words].flatMap(([phrase, names]) =>
      names.has('hot') && !phrase.includes(' ') ? [phrase] : [],
    ),
    asks: [...asks].sort((a, b) => b.of.length - a.of.length),
    matters: (found.get('matters') ?? []).map(matter).sort((a, b) => b.of.length - a.of.length),
    allergens: phraseTable(
      (found.get('allergens') ?? []).flatMap(([name, rest]) =>
        phrasesIn(rest).map((phrase) => [phrase, name] as const),
      ),
    ),
  };
};

const known = new Map<string, Wordings | null>();

/** Null for a language without such a file. @throws Error for a line that is none. */
export const wordingsFor = (language: string): Wordings | null => {
  let wordings = known.get(language);
  if (wordings === undefined) {
    const file = projectFile('grammars', language, 'questions.txt');
    wordings = existsSync(file) ? read(readFileSync(file, 'utf8')) : null;
    known.set(language, wordings);
  }
  return wordings;
};
