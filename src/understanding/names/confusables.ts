/**
 * Words that recognisers mistake for one another in a kitchen, from `confusables.tsv`:
 * heard, meant, source, count. Empty for a language without the file.
 */
import { parse } from 'csv-parse/sync';
import { existsSync, readFileSync } from 'node:fs';
import { projectFile } from '../../project-files.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';

interface Line {
  readonly heard: string;
  readonly meant: string;
  readonly count: string;
}

const read = perLexicon(({ language }): ReadonlyMap<string, readonly (readonly [string, number])[]> => {
  const file = projectFile('grammars', language, 'words', 'confusables.tsv');
  const table = new Map<string, [string, number][]>();
  if (!existsSync(file)) return table;
  const lines = parse(readFileSync(file, 'utf8'), {
    delimiter: '\t',
    columns: true,
    comment: '#',
    quote: null,
  }) as Line[];
  for (const { heard, meant, count } of lines) {
    // Often seen is likelier; nothing heard otherwise is ever as sure as what was said.
    const fit = Math.min(0.8, 0.6 + 0.05 * Math.log2(Math.max(1, Number(count))));
    const there = table.get(heard) ?? [];
    there.push([meant, Math.round(fit * 100) / 100]);
    table.set(heard, there);
  }
  return table;
});

const none: readonly (readonly [string, number])[] = [];

/** What may have been meant where `phrase` was heard, with a fit of 0.6 to 0.8. A phrase of one or two words. */
export const confusionsOf = (phrase: string, lexicon: Lexicon): readonly (readonly [string, number])[] =>
  read(lexicon).get(phrase) ?? none;

/** Words that may have been meant where `phrase` (a word, or two with a space) was heard. */
export const alternativesFor = (phrase: string, lexicon: Lexicon): string[] =>
  confusionsOf(phrase, lexicon).map(([meant]) => meant);
