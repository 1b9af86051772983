/** What a sentence says beside its request and its things, by the lists of `grammars/<language>/qualifiers.json`. */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';
import { QUALIFIERS, type Qualifier } from '../protocol/qualifiers.js';
import { partedByCommas } from './commas.js';
import type { Interpretation, Understanding } from './intents.js';
import type { Understander } from './understand.js';
import { wordsIn } from './words/as-heard.js';
import { lexiconFor } from './words/index.js';

/** Told by how many words there are, and by no list. */
const counted = 'few-words' as const satisfies Qualifier;
const few = 5;
const named = QUALIFIERS.filter((name): name is Exclude<Qualifier, typeof counted> => name !== counted);

const file = z.object({
  leads: z.array(z.string()),
  tails: z.array(z.string()),
  unless: z.partialRecord(z.enum(QUALIFIERS), z.array(z.string())),
  lists: z.record(z.enum(named), z.array(z.string()).min(1)),
});
type Lists = z.infer<typeof file>;

/** One phrase of a list: how many of the first words may stand before it, and whether it ends what was said. */
interface Phrase {
  readonly words: readonly string[];
  /** Null: anywhere. */
  readonly within: number | 'leads' | null;
  readonly ends: boolean;
}

const phraseOf = (written: string): Phrase => {
  const words = written.split(' ');
  const [, at] = /^\^(\d*)$/.exec(words[0]!) ?? [];
  const ends = words.at(-1) === '$';
  return {
    words: words.slice(at === undefined ? 0 : 1, ends ? -1 : undefined),
    within: at === undefined ? null : at === '' ? 'leads' : Number(at),
    ends,
  };
};

interface Lexicon {
  readonly leads: readonly Phrase[];
  readonly tails: readonly Phrase[];
  readonly lists: readonly {
    readonly name: Qualifier;
    readonly phrases: readonly Phrase[];
    readonly unless: readonly Phrase[];
  }[];
}

const known = new Map<string, Lexicon | null>();

/** Null for a language that has no `qualifiers.json` yet. Throws `ZodError` for a file of another form. */
const qualifyingWords = (language: string): Lexicon | null => {
  const before = known.get(language);
  if (before !== undefined) return before;
  const path = projectFile('grammars', language, 'qualifiers.json');
  const given: Lists | null = existsSync(path) ? file.parse(JSON.parse(readFileSync(path, 'utf8'))) : null;
  const words = given && {
    leads: given.leads.map(phraseOf),
    tails: given.tails.map(phraseOf),
    lists: named.map((name) => ({
      name,
      phrases: given.lists[name].map(phraseOf),
      unless: (given.unless[name] ?? []).map(phraseOf),
    })),
  };
  known.set(language, words);
  return words;
};

const isWord = (written: string, word: string | undefined): boolean =>
  word !== undefined &&
  (written.endsWith('*')
    ? word.startsWith(written.slice(0, -1))
    : word === written || word === `${written}'s`);

const stands = ({ words }: Phrase, said: readonly string[], at: number): boolean =>
  words.every((written, n) => isWord(written, said[at + n]));

/** Past words that only lead to what is said, or end it: every place they may stop at. */
const past = (phrases: readonly Phrase[], said: readonly string[], from: number): readonly number[] => {
  const places = [from];
  for (const place of places)
    for (const phrase of phrases) {
      const next = place + phrase.words.length;
      if (!places.includes(next) && stands(phrase, said, place)) places.push(next);
    }
  return places;
};

/** The hour of a clock that counts to twenty-four says its half of the day. */
const afterNoon = /^(1[3-9]|2[0-3]):/;

/** Everything of the lists that was said. */
export const qualifiersIn = (text: string, locale: string): readonly Qualifier[] => {
  const { language } = lexiconFor(locale);
  const lexicon = qualifyingWords(language);
  const said = wordsIn(text);
  if (!lexicon || said.length === 0) return [];
  const begun = new Set(past(lexicon.leads, said, 0));
  const isThere = (phrase: Phrase, over: ReadonlySet<number>): boolean =>
    said.some((_, at) => {
      if (over.has(at) || !stands(phrase, said, at)) return false;
      if (phrase.within === 'leads' ? !begun.has(at) : phrase.within !== null && at > phrase.within)
        return false;
      return !phrase.ends || past(lexicon.tails, said, at + phrase.words.length).includes(said.length);
    });
  const found = lexicon.lists.filter(({ name, phrases, unless }) => {
    const over = new Set(said.flatMap((_, at) => (unless.some((one) => stands(one, said, at)) ? [at] : [])));
    return (
      phrases.some((phrase) => isThere(phrase, over)) ||
      (name === 'half-of-day' && said.some((word) => afterNoon.test(word)))
    );
  });
  return [...found.map(({ name }): Qualifier => name), ...(said.length < few ? [counted] : [])];
};

/** Says of everything heard what qualifies it, and parts lines of the list as commas were written. */
export const withQualifiers = (inner: Understander): Understander => ({
  begins: (words, names, context) => inner.begins(words, names, context),
  understand(hypotheses, names, context): Understanding {
    const heard = inner.understand(hypotheses, names, context);
    if (heard.verdict === 'nothing-heard' || heard.tooLong) return heard;
    const text = heard.said ?? heard.readings[0]?.heard ?? hypotheses[0]?.text ?? '';
    const { locale } = context;
    const qualifiers = qualifiersIn(text, locale);
    // "For three hours" is how long, not three o'clock: of each guess by its own words.
    const tellsLength = ({ acts, heard: said }: Interpretation): boolean =>
      acts.some(({ slots }) => slots.duration !== undefined) &&
      (said === text ? qualifiers : qualifiersIn(said, locale)).includes('length-of-time');
    // What follows a yes or a no is heard by itself.
    const asHeard = ({ readings, settles, ...all }: Understanding): Understanding => ({
      ...all,
      readings: readings.map((reading) => ({
        ...reading,
        acts: reading.acts.map((act) => partedByCommas(act, reading.heard)),
        ...(tellsLength(reading) ? { tellsLength: true as const } : {}),
      })),
      ...(settles ? { settles: { ...settles, rest: asHeard(settles.rest) } } : {}),
    });
    return { ...asHeard(heard), qualifiers, locale };
  },
});
