/** What words do in a request, by language: `grammars/<language>/requests.json`, that a non-programmer can edit. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../project-files.js';
import { wordFormsOf } from '../../languages/index.js';
import { guidancePhrases } from '../../guidance/lexicon.js';
import { phraseTable, type PhraseTable } from '../../words/phrases.js';

/** `beside`: single words that say nothing beside what one frame took, or that it looks out for; no constituents. */
const file = z.object({
  classes: z.record(z.string(), z.array(z.string())),
  beside: z.record(z.string(), z.array(z.string())).default({}),
});

/** Every phrase with the names of all lists it stands in. */
export type RequestWords = PhraseTable<ReadonlySet<string>>;

type Read = z.infer<typeof file>;
const nothing: Read = { classes: {}, beside: {} };
const read = new Map<string, Read>();
const fileOf = (language: string): Read => {
  const before = read.get(language);
  if (before) return before;
  const path = projectFile('grammars', language, 'requests.json');
  const made = existsSync(path) ? file.parse(JSON.parse(readFileSync(path, 'utf8'))) : nothing;
  read.set(language, made);
  return made;
};

/** Whether a word stands in a list of small words. */
export const isBeside = (language: string, list: string, word: string): boolean =>
  fileOf(language).beside[list]?.includes(word) === true;

const known = new Map<string, RequestWords | null>();

/** Null for a language that has no such file yet. Throws `ZodError` for a file of another form. */
export const requestWords = (language: string): RequestWords | null => {
  const before = known.get(language);
  if (before !== undefined) return before;
  const { classes: lists } = fileOf(language);
  const classes = new Map<string, Set<string>>();
  const put = (phrase: string, name: string): void =>
    void classes.set(phrase, (classes.get(phrase) ?? new Set<string>()).add(name));
  const { asSpelled } = wordFormsOf(language);
  for (const [name, phrases] of Object.entries(lists))
    for (const phrase of phrases.flatMap(asSpelled)) put(phrase, name);
  // Heat told without a figure: the guidance ear's list, so that there is one.
  if (classes.size > 0) for (const phrase of guidancePhrases(language, 'hot')) put(phrase, 'hot');
  const words = classes.size > 0 ? phraseTable<ReadonlySet<string>>(classes) : null;
  known.set(language, words);
  return words;
};
