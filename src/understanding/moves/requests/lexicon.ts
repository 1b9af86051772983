/** What words do in a request, by language: `grammars/<language>/requests.json`, that a non-programmer can edit. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../project-files.js';
import { guidancePhrases } from '../../guidance/lexicon.js';
import { phraseTable, type PhraseTable } from '../../words/phrases.js';

const file = z.object({ classes: z.record(z.string(), z.array(z.string())) });

/** Every phrase with the names of all lists it stands in. */
export type RequestWords = PhraseTable<ReadonlySet<string>>;

const known = new Map<string, RequestWords | null>();

/** Null for a language that has no such file yet. Throws `ZodError` for a file of another form. */
export const requestWords = (language: string): RequestWords | null => {
  const before = known.get(language);
  if (before !== undefined) return before;
  const path = projectFile('grammars', language, 'requests.json');
  const classes = new Map<string, Set<string>>();
  const put = (phrase: string, name: string): void =>
    void classes.set(phrase, (classes.get(phrase) ?? new Set<string>()).add(name));
  if (existsSync(path))
    for (const [name, phrases] of Object.entries(file.parse(JSON.parse(readFileSync(path, 'utf8'))).classes))
      for (const phrase of phrases) put(phrase, name);
  // Heat told without a figure: the guidance ear's list, so that there is one.
  for (const phrase of guidancePhrases(language, 'hot')) put(phrase, 'hot');
  const words = classes.size > 0 ? phraseTable<ReadonlySet<string>>(classes) : null;
  known.set(language, words);
  return words;
};
