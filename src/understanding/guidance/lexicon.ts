/** Phrases of `grammars/<language>/words/guidance.txt`, by the word they begin with. */
import { linesOf } from '../word-lists.js';

/** "risk pregnant: pregnant, expecting": class `risk`, value `pregnant`. */
interface Entry {
  readonly kind: string;
  readonly value: string;
  readonly words: readonly string[];
}
type Lexicon = ReadonlyMap<string, readonly Entry[]>;

/** "Dele's pregnant": whose or is, both stand apart from the name here, in what is said and in the list alike. */
export const apart = (tokens: readonly string[]): readonly string[] =>
  tokens.flatMap((token) => {
    const [, name] = /^(.+)['’]s$/.exec(token) ?? [];
    return name ? [name, 'is'] : [token];
  });

const made = new Map<string, Lexicon>();

/**
 * A language's phrases, longest first. Empty where the language has no such list.
 * @throws Error naming the line that has no colon.
 */
export const guidanceLexicon = (language: string): Lexicon => {
  const known = made.get(language);
  if (known) return known;
  const lexicon = new Map<string, Entry[]>();
  for (const line of linesOf(language, 'guidance')) {
    const colon = line.indexOf(':');
    if (colon < 0) throw new Error(`grammars/${language}/words/guidance.txt: no colon in "${line}"`);
    const [kind = '', ...value] = line.slice(0, colon).trim().split(' ');
    for (const phrase of line.slice(colon + 1).split(',')) {
      const words = apart(phrase.trim().toLowerCase().split(/\s+/));
      const [first] = words;
      if (!first) continue;
      lexicon.set(first, [...(lexicon.get(first) ?? []), { kind, value: value.join(' '), words }]);
    }
  }
  for (const entries of lexicon.values()) entries.sort((a, b) => b.words.length - a.words.length);
  made.set(language, lexicon);
  return lexicon;
};

const sets = new Map<string, ReadonlySet<string>>();

/** The single words of one class: small words that carry no meaning of their own, such as "so" or "the". */
export const guidanceWords = (language: string, kind: string): ReadonlySet<string> => {
  const key = `${language} ${kind}`;
  const known = sets.get(key);
  if (known) return known;
  const words = new Set(
    [...guidanceLexicon(language).values()].flatMap((entries) =>
      entries.flatMap((entry) => (entry.kind === kind && entry.words.length === 1 ? entry.words : [])),
    ),
  );
  sets.set(key, words);
  return words;
};

/** Every phrase of one class, as it is written. */
export const guidancePhrases = (language: string, kind: string): readonly string[] =>
  [...guidanceLexicon(language).values()].flatMap((entries) =>
    entries.flatMap((entry) => (entry.kind === kind ? [entry.words.join(' ')] : [])),
  );
