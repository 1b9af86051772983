/** What words do in a move, by language: `grammars/<language>/moves.json`, that a non-programmer can edit. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';
import { wordFormsOf, type SpellingLists, type WordForms } from '../languages/index.js';
import { entriesOf } from '../word-lists.js';
import { phraseTable, type PhraseTable } from '../words/phrases.js';

const lists = z.record(z.string(), z.array(z.string()));

const moves = z.object({
  deeds: lists.default({}),
  states: lists.default({}),
  dates: lists.default({}),
  words: lists.default({}),
  pointers: lists.default({}),
  allergens: lists.default({}),
  diets: z.array(z.string()).default([]),
  dietsOf: lists.default({}),
  one: z.string().nullable().default(null),
  dishes: z.array(z.string()).default([]),
  cookware: z.array(z.string()).default([]),
  clitics: z.record(z.string(), z.string()).default({}),
  endings: z.record(z.string(), z.string()).default({}),
  weighs: z.array(z.string()).default([]),
  wholes: z.array(z.string()).default([]),
  ones: z.array(z.string()).default([]),
  occasions: z.array(z.string()).default([]),
  futures: z.array(z.string()).default([]),
});

export interface MovesLexicon extends SpellingLists {
  readonly language: string;
  /** Every phrase with all it may do: "deed:stored", "state:finished", "date:useBy", "pointer:it", "and", … */
  readonly phrases: PhraseTable<ReadonlySet<string>>;
  /** The allergen group a food word names; undefined for others. */
  allergenOf(words: string): string | undefined;
  /** A name of such a group itself. */
  isAllergen(group: string): boolean;
  /** Whether the word is the group's own name: "apio" of celery, where "pecans" are one of several tree nuts. */
  isGroup(words: string): boolean;
  /** The word for one, as a recogniser writes it. */
  readonly one: string | null;
  /** A kind of dish, which two foods before it may name: "chicken and okra stew". */
  isDish(word: string): boolean;
  /** What food is put into to be cooked or served: a pot, a salad. */
  isCooked(word: string): boolean;
  /** Everyday words that name nothing to eat: `words/ordinary.txt`. */
  isOrdinary(word: string): boolean;
  /** "Leftovers": no food by itself, where what it is is said next. */
  isWhole(words: string): boolean;
  /** A word that may take back, doubt, plan or warn: never passed over as small talk. */
  weighs(word: string): boolean;
  /** So many words of what food is kept for stand there: "lunch", "the weekend". */
  occasionAt(tokens: readonly string[], at: number): number;
  /** "Will", "going to": what follows is yet to be done. */
  isFuture(words: string): boolean;
  /** "The fridge one": after a place, what is there. */
  isOne(word: string): boolean;
  /** "added salt" after "no" is the diet "salt free". */
  dietWithout(words: string): string | undefined;
  /** How words of this language are built and ordered. */
  readonly forms: WordForms;
}

/** Phrases of every list, each with the names of all lists it stands in. */
const phrasesOf = (
  given: z.infer<typeof moves>,
  adverbs: readonly string[],
  { formsOf }: WordForms,
): PhraseTable<ReadonlySet<string>> => {
  const all = new Map<string, Set<string>>();
  const put = (prefix: string, table: Readonly<Record<string, readonly string[]>>): void => {
    for (const [name, phrases] of Object.entries(table))
      for (const phrase of phrases.flatMap(formsOf)) {
        const known = all.get(phrase) ?? new Set<string>();
        known.add(prefix + name);
        all.set(phrase, known);
      }
  };
  put('deed:', given.deeds);
  put('state:', given.states);
  put('date:', given.dates);
  put('pointer:', given.pointers);
  put('', given.words);
  put('', { diet: given.diets });
  // What else is said of how it was done changes nothing of what is told.
  put('', { fill: adverbs.filter((adverb) => !all.has(adverb)) });
  return phraseTable(all);
};

const inverted = (table: Readonly<Record<string, readonly string[]>>): ReadonlyMap<string, string> =>
  new Map(Object.entries(table).flatMap(([kept, ways]) => ways.map((way) => [way, kept] as const)));

const known = new Map<string, MovesLexicon | null>();

/** Null for a language that has no such file yet. Throws `ZodError` for a file of another form. */
export const movesLexicon = (language: string): MovesLexicon | null => {
  let lexicon = known.get(language);
  if (lexicon === undefined) {
    const file = projectFile('grammars', language, 'moves.json');
    if (existsSync(file)) {
      const given = moves.parse(JSON.parse(readFileSync(file, 'utf8')));
      const allergens = inverted(given.allergens);
      const diets = inverted(given.dietsOf);
      const forms = wordFormsOf(language);
      const groups = new Set(Object.values(given.allergens).map(([own = '']) => forms.stemOf(own)));
      const dishes = new Set(given.dishes);
      const cookware = new Set([...given.dishes, ...given.cookware]);
      const occasions = phraseTable(new Map(given.occasions.map((one) => [one, one])));
      const futures = new Set(given.futures);
      const weighing = new Set(given.weighs);
      const ordinary = new Set(entriesOf(language, 'ordinary'));
      lexicon = {
        language,
        forms,
        phrases: phrasesOf(given, entriesOf(language, 'adverbs'), forms),
        allergenOf: (words) => allergens.get(words),
        isAllergen: (group) => group in given.allergens,
        isGroup: (words) => groups.has(forms.stemOf(words)),
        one: given.one,
        isDish: (word) => dishes.has(word),
        isCooked: (word) => cookware.has(word),
        isOrdinary: (word) => ordinary.has(word),
        isWhole: (words) => given.wholes.includes(words),
        weighs: (word) => weighing.has(word),
        isFuture: (words) => futures.has(words),
        occasionAt: (tokens, at) => occasions.longestAt(tokens, at)?.length ?? 0,
        isOne: (word) => given.ones.includes(word),
        dietWithout: (words) => diets.get(words),
        clitics: Object.entries(given.clitics),
        endings: Object.entries(given.endings),
      };
    } else lexicon = null;
    known.set(language, lexicon);
  }
  return lexicon;
};

/** How many words of these classes the longest phrase there has; 0 where it is of none of them. */
export const classAt = (
  { phrases }: MovesLexicon,
  tokens: readonly string[],
  at: number,
  ...names: readonly string[]
): number => {
  const hit = phrases.longestAt(tokens, at);
  return hit && names.some((name) => hit.value.has(name)) ? hit.length : 0;
};
