/** The words that answer the questions of the first day, by language: `grammars/<language>/first-day.json`. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../project-files.js';
import { phraseSet, phraseTable, synonymTable, type PhraseTable } from '../../words/phrases.js';

const entries = z.array(z.string());
const lists = z.record(z.string(), entries);
const shape = z.object({
  about: z.string(),
  sizes: entries,
  stores: lists,
  inside: entries,
  none: entries,
  another: entries,
  me: entries,
  relations: lists,
  called: entries,
  watches: entries,
  extra: lists,
  allergicAfter: entries,
  risks: lists,
  pronouns: entries,
  and: entries,
  chatter: entries,
  manner: lists,
});

export interface FirstDayWords {
  readonly sizes: ReadonlySet<string>;
  readonly stores: PhraseTable<string>;
  readonly inside: PhraseTable<true>;
  readonly none: PhraseTable<true>;
  readonly another: PhraseTable<true>;
  readonly me: PhraseTable<true>;
  readonly relations: PhraseTable<string>;
  readonly called: PhraseTable<true>;
  readonly watches: PhraseTable<true>;
  readonly extra: PhraseTable<string>;
  readonly allergicAfter: ReadonlySet<string>;
  readonly risks: PhraseTable<string>;
  readonly pronouns: ReadonlySet<string>;
  readonly and: PhraseTable<true>;
  readonly chatter: ReadonlySet<string>;
  readonly manner: PhraseTable<string>;
}

const known = new Map<string, FirstDayWords | null>();

/** Null for a language that has no such file. Throws `ZodError` for a file of another form. */
export const firstDayWords = (language: string): FirstDayWords | null => {
  let words = known.get(language);
  if (words === undefined) {
    const file = projectFile('grammars', language, 'first-day.json');
    words = null;
    if (existsSync(file)) {
      const given = shape.parse(JSON.parse(readFileSync(file, 'utf8')));
      words = {
        sizes: new Set(given.sizes),
        stores: synonymTable(given.stores),
        inside: phraseSet(given.inside),
        none: phraseSet(given.none),
        another: phraseSet(given.another),
        me: phraseSet(given.me),
        relations: synonymTable(given.relations),
        called: phraseSet(given.called),
        watches: phraseSet(given.watches),
        extra: synonymTable(given.extra),
        allergicAfter: new Set(given.allergicAfter),
        risks: synonymTable(given.risks),
        pronouns: new Set(given.pronouns),
        and: phraseSet(given.and),
        chatter: new Set(given.chatter),
        manner: phraseTable(
          Object.entries(given.manner).flatMap(([kept, ways]) => ways.map((way) => [way, kept] as const)),
        ),
      };
    }
    known.set(language, words);
  }
  return words;
};
