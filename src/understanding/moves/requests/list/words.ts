/** What words do in talk of one matter, by language: `grammars/<language>/list.json`, `asides.json`. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../../project-files.js';
import { wordFormsOf } from '../../../languages/index.js';
import { phraseTable } from '../../../words/phrases.js';
import type { RequestWords } from '../lexicon.js';

const file = z.object({ classes: z.record(z.string(), z.array(z.string())) });
const known = new Map<string, RequestWords | null>();

/** Null for a language that has no such file yet. Throws `ZodError` for a file of another form. */
export const wordsOfMatter = (language: string, matter: 'list' | 'asides'): RequestWords | null => {
  const key = `${language} ${matter}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const path = projectFile('grammars', language, `${matter}.json`);
  const lists = existsSync(path) ? file.parse(JSON.parse(readFileSync(path, 'utf8'))).classes : {};
  const classes = new Map<string, Set<string>>();
  const { asSpelled } = wordFormsOf(language);
  for (const [name, phrases] of Object.entries(lists))
    for (const phrase of phrases.flatMap(asSpelled))
      classes.set(phrase, (classes.get(phrase) ?? new Set<string>()).add(name));
  const words = classes.size > 0 ? phraseTable<ReadonlySet<string>>(classes) : null;
  known.set(key, words);
  return words;
};
