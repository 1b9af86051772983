/** The word lists of one language, read from `grammars/<language>/words/`. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';

const words = z.array(z.string());
const figures = z.record(z.string(), z.number());
const synonyms = z.record(z.string(), words);

const tidying = z.object({
  contractions: z.record(z.string(), z.string()).default({}),
  symbols: z.object({ signs: z.record(z.string(), z.string()) }).default({ signs: {} }),
  afterNounHas: z.object({ words }).default({ words: [] }),
  afterNounIs: z.object({ words }).default({ words: [] }),
  itsIs: z.object({ words }).default({ words: [] }),
  fillersAnywhere: words.default([]),
  vocatives: z
    .object({ words, definite: words, subjects: words })
    .default({ words: [], definite: [], subjects: [] }),
  fillersBetweenCommas: words.default([]),
  fillersAtStart: words.default([]),
  fillersAtEnd: words.default([]),
  orderStarts: z.object({ starts: words, before: words }).default({ starts: [], before: [] }),
  tellMeBefore: z.object({ starts: words, words }).default({ starts: [], words: [] }),
  keepPhrases: z.object({ phrases: words }).default({ phrases: [] }),
  hedges: z.object({ phrases: words }).default({ phrases: [] }),
  doubled: words.default([]),
  repairCues: z
    .object({
      strong: words,
      weak: words,
      restart: words,
      drop: words,
      retract: words,
      notBefore: z.object({ phrases: words }).default({ phrases: [] }),
      notAfter: words.default([]),
      pronounOneAfter: words.default([]),
    })
    .default({
      strong: [],
      weak: [],
      restart: [],
      drop: [],
      retract: [],
      notBefore: { phrases: [] },
      notAfter: [],
      pronounOneAfter: [],
    }),
});

const numbers = z.object({
  words: figures.default({}),
  scales: figures.default({}),
  /** Scales that stand for one of themselves with no figure before: "mil". */
  scalesAlone: words.default([]),
  and: words.default([]),
  tensAnd: z.string().optional(),
  point: words.default([]),
  one: words.default([]),
  nought: words.default([]),
  double: words.default([]),
  triple: words.default([]),
  ordinals: figures.default({}),
  ordinalTens: figures.default({}),
  ordinalPhrases: figures.default({}),
  fractions: figures.default({}),
  groups: figures.default({}),
  vague: figures.default({}),
  of: words.default([]),
  rough: words.default([]),
  more: words.default([]),
  shares: z
    .object({ plain: figures, rough: figures, tails: words, percent: words })
    .default({ plain: {}, rough: {}, tails: [], percent: [] }),
  yes: words.default([]),
  no: words.default([]),
  letters: z.record(z.string(), z.string()).default({}),
  letterHomophones: z.record(z.string(), z.string()).default({}),
  letterAs: words.default([]),
});

const units = z.object({
  units: synonyms.default({}),
  colloquialHundreds: z.object({ units: words }).default({ units: [] }),
  partitives: z.object({ phrases: words }).default({ phrases: [] }),
  parts: z.record(z.string(), z.tuple([z.string(), z.number()])).default({}),
  degrees: words.default([]),
  scales: z.object({ fahrenheit: words, celsius: words }).default({ fahrenheit: [], celsius: [] }),
  watts: words.default([]),
  durations: z.record(z.string(), z.object({ seconds: z.number(), words })).default({}),
});

const times = z.object({
  past: words.default([]),
  to: words.default([]),
  half: words.default([]),
  quarter: words.default([]),
  oclock: words.default([]),
  /** After the hour: "y media", "menos cuarto". */
  more: words.default([]),
  less: words.default([]),
  /** What leads to an hour: "a las". */
  at: words.default([]),
  named: z.record(z.string(), z.string()).default({}),
  am: words.default([]),
  pm: words.default([]),
});

const holiday = z.union([
  z.object({ day: z.string() }),
  z.object({ easter: z.number() }),
  z.object({ month: z.number(), weekday: z.number(), nth: z.number() }),
]);
export type Holiday = z.infer<typeof holiday>;

const dates = z.object({
  days: z.record(z.string(), z.union([z.number(), z.tuple([z.number()])])).default({}),
  weekdays: figures.default({}),
  months: figures.default({}),
  shortMonths: figures.default({}),
  lastWords: words.default([]),
  thisWords: words.default([]),
  nextWords: words.default([]),
  partsOfDay: words.default([]),
  dayUnits: figures.default({}),
  monthUnits: figures.default({}),
  hourUnits: figures.default({}),
  ago: words.default([]),
  /** Where it is said first: Spanish "hace dos semanas". */
  agoBefore: words.default([]),
  fromNow: words.default([]),
  in: words.default([]),
  on: words.default([]),
  the: words.default([]),
  /** After an ordinal: what it counts is no day. */
  things: words.default([]),
  of: words.default([]),
  since: words.default([]),
  until: words.default([]),
  before: words.default([]),
  after: words.default([]),
  between: words.default([]),
  and: words.default([]),
  during: words.default([]),
  beginning: words.default([]),
  middle: words.default([]),
  end: words.default([]),
  spans: z.record(z.string(), z.enum(['week', 'month', 'year', 'weekend'])).default({}),
  lately: figures.default({}),
  soon: figures.default({}),
  holidays: z.record(z.string(), holiday).default({}),
  offsetWords: figures.default({}),
});

const touch = z.object({
  sizes: synonyms.default({}),
  containers: synonyms.default({}),
  textures: synonyms.default({}),
  shapes: synonyms.default({}),
  fastenings: synonyms.default({}),
  /** What is counted on a marker, by what the record calls it; "dot" stands for any. */
  counted: synonyms.default({}),
  spots: synonyms.default({}),
  spotNotBefore: z.object({ words }).default({ words: [] }),
  spotPrepositions: words.default([]),
  articles: words.default([]),
  nouns: words.default([]),
  joiners: words.default([]),
  none: words.default([]),
  somethingOn: z.object({ tails: words }).default({ tails: [] }),
});

const places = z.object({
  kinds: synonyms.default({}),
  /** Kinds that stand by themselves, and words before a kind that tell one of it from another. */
  plurals: synonyms.default({}),
  wholes: words.default([]),
  qualifiers: words.default([]),
  /** What stands by itself and holds food, under its own name: a bread bin. */
  stands: words.default([]),
  /** How a place lies to what it is known by: "over the kettle". */
  beside: words.default([]),
  landmarks: words.default([]),
  /** Where what stands by itself stands: says nothing more of where its food is. */
  upon: words.default([]),
  positions: figures.default({}),
  fromEnd: z.record(z.string(), z.string()).default({}),
  sideways: figures.default({}),
  within: words.default([]),
  articles: words.default([]),
  spots: synonyms.default({}),
  spotPrepositions: words.default([]),
});

const joining = z.object({
  articles: words.default([]),
  inside: words.default([]),
  stops: words.default([]),
});

const sounds = z.object({
  dictionary: z.enum(['cmu', 'none']).default('none'),
  letters: z
    .array(
      z.union([
        z.tuple([z.string(), z.string()]),
        z.tuple([z.string(), z.string(), z.enum(['start', 'end', 'front', 'vowel'])]),
      ]),
    )
    .default([]),
  sounded: z.array(z.tuple([z.string(), z.string()])).default([]),
});

const schemas = { tidying, numbers, units, times, dates, touch, places, joining, sounds };
type Schemas = typeof schemas;

/** Every word list of a language, checked. A list a language lacks is empty. */
export type Lexicon = { readonly language: string } & {
  readonly [K in keyof Schemas]: z.infer<Schemas[K]>;
};

const readList = (language: string, name: string): unknown => {
  const file = projectFile('grammars', language, 'words', `${name}.json`);
  if (!existsSync(file)) return {};
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    throw new Error(`grammars/${language}/words/${name}.json is not JSON: ${(error as Error).message}`);
  }
};

const checked = <K extends keyof Schemas>(language: string, name: K): z.infer<Schemas[K]> => {
  const result = schemas[name].safeParse(readList(language, name));
  if (result.success) return result.data as z.infer<Schemas[K]>;
  throw new Error(`grammars/${language}/words/${name}.json: ${z.prettifyError(result.error)}`);
};

const loaded = new Map<string, Lexicon>();

/**
 * The word lists for a locale (BCP 47, e.g. `en-GB`), read once.
 * Throws an `Error` naming the file and the wrong entry when a list is malformed.
 */
export const lexiconFor = (locale: string): Lexicon => {
  const language = (locale.split('-')[0] ?? '').toLowerCase();
  if (!/^[a-z]{2,3}$/.test(language)) throw new Error(`Not a language: ${locale}`);
  const found = loaded.get(language);
  if (found) return found;
  const lexicon: Lexicon = {
    language,
    tidying: checked(language, 'tidying'),
    numbers: checked(language, 'numbers'),
    units: checked(language, 'units'),
    times: checked(language, 'times'),
    dates: checked(language, 'dates'),
    touch: checked(language, 'touch'),
    places: checked(language, 'places'),
    joining: checked(language, 'joining'),
    sounds: checked(language, 'sounds'),
  };
  loaded.set(language, lexicon);
  return lexicon;
};

/** What a room works out once from a language's word lists. */
export const perLexicon = <T>(build: (lexicon: Lexicon) => T): ((lexicon: Lexicon) => T) => {
  const built = new WeakMap<Lexicon, T>();
  return (lexicon) => {
    const found = built.get(lexicon);
    if (found !== undefined) return found;
    const made = build(lexicon);
    built.set(lexicon, made);
    return made;
  };
};
