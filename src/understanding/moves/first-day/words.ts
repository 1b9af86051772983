/** The words that answer the questions of the first day, by language: `grammars/<language>/first-day.json`. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../project-files.js';
import { phraseSet, phraseTable, synonymTable, type PhraseTable } from '../../words/phrases.js';

/** A list that a language has not got says nothing. */
const entries = z.array(z.string()).default([]);
const lists = z.record(z.string(), z.array(z.string())).default({});
const shape = z.object({
  about: z.string(),
  sizes: entries,
  stores: lists,
  inside: entries,
  purposes: entries,
  none: entries,
  another: entries,
  counts: lists,
  sides: entries,
  me: entries,
  bare: entries,
  alone: entries,
  relations: lists,
  groups: entries,
  infants: entries,
  nameIs: entries,
  titles: entries,
  diets: lists,
  called: entries,
  watches: entries,
  strong: entries,
  weak: entries,
  allowed: entries,
  fill: entries,
  comes: entries,
  between: entries,
  extra: lists,
  allergicAfter: entries,
  risks: lists,
  takenBack: entries,
  notOne: entries,
  gone: entries,
  pronouns: entries,
  and: entries,
  chatter: entries,
  notBefore: entries,
  allTold: entries,
  openers: entries,
  asks: entries,
  manner: lists,
  talks: entries,
});

export interface FirstDayWords {
  readonly sizes: ReadonlySet<string>;
  readonly stores: PhraseTable<string>;
  /** Before the food a place is for, which is not told to be in it. */
  readonly purposes: ReadonlySet<string>;
  readonly inside: PhraseTable<true>;
  readonly none: PhraseTable<true>;
  readonly another: PhraseTable<true>;
  /** Of `me`, what says that there is nobody else. */
  readonly alone: PhraseTable<true>;
  /** Tells one place from another of its kind, before its name: "the left cupboard". */
  readonly sides: PhraseTable<true>;
  /** How many are meant by words that are no number: "a couple of". */
  readonly counts: PhraseTable<string>;
  readonly me: PhraseTable<true>;
  /** Of `me`, what begins a sentence of hers about anything: it tells of her only with what is said of her. */
  readonly bare: ReadonlySet<string>;
  readonly relations: PhraseTable<string>;
  /** Several people, whose names may follow: "the little ones, Ben and Poppy". */
  readonly groups: PhraseTable<true>;
  /** Before her own name. */
  readonly nameIs: PhraseTable<true>;
  /** Of the relations, those that are a baby's. */
  readonly infants: ReadonlySet<string>;
  readonly titles: ReadonlySet<string>;
  /** Ways of eating, each by the name it is kept under. */
  readonly diets: PhraseTable<string>;
  readonly called: PhraseTable<true>;
  readonly watches: PhraseTable<true>;
  /** Of these watches, those that say it only where it was asked. */
  readonly weak: PhraseTable<true>;
  /** Those that always have something after them. */
  readonly strong: PhraseTable<true>;
  /** Before what somebody may well have. */
  readonly allowed: PhraseTable<true>;
  /** Passed over between a watch and the food. */
  readonly fill: ReadonlySet<string>;
  /** What somebody who eats here does. */
  readonly comes: PhraseTable<true>;
  /** Passed over between a name and what is said of it. */
  readonly between: ReadonlySet<string>;
  readonly extra: PhraseTable<string>;
  readonly allergicAfter: ReadonlySet<string>;
  readonly risks: PhraseTable<string>;
  /** Before somebody who does not eat here after all. */
  readonly takenBack: PhraseTable<true>;
  /** After somebody who is nobody. */
  readonly notOne: PhraseTable<true>;
  /** After somebody who is no longer here. */
  readonly gone: PhraseTable<true>;
  readonly pronouns: ReadonlySet<string>;
  readonly and: PhraseTable<true>;
  readonly chatter: ReadonlySet<string>;
  /** Words that no name follows. */
  readonly notBefore: ReadonlySet<string>;
  /** Small words a sentence may open with. */
  readonly openers: ReadonlySet<string>;
  /** What opens a question or a request. */
  readonly asks: ReadonlySet<string>;
  /** Nothing more is to come. */
  readonly allTold: PhraseTable<true>;
  readonly manner: PhraseTable<string>;
  /** What says that the talk itself is meant, where something else was asked. */
  readonly talks: PhraseTable<true>;
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
        purposes: new Set(given.purposes),
        inside: phraseSet(given.inside),
        none: phraseSet(given.none),
        another: phraseSet(given.another),
        alone: phraseSet(given.alone),
        me: phraseSet(given.me),
        bare: new Set(given.bare),
        sides: phraseSet(given.sides),
        counts: synonymTable(given.counts),
        talks: phraseSet(given.talks),
        relations: synonymTable(given.relations),
        groups: phraseSet(given.groups),
        nameIs: phraseSet(given.nameIs),
        infants: new Set(given.infants),
        titles: new Set(given.titles),
        diets: synonymTable(given.diets),
        called: phraseSet(given.called),
        watches: phraseSet(given.watches),
        weak: phraseSet(given.weak),
        strong: phraseSet(given.strong),
        allowed: phraseSet(given.allowed),
        fill: new Set(given.fill),
        comes: phraseSet(given.comes),
        between: new Set(given.between),
        extra: synonymTable(given.extra),
        allergicAfter: new Set(given.allergicAfter),
        risks: synonymTable(given.risks),
        takenBack: phraseSet(given.takenBack),
        notOne: phraseSet(given.notOne),
        gone: phraseSet(given.gone),
        pronouns: new Set(given.pronouns),
        and: phraseSet(given.and),
        chatter: new Set(given.chatter),
        notBefore: new Set(given.notBefore),
        openers: new Set(given.openers),
        asks: new Set(given.asks),
        allTold: phraseSet(given.allTold),
        manner: phraseTable(
          Object.entries(given.manner).flatMap(([kept, ways]) => ways.map((way) => [way, kept] as const)),
        ),
      };
    }
    known.set(language, words);
  }
  return words;
};
